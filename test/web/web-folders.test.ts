/** What a project may read where there is no disk: its own folder and those that are open. */
import { beforeEach, expect, it as test } from 'vitest';
import { WebFolders } from '../../src/web/web-folders';

const folder = (name: string) => ({ name, uri: `vscode-vfs://github/marsh/${name}` });
const at = (path: string) => `vscode-vfs://github/marsh/${path}`;
const CONFIG = at('trail/tombolo.json');

let folders: WebFolders;

beforeEach(() => {
  folders = new WebFolders();
  folders.open({ workspaceFolders: [folder('posts')], rootUri: null });
});

test('holds the project and what is open', () => {
  expect(folders.holds(at('trail/sheets/sun.svg'), CONFIG)).toBe(true);
  expect(folders.holds(at('posts/post-8.svg'), CONFIG)).toBe(true);
});

test.each([at('other/sun.svg'), at('trail/../other/sun.svg'), at('posts-2/sun.svg'), 'file:///etc/passwd'])(
  'does not hold %s',
  (uri) => expect(folders.holds(uri, CONFIG)).toBe(false),
);

test('follows what is opened and closed', () => {
  folders.change([at('other')], [at('posts')]);
  expect(folders.holds(at('other/sun.svg'), CONFIG)).toBe(true);
  expect(folders.holds(at('posts/post-8.svg'), CONFIG)).toBe(false);
});
