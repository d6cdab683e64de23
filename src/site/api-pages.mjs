// The pages of the library, from the comments of what it exports.
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { root } from '../build/bundles.mjs';

/** The library's entry: what it exports is what has a page. */
const ENTRY = 'src/library/index.ts';

export async function apiPages() {
  const { Application, LogLevel } = await import('typedoc');
  const out = mkdtempSync(path.join(tmpdir(), 'tombolo-api-'));
  try {
    const app = await Application.bootstrapWithPlugins({
      entryPoints: [path.join(root, ENTRY)],
      tsconfig: path.join(root, 'src/tsconfig.json'),
      plugin: ['typedoc-plugin-markdown'],
      outputs: [{ name: 'markdown', path: out }],
      readme: 'none',
      name: 'tombolo-stencil',
      excludeInternal: true,
      disableSources: true,
      hideBreadcrumbs: true,
      hidePageHeader: true,
      router: 'kind',
      logLevel: LogLevel.Error,
      skipErrorChecking: true,
    });
    const project = await app.convert();
    if (!project) throw new Error('The library cannot be read for its pages.');
    await app.generateOutputs(project);
    return pagesIn(out);
  } finally {
    rmSync(out, { recursive: true, force: true });
  }
}

function pagesIn(folder) {
  return readdirSync(folder, { recursive: true })
    .filter((name) => name.endsWith('.md'))
    .map((name) => {
      const text = readFileSync(path.join(folder, name), 'utf8');
      const [, title = 'The library'] = /^# (.+)$/m.exec(text) ?? [];
      const isIndex = name === 'README.md';
      const at = isIndex ? 'api/index.html' : `api/${name.replace(/\.md$/, '')}/index.html`;
      const body = text
        .replace(/^# .+\n/, '')
        .replace(/\]\((?!https?:|#)([^)#]+)\.md(#[^)]*)?\)/g, (_all, target, anchor = '') => {
          const whole = path.posix.join('/api', path.posix.dirname(name), target).replace(/\/README$/, '');
          return `](${whole}/${anchor})`;
        });
      const head = isIndex
        ? 'title: The library\nsection: reference\norder: 6'
        : `title: ${JSON.stringify(title.replace(/\\/g, ''))}`;
      return {
        path: `api/${name.toLowerCase()}`,
        contents: `---\n${head}\ndescription: ${JSON.stringify(`${title.replace(/\\/g, '')} of the library.`)}\npermalink: ${at}\n---\n\n${body}`,
      };
    });
}
