/** Whatever was opened, written and closed before, what is shown is what a new server shows. */
import { afterEach, beforeEach, expect, test } from 'vitest';
import { ring, sheet } from '../../engine/project-files';
import { LocalEditor } from '../local-editor';

const stencil = sheet(ring(5, 5), 'data-tombolo-reading="openings" width="60mm" height="60mm"');
const layers = (...names: string[]) => JSON.stringify({ layers: names.map((from) => ({ from })) });

let editor: LocalEditor;

beforeEach(() => {
  editor = new LocalEditor();
});
afterEach(() => editor.dispose());

/** What is shown under each file, once nothing is to be checked any more. */
async function shownAsInNewServer(): Promise<Record<string, string[]>> {
  const shown = await editor.settled();
  editor.restart();
  expect(shown).toEqual(await editor.settled());
  return shown;
}

test('a layer that names no file is still told when another drawing of the folder was checked since', async () => {
  editor.type('tombolo.json', layers('heron.sv {'));
  await editor.settled();
  editor.type('sun.svg', stencil);
  const { 'tombolo.json': told } = await shownAsInNewServer();
  expect(told).toEqual([expect.stringMatching(/^No readable file "heron.sv \{"/)]);
});

test('a project that leaves no open drawing in force shows nothing of its closed ones', async () => {
  editor.write('sun.svg', stencil);
  editor.write('tombolo.json', layers('heron.svg', 'sun.svg'));
  editor.type('heron.svg', stencil);
  expect(Object.keys(await editor.settled())).toEqual(['heron.svg', 'sun.svg']);
  editor.write('tombolo.json', '{}');
  expect(Object.keys(await shownAsInNewServer())).toEqual(['heron.svg']);
});

test('a tombolo.json that is closed unsaved counts as it is on disk', async () => {
  editor.write('sun.svg', stencil);
  editor.write('tombolo.json', layers('sun.svg'));
  editor.type('heron.svg', stencil);
  editor.type('tombolo.json', layers('heron.svg'));
  await editor.settled();
  editor.close('tombolo.json');
  expect(Object.keys(await shownAsInNewServer())).toEqual(['heron.svg']);
});

test('a check of a project that ends when its drawing is no part of it any more is not shown', async () => {
  editor.write('sun.svg', stencil);
  editor.write('tombolo.json', layers('heron.svg', 'sun.svg'));
  editor.type('heron.svg', stencil);
  await editor.checking();
  editor.write('tombolo.json', '{}');
  expect(Object.keys(await shownAsInNewServer())).toEqual(['heron.svg']);
});

test('an outer project lets go of a drawing whose folder has a tombolo.json of its own by now', async () => {
  editor.write('sun.svg', stencil);
  editor.write('tombolo.json', layers('trail/heron.svg', 'sun.svg'));
  editor.type('trail/heron.svg', stencil);
  expect(Object.keys(await editor.settled())).toEqual(['heron.svg', 'sun.svg']);
  editor.type('trail/tombolo.json', '{}');
  expect(Object.keys(await shownAsInNewServer())).toEqual(['heron.svg']);
});

test('a project of which nothing is open any more leaves no fault of a layer behind', async () => {
  editor.write('tombolo.json', layers('sun.svg', 'moon.svg'));
  editor.type('heron.svg', stencil);
  editor.type('sun.svg', stencil);
  expect((await editor.settled())['tombolo.json']).toHaveLength(1);
  editor.close('sun.svg');
  expect(Object.keys(await shownAsInNewServer())).toEqual(['heron.svg']);
});

test('a check that ends late does not bring back an earlier tombolo.json', async () => {
  editor.run('onSave');
  editor.type('tombolo.json', '{ "margin": 3 }');
  await editor.settled();
  editor.type('sun.svg', stencil);
  await editor.checking();
  editor.type('tombolo.json', '{ "margin": "3mm" }');
  expect((await editor.settled())['tombolo.json']).toBeUndefined();
});
