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
