/** What package.json contributes: its words stand in package.nls.json, what it names is there. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { writeSeveritySetting } from '../../src/build/severity-setting';
import { formatUnix } from '../../src/format/unix';

const root = path.resolve(__dirname, '../..');
const read = (name: string) => JSON.parse(readFileSync(path.join(root, name), 'utf8'));
const manifest = read('package.json');
const strings: Record<string, string> = read('package.nls.json');

/** All strings in it, at whatever depth. */
function stringsIn(value: unknown): string[] {
  if (typeof value === 'string') return [value];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(stringsIn) : [];
}

const named = stringsIn(manifest).flatMap((text) => /^%(.+)%$/.exec(text)?.[1] ?? []);

function checkPages(): string[] {
  const ids = readdirSync(path.join(root, 'src/checks'), { withFileTypes: true }).filter((each) => each.isDirectory());
  return ids.map(({ name }) => `src/checks/${name}/README.md`);
}

describe('package.json', () => {
  it('wakes the extension for drawings and their projects, not for every JSON file or program', () => {
    const languages = manifest.activationEvents.filter((event: string) => event.startsWith('onLanguage:'));
    expect(languages).toEqual(['onLanguage:xml', 'onLanguage:svg']);
    expect(manifest.activationEvents).toContain('workspaceContains:**/tombolo.json');
  });

  it('names strings that are there, and all of them', () => {
    expect([...new Set(named)].sort()).toEqual(Object.keys(strings).sort());
  });

  it('has no words of its own in what the editor shows', () => {
    const { commands, configuration, walkthroughs, problemMatchers } = manifest.contributes;
    const shown = [
      ...commands.map(({ title }: { title: string }) => title),
      ...problemMatchers.map(({ label }: { label: string }) => label),
      ...walkthroughs.flatMap(
        ({ title, description, steps }: { title: string; description: string; steps: object[] }) => [
          title,
          description,
          ...steps.flatMap((step) => [
            (step as { title: string }).title,
            (step as { description: string }).description,
            (step as { media: { altText: string } }).media.altText,
          ]),
        ],
      ),
      ...Object.values<{ description?: string; markdownDescription?: string; enumDescriptions?: string[] }>(
        configuration.properties,
      ).flatMap(({ description, markdownDescription, enumDescriptions = [] }) => [
        description ?? markdownDescription,
        ...enumDescriptions,
      ]),
    ];
    expect(shown.filter((text) => !/^%.+%$/.test(text ?? ''))).toEqual([]);
  });

  it('lists every check in the setting for severities, as the build writes it', () => {
    const [again, words] = [structuredClone(manifest), { ...strings }];
    writeSeveritySetting(again, words);
    expect([again, words]).toEqual([manifest, strings]);
  });

  it('offers only commands that it declares', () => {
    const { commands, menus } = manifest.contributes;
    const declared = commands.map(({ command }: { command: string }) => command);
    const offered = Object.values<{ command: string }[]>(menus).flat();
    expect(offered.filter(({ command }) => !declared.includes(command))).toEqual([]);
  });

  it('packs the pictures of the walkthrough, which are there', () => {
    const [{ steps }] = manifest.contributes.walkthroughs;
    const pictures: string[] = steps.map(({ media }: { media: { image: string } }) => media.image);
    expect(pictures.filter((picture) => !existsSync(path.join(root, picture)))).toEqual([]);
    const isPacked = (file: string) => [file, path.dirname(file)].some((each) => manifest.files.includes(each));
    expect(pictures.every(isPacked)).toBe(true);
  });

  it('packs no picture that nothing shows', () => {
    const pages = ['src/extension/page.md', ...checkPages()];
    const shown = [
      JSON.stringify({ ...manifest, files: [] }),
      ...pages.map((page) => readFileSync(path.join(root, page), 'utf8')),
    ];
    const packed: string[] = manifest.files.filter((file: string) => file.startsWith('media/'));
    const pictures = packed.flatMap((file) =>
      /\.\w+$/.test(file) ? [file] : readdirSync(path.join(root, file)).map((name) => `${file}/${name}`),
    );
    expect(pictures.length).toBeGreaterThan(3);
    expect(pictures.filter((picture: string) => !shown.some((text) => text.includes(picture)))).toEqual([]);
  });

  it('packs each picture of the page that the marketplace shows', () => {
    const page = readFileSync(path.join(root, 'src/extension/page.md'), 'utf8');
    const pictures = [...page.matchAll(/!\[[^\]]+\]\(([^)]+)\)/g)].map(([, picture]) => picture);
    expect(pictures.length).toBeGreaterThan(1);
    expect(pictures.filter((picture = '') => !manifest.files.includes(path.dirname(picture)))).toEqual([]);
    // Its commands and settings are there.
    const titles = Object.values(strings).map((title) => title.replace(/^Tombolo: /, ''));
    const told = [...page.matchAll(/\*\*Tombolo: ([^*]+)\*\*/g)].map(([, title = '']) => title.replace(/\s+/g, ' '));
    expect(told.length).toBeGreaterThan(2);
    expect(told.filter((title) => !titles.includes(title))).toEqual([]);
    const settings = [...page.matchAll(/`(tombolo\.(?!json)[\w.]+)`/g)].map(([, name]) => name);
    expect(settings.sort()).toEqual(Object.keys(manifest.contributes.configuration.properties).sort());
  });

  it('takes problems from the unix format', () => {
    const [{ pattern }] = manifest.contributes.problemMatchers;
    const range = { start: { line: 3, character: 11 }, end: { line: 3, character: 12 }, from: 0, to: 1 };
    const finding = { check: 'thin-bridge', severity: 'warning', message: 'Bridge [0.4 mm]: thin', range };
    const line = formatUnix({ files: [{ path: 'trail/sun.svg', findings: [finding] }] } as never);
    const match = new RegExp(pattern.regexp).exec(line.trim());
    const part = (name: string) => match?.[pattern[name]];
    expect(['file', 'line', 'column', 'severity', 'message', 'code'].map(part)).toEqual([
      'trail/sun.svg',
      '4',
      '12',
      'warning',
      'Bridge [0.4 mm]: thin',
      'thin-bridge',
    ]);
  });
});
