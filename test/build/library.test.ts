/** What a program gets that imports the package. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { gzipSync } from 'node:zlib';
import { build } from 'esbuild';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { bundle, root, writeRequired } from '../../src/build/bundles.mjs';
import { declarations, libraryManifest } from '../../src/build/library.mjs';
import { bridgeIslands, check } from '../../src/library/index';

const project = mkdtempSync(path.join(tmpdir(), 'tombolo-library-'));
const packaged = path.join(project, 'node_modules/tombolo-stencil');
const outdir = path.join(packaged, 'dist');
const manifest = libraryManifest(JSON.parse(readFileSync(path.join(root, 'package.json'), 'utf8')));

beforeAll(async () => {
  await bundle('library', { outdir, minify: true });
  writeRequired(outdir);
  writeFileSync(path.join(packaged, 'package.json'), JSON.stringify(manifest));
}, 60_000);
afterAll(() => rmSync(project, { recursive: true }));

const files = () => readdirSync(path.join(outdir, 'library')).filter((name) => name.endsWith('.js'));
const textOf = (name: string) => readFileSync(path.join(outdir, 'library', name), 'utf8');

/** As a bundler of a program makes it. */
async function bundled(program: string) {
  const { outputFiles, warnings, metafile } = await build({
    stdin: { contents: program, resolveDir: project },
    bundle: true,
    minify: true,
    write: false,
    format: 'esm',
    platform: 'browser',
    metafile: true,
    logLevel: 'silent',
  });
  return { code: outputFiles[0]!.contents, warnings, inputs: Object.values(metafile.inputs) };
}

test('it stands alone: it imports nothing but its own files', async () => {
  const { inputs } = await bundled(`import * as all from 'tombolo-stencil'; console.log(all);`);
  const imports = inputs.flatMap((input) => input.imports.map(({ original }) => original));
  expect(imports.length).toBeGreaterThan(20);
  expect(imports.filter((from) => !/^\.\/[\w-]+\.js$|^tombolo-stencil$/.test(from ?? ''))).toEqual([]);
});

test('it makes no code from text: a content security policy of "self" lets it run', () => {
  const made = files().filter((name) => /\bnew Function\b|(?<![.\w$])(?:Function|eval)\(/.test(textOf(name)));
  expect(made).toEqual([]);
});

test('of the looks at array elements that tests make, nothing is shipped', () => {
  const all = files().map(textOf).join('');
  expect(all.includes('tomboloAssertions')).toBe(false);
  expect(all.includes('There is no element at this index')).toBe(false);
});

test('a program that only checks carries less than 180 kB, compressed, and is warned of nothing', async () => {
  const { code, warnings } = await bundled(`import { check } from 'tombolo-stencil'; console.log(check('').counts);`);
  expect(warnings).toEqual([]);
  expect(gzipSync(code, { level: 9 }).length).toBeLessThan(180_000);
  const all = await bundled(`import * as all from 'tombolo-stencil'; console.log(all);`);
  expect(gzipSync(all.code, { level: 9 }).length).toBeGreaterThan(250_000);
});

const PROGRAM = `
  const text = '<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="60mm" viewBox="0 0 60 60">'
    + '<path d="M10 10h40v40h-40z M20 20v20h20v-20z"/></svg>';
  const report = check(text);
  const [fix] = fixesFor(report, report.findings[0]).fixes;
  console.log(JSON.stringify([report, check(applyEdits(text, fix.edits))].map(
    ({ findings }) => findings.map((finding) => finding.check))));`;

test.each([
  ['module', `import { applyEdits, check, fixesFor } from 'tombolo-stencil';`],
  ['commonjs', `const { applyEdits, check, fixesFor } = require('tombolo-stencil');`],
])('it checks, mends and edits when imported as %s', (type, head) => {
  const words = [`--input-type=${type}`, '--no-warnings', '--eval', head + PROGRAM];
  const said = execFileSync(process.execPath, words, { encoding: 'utf8', cwd: project });
  expect(JSON.parse(said)).toEqual([['floating-island'], []]);
});

/** All that is read of style sheets, entities and regions, and much that is not. */
const WAYS_OF_CSS = `<!DOCTYPE svg [<!ENTITY tide "M5 5h9v9h-9z">]>
<svg xmlns="http://www.w3.org/2000/svg" width="90mm" height="60mm" viewBox="0 0 90 60"><style>
  @charset "utf-8"; @import url(x.css); @font-face { font-family: x; src: url(y) }
  @namespace s url(http://www.w3.org/2000/svg); @media print { path { display: none } }
  @media screen and (min-width: 3px), all { .sun { fill: gold } } @supports (fill: red) { path { fill: lime } }
  @layer base { path { fill: blue } } @container (width > 1px) { g { fill: navy } }
  path:is(.a, [class~="b" i]):not(#c) > *, g > path:nth-child(2n + 1 of .sun), :lang(de) ~ path::before, s|path
    { fill: hsl(20deg 50% 50% / 1) !important; stroke: var(--rim, oklch(0.5 0.1 20)); --rim: #123; stroke-width: calc(1px + 2 * 0.1px) }
  g.x:where(:first-child, :last-of-type) + path:has(title), path:dir(ltr)::part(x) { opacity: .99; fill: hwb(90 10% 10%) }
  a:{fill:red} b{fill:red &amp; } } ]] </style>
  <g><path class="sun" d="&tide;"/><path id="c" class="b" d="M20 5h20v20h-20zM25 10v10h10v-10z"/><path d="M50 5l30 0-15 40z M60 15h10l-5 10z"/>
  <text>&lt;&#x41;&nbsp;&notin;</text><path fill="lab(50 20 20)" stroke="lch(50 20 20)" d="M5 40q9-9 9 9t9 2v5h-20z"/></g></svg>`;

test('what is left out of the packages that it is made of changes no finding', async () => {
  const demo = ['waymarker.svg', 'trail/reeds.svg', 'trail/heron.svg'];
  const texts = [WAYS_OF_CSS, ...demo.map((name) => readFileSync(path.join(root, 'media/demo', name), 'utf8'))];
  const program = `import { bridgeIslands, check } from 'tombolo-stencil';
    const texts = ${JSON.stringify(texts)};
    console.log(JSON.stringify(texts.map((text) => [check(text), bridgeIslands(check(text)).text])));`;
  const words = ['--input-type=module', '--eval', program];
  const said = execFileSync(process.execPath, words, { encoding: 'utf8', cwd: project, maxBuffer: 1e8 });
  expect(JSON.parse(said)).toEqual(
    JSON.parse(JSON.stringify(texts.map((text) => [check(text), bridgeIslands(check(text)).text]))),
  );
}, 120_000);

test('its declarations are one file that imports nothing', async () => {
  const made = await declarations();
  expect(made.map((file) => path.basename(file.path))).toEqual(['index.d.ts', 'index.d.cts']);
  for (const { contents } of made) {
    expect(contents).toMatch(/^export \{ .*\bcheck\b/m);
    expect(contents).not.toMatch(/^(?:import|export) .*\bfrom\b/m);
    expect(contents).not.toContain('engineOf');
  }
}, 60_000);

test('its manifest says nothing that an editor reads', () => {
  expect(Object.keys(manifest)).not.toContain('contributes');
  expect(manifest).toMatchObject({
    sideEffects: false,
    optionalDependencies: { '@resvg/resvg-js': expect.any(String) },
  });
  expect(manifest.dependencies).toBeUndefined();
  expect(manifest.description).toMatch(/^[^%].{20,}/);
});
