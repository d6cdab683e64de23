/** Every command, setting, name, link and picture of the README is one that there is. */
import { spawn } from 'node:child_process';
import { chmodSync, existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { parse as parseYaml } from 'yaml';
import { ALL_METAS, readConfig } from '../../../src/engine/check/known-checks';
import * as library from '../../../src/library/index';
import { CliWorkshop } from '../../cli/run-cli';
import { makeExample } from './example';
import { anchors, blocks, commandLines, inlineCode, inlineSettings, links, README, ROOT } from './readme';

const manifest = JSON.parse(readFileSync(path.join(ROOT, 'package.json'), 'utf8'));
const words = JSON.parse(readFileSync(path.join(ROOT, 'package.nls.json'), 'utf8')) as Record<string, string>;

let workshop: CliWorkshop;

beforeAll(async () => {
  workshop = await CliWorkshop.create();
  const command = workshop.path('bin/tombolo');
  mkdirSync(path.dirname(command));
  writeFileSync(command, `#!/bin/sh\nexec '${process.execPath}' '${workshop.bundle}' "$@"\n`);
  chmodSync(command, 0o755);
});
afterAll(() => workshop.dispose());

interface Run {
  readonly code: number | null;
  readonly output: string;
  readonly errors: string;
}

/** By a shell, as they would be typed. What watches is ended when it has said what it found. */
function shell(script: string, cwd: string): Promise<Run> {
  const PATH = `${workshop.path('bin')}:${process.env.PATH}`;
  const child = spawn('bash', ['-c', script], { cwd, env: { ...process.env, PATH }, detached: true });
  let output = '';
  let errors = '';
  child.stdout.on('data', (chunk: Buffer) => {
    output += chunk;
    if (script.startsWith('tombolo watch') && child.pid !== undefined) process.kill(-child.pid);
  });
  child.stderr.on('data', (chunk: Buffer) => (errors += chunk));
  return new Promise((settle) => child.on('close', (code) => settle({ code, output, errors })));
}

describe('its command lines', () => {
  const lines = [...new Set(commandLines())];

  it('are found, those of the block and those in sentences', () => {
    expect(lines.length).toBeGreaterThan(25);
    expect(lines).toContain('tombolo check . --write-baseline');
  });

  it.each(lines.map((line, at) => ({ line, at })))('$line', async ({ line, at }) => {
    const folder = workshop.path(`example-${at}`);
    makeExample(folder, line);
    // A plan is made by the line before.
    if (line.includes('--with bridges.json')) await shell('tombolo bridge post.svg --plan > bridges.json', folder);
    const { code, output, errors } = await shell(line, folder);
    expect(errors).not.toMatch(/^tombolo: /m);
    expect(code, errors).not.toBe(2);
    const makes = /(?:--out|>) (\S+)/.exec(line)?.[1];
    expect(output + errors !== '' || makes !== undefined).toBe(true);
    if (/--(write|diff|move-to)\b/.test(line)) expect(output + errors).not.toMatch(/refused/);
    if (makes !== undefined && code === 0) expect(existsSync(path.join(folder, makes)), makes).toBe(true);
  });

  it('and every option of ours that a sentence names', async () => {
    const commands = [
      'check',
      'bridge',
      'order',
      'picture',
      'init',
      'strip',
      'cut',
      'job',
      'trace',
      'watch',
      'separate',
    ];
    const helps = await Promise.all(
      ['', ...commands].map((command) => workshop.run([command, '--help'].filter(Boolean))),
    );
    const known = new Set(helps.flatMap(({ stdout }) => stdout.match(/--[a-z][\w-]*/g) ?? []));
    const named = inlineCode()
      .filter((code) => !/^(npm|npx) /.test(code))
      .flatMap((code) => code.match(/--[a-z][\w-]*/g) ?? []);
    expect(named.length).toBeGreaterThan(20);
    expect(named.filter((option) => !known.has(option))).toEqual([]);
  });

  it('and those of npm, which are scripts of the package', () => {
    const scripts = [...README.matchAll(/npm (?:run )?(start|test|[a-z]+:[a-z]+|(?<=run )[a-z]+)\b/g)].map(
      ([, name = '']) => name,
    );
    expect(scripts).toContain('start');
    expect(scripts.filter((name) => !Object.hasOwn(manifest.scripts, name))).toEqual([]);
  });
});

describe('its settings', () => {
  it.each(blocks('json'))('are understood, all of them: %s', (text) => {
    expect(readConfig(text).problems).toEqual([]);
  });

  // A sentence shows a key without what stands around it.
  const around: readonly ((inner: string) => string)[] = [
    (inner) => inner,
    (inner) => `{ "checks": ${inner} }`,
    (inner) => `{ "cutter": ${inner} }`,
    (inner) => `{ "layers": [{ "from": "heron.svg#body", ${inner.slice(1)}] }`,
    (inner) => `{ "materials": { "mine": { "thickness": "0.3mm", ${inner.slice(1)} } }`,
  ];

  it.each(inlineSettings())('are understood where they belong: %s', (text) => {
    const problems = around.map((wrap) => readConfig(wrap(text)).problems);
    expect(
      problems.some((each) => each.length === 0),
      JSON.stringify(problems[0]),
    ).toBe(true);
  });

  it('of the editor have a name and take the value that is shown', () => {
    const { properties } = manifest.contributes.configuration;
    const named = [...README.matchAll(/`(tombolo\.(?!json)[\w.]+)`/g)].map(([, name]) => name);
    expect(named.filter((name) => name !== undefined && !Object.hasOwn(properties, name))).toEqual([]);
    const rows = README.match(/^\| `tombolo\.[\w.]+` \|/gm) ?? [];
    expect(rows).toHaveLength(Object.keys(properties).length);
  });
});

describe('what it names', () => {
  it('is in the palette', () => {
    const titles = Object.values(words).map((title) => title.replace(/^Tombolo: /, ''));
    const told = [...README.matchAll(/\*\*Tombolo: ([^*]+)\*\*/g)].map(([, title = '']) => title.replace(/\s+/g, ' '));
    const [, table = ''] = /\| in the palette[^\n]*\n\|[-|]+\n((?:\|.*\n)+)/.exec(README) ?? [];
    const rows = [...table.matchAll(/^\| ([^|]+) \|/gm)].flatMap(([, row = '']) => row.split(', '));
    expect(rows.length).toBeGreaterThan(10);
    expect([...told, ...rows].filter((title) => !titles.includes(title))).toEqual([]);
  });

  it('lies where links and pictures lead', () => {
    const dead = links().filter((target) => {
      if (/^https?:/.test(target)) return false;
      const [file = '', anchor] = target.split('#');
      const whole = path.join(ROOT, file);
      if (file !== '' && !existsSync(whole)) return true;
      return (
        anchor !== undefined &&
        !anchors(readFileSync(file === '' ? path.join(ROOT, 'README.md') : whole, 'utf8')).includes(anchor)
      );
    });
    expect(dead).toEqual([]);
  });

  it('is a check, wherever one is named', () => {
    const ids = ALL_METAS.map(({ id }) => id);
    const accepted = [...README.matchAll(/tombolo accept ([\w-]+)|data-tombolo-accept="([\w-]+)/g)];
    expect(accepted.length).toBeGreaterThan(1);
    for (const [, one, other] of accepted) expect(ids).toContain(one ?? other);
  });

  it('is exported, wherever a sentence calls it', () => {
    const calls = inlineCode().flatMap((code) => /^([a-z]\w+)\(/.exec(code)?.[1] ?? []);
    expect(calls).toContain('cutStack');
    expect(calls.filter((name) => !Object.hasOwn(library, name))).toEqual([]);
  });

  it('is an action and a hook that other projects can use', () => {
    const hooks = parseYaml(readFileSync(path.join(ROOT, '.pre-commit-hooks.yaml'), 'utf8')) as { id: string }[];
    expect(README).toContain(`\`${hooks[0]?.id}\``);
    expect(existsSync(path.join(ROOT, 'action.yml'))).toBe(true);
  });
});
