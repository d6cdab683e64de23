// npm run site: the documentation as static pages that need no network, into .cache/site or the folder that is named.
import { cpSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { bundleCommandLine, makeSchema, root, runBundled } from '../build/bundles.mjs';
import { apiPages } from './api-pages.mjs';
import { checkPages } from './check-pages.mjs';
import { commandPages } from './command-pages.mjs';
import { ensureSite } from './ensure-site.mjs';
import { jsonPage } from './json-page.mjs';
import { numbersPage } from './numbers-page.mjs';
import { schemaPage } from './schema-page.mjs';

const here = path.join(root, 'src/site');
const work = path.join(root, '.cache/site-work');

/** @returns the folder that the pages lie in */
export async function buildSite(out = path.join(root, '.cache/site')) {
  ensureSite();
  rmSync(work, { recursive: true, force: true });
  rmSync(out, { recursive: true, force: true });
  cpSync(path.join(here, 'pages'), work, { recursive: true });
  const data = await runBundled('src/site/site-data.ts');
  const schema = JSON.parse((await makeSchema()).contents);
  const command = await bundleCommandLine({ outdir: path.join(root, '.cache/site-command'), minify: false });
  const pages = [
    ...checkPages(data, here),
    { path: 'config.md', contents: schemaPage(schema) },
    { path: 'numbers.md', contents: numbersPage(data) },
    { path: 'commands.md', contents: commandPages(command) },
    { path: 'json.md', contents: jsonPage(command, here) },
    { path: 'files/test-strip.svg', contents: data.STRIP.text },
    { path: 'pictures/print.svg', contents: printOfWaymarker(data) },
    ...(await apiPages()),
  ];
  for (const page of pages) {
    const file = path.join(work, page.path);
    mkdirSync(path.dirname(file), { recursive: true });
    writeFileSync(file, page.contents);
  }
  await render(out);
  copyFiles(pages, out);
  return out;
}

/** What the pages show beside words, and what they look like. */
function copyFiles(pages, out) {
  const font = 'node_modules/@fontsource/saira-stencil-one/files/saira-stencil-one-latin-400-normal.woff2';
  const copy = (file, name) => cpSync(path.join(root, file), path.join(out, name));
  copy('src/site/layout/site.css', 'site.css');
  copy('media/icon.svg', 'icon.svg');
  copy(font, 'stencil.woff2');
  for (const { path: name } of pages.filter((each) => each.path.endsWith('.svg'))) {
    cpSync(path.join(work, name), path.join(out, name));
  }
  for (const name of readdirSync(path.join(root, 'media')).filter((each) => /\.(png|gif)$/.test(each))) {
    copy(`media/${name}`, `media/${name}`);
  }
}

function printOfWaymarker(data) {
  const demo = (name) => readFileSync(path.join(root, 'media/demo', name), 'utf8');
  return data.printOf(demo('waymarker.svg'), demo('tombolo.json'));
}

async function render(out) {
  const { default: Eleventy } = await import('@11ty/eleventy');
  const at = (folder) => path.relative(process.cwd(), folder);
  const site = new Eleventy(at(work), at(out), { configPath: path.join(here, 'eleventy.config.mjs'), quietMode: true });
  site.disableLogger();
  await site.write();
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  try {
    const [, , named] = process.argv;
    const out = await buildSite(named && path.resolve(named));
    console.log(`The pages are in ${path.relative(process.cwd(), out) || '.'}.`);
  } catch (error) {
    console.error(error instanceof Error ? error.message : error);
    process.exitCode = 1;
  }
}
