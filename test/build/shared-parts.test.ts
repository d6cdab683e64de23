/** Which modules programs of a package share. */
import { expect, it as test } from 'vitest';
import { sharedModules } from '../../src/build/shared-parts.mjs';

/** As esbuild tells what it has bundled. @param inputs modules with what they import */
const graph = (inputs: Record<string, readonly string[]>, unused: readonly string[] = []) => ({
  inputs: Object.fromEntries(
    Object.entries(inputs).map(([name, imports]) => [
      name,
      { imports: imports.map((target) => ({ path: target })), format: name.endsWith('.cjs') ? 'cjs' : 'esm' },
    ]),
  ),
  outputs: {
    out: {
      inputs: Object.fromEntries(
        Object.keys(inputs).map((name) => [name, { bytesInOutput: unused.includes(name) ? 0 : 10 }]),
      ),
    },
  },
});

const read = () => 'export const a = 1;';

test('shares what two of them use, and nothing that one has alone', () => {
  const one = graph({ 'src/a.ts': ['src/c.ts'], 'src/c.ts': [] });
  const other = graph({ 'src/b.ts': ['src/c.ts'], 'src/c.ts': [] });
  expect(sharedModules([one, other], read)).toEqual(['src/c.ts']);
});

test('leaves apart what does not lead to the same modules in both, and all that leads there', () => {
  const common = { 'src/list.ts': ['src/c.ts'], 'src/plain.ts': [] };
  const one = graph({ ...common, 'src/c.ts': ['node.cjs'], 'node.cjs': [] });
  const other = graph({ ...common, 'src/c.ts': ['web.cjs'], 'web.cjs': [] });
  expect(sharedModules([one, other], read)).toEqual(['src/plain.ts']);
});

test('takes no module for shared of which nothing is left in one of them', () => {
  const modules = { 'src/names.ts': ['src/c.ts'], 'src/c.ts': [] };
  expect(sharedModules([graph(modules), graph(modules, ['src/names.ts'])], read)).toEqual(['src/c.ts']);
});

test('heeds which of them it is asked to share for', () => {
  const modules = { 'package.cjs': [] };
  const none = graph({});
  const isInFirst = ([first]: readonly boolean[]) => first === true;
  expect(sharedModules([graph(modules), none, graph(modules)], read, isInFirst)).toEqual(['package.cjs']);
  expect(sharedModules([none, graph(modules), graph(modules)], read, isInFirst)).toEqual([]);
});

test('leaves modules of the newer kind with a default export in each of them, which would be another where it is required', () => {
  const modules = { 'list.mjs': [], 'tree.mjs': [] };
  const text = (name: string) => (name === 'tree.mjs' ? 'export { Tree as default }' : 'export class List {}');
  expect(sharedModules([graph(modules), graph(modules)], text)).toEqual(['list.mjs']);
});
