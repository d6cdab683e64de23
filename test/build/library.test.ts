/** What a program gets that imports the package. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { bundle, root } from '../../src/build/bundles.mjs';
import { declarations } from '../../src/build/declarations.mjs';

const outdir = mkdtempSync(path.join(tmpdir(), 'tombolo-library-'));
let engine: string;

beforeAll(async () => {
  engine = await bundle('engine', { outdir });
});
afterAll(() => rmSync(outdir, { recursive: true }));

test('the engine stands alone: it imports nothing, of Node or otherwise', () => {
  const lines = readFileSync(engine, 'utf8').matchAll(/^import .*?from ["'](.+)["'];$/gm);
  const imports = [...lines].map(([, name]) => name);
  expect(imports).toEqual([]);
});

test('of the looks at array elements that tests make, nothing is shipped', async () => {
  const shipped = readFileSync(await bundle('engine', { outdir: path.join(outdir, 'shipped'), minify: true }), 'utf8');
  expect(shipped.includes('tomboloAssertions')).toBe(false);
  expect(shipped.includes('There is no element at this index')).toBe(false);
});

test('it checks, mends and edits when imported as a module', () => {
  const program = `
    import { applyEdits, check, fixesFor } from ${JSON.stringify(pathToFileURL(engine).href)};
    const text = '<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="60mm" viewBox="0 0 60 60">'
      + '<path d="M10 10h40v40h-40z M20 20v20h20v-20z"/></svg>';
    const report = check(text);
    const [mend] = fixesFor(report, report.findings[0]).fixes;
    console.log(JSON.stringify([report, check(applyEdits(text, mend.edits))].map(
      ({ findings }) => findings.map((finding) => finding.check))));`;
  const said = execFileSync(process.execPath, ['--input-type=module', '--eval', program], { encoding: 'utf8' });
  expect(JSON.parse(said)).toEqual([['floating-island'], []]);
});

test('its declarations name files as resolvers want them, and only files that are there', () => {
  const files = declarations();
  const paths = new Set(files.map((file) => path.relative(path.join(root, 'dist/types'), file.path)));
  expect(paths).toContain('engine/index.d.ts');
  for (const file of files) {
    for (const [, name] of file.contents.matchAll(/from ['"](\.[^'"]+)['"]/g)) {
      const target = path.join(path.dirname(file.path), name!.replace(/\.js$/, '.d.ts'));
      expect(paths, `${file.path}: ${name}`).toContain(path.relative(path.join(root, 'dist/types'), target));
    }
  }
});
