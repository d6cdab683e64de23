/** Every package that is in a bundle is named with its licence in the notices that are shipped. */
import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { bundleInMemory, names } from '../../src/build/bundles.mjs';
import { notices } from '../../src/build/notices.mjs';

/** Of each bundle, what esbuild says is in it. */
let inputs: { readonly name: string; readonly files: readonly string[] }[] = [];

beforeAll(async () => {
  inputs = await Promise.all(
    names.map(async (name) => ({ name, files: (await bundleInMemory(name, { minify: true })).inputs })),
  );
}, 60_000);

/** Read another way than the notices do: from the package.json that is nearest to a file. */
function nameOf(file: string): string {
  const folder = file.slice(0, file.lastIndexOf('/'));
  try {
    const { name } = JSON.parse(readFileSync(`${folder}/package.json`, 'utf8')) as { name?: string };
    if (name !== undefined) return name;
  } catch {
    // It is farther up.
  }
  return nameOf(folder);
}

describe('the notices', () => {
  it('name each package of each bundle, and give the text of its licence', () => {
    const { contents } = notices(inputs.flatMap(({ files }) => files));
    const bundled = new Set(
      inputs.flatMap(({ files }) => files.filter((file) => file.includes('node_modules/')).map(nameOf)),
    );
    expect(bundled.size).toBeGreaterThan(40);
    for (const name of bundled) expect(contents).toMatch(new RegExp(`^${name.replaceAll('.', '\\.')} \\d`, 'm'));
    expect(contents.match(/^-{80}$/gm)).toHaveLength(bundled.size);
    // Of software by its authors, and of a licence in full.
    expect(contents).toContain('Angus Johnson');
    expect(contents).toContain('Permission is hereby granted, free of charge');
  });

  it('name nothing that is not bundled', () => {
    const { contents } = notices(['src/engine/index.ts', 'node_modules/flatbush/index.js']);
    expect(contents.match(/^-{80}$/gm)).toHaveLength(1);
  });
});
