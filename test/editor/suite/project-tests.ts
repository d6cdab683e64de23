/** A project of several files: what is found in one of them is shown in all that it concerns. */
import * as assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { codeOf, findings, hoverText, open, until } from './helpers';

const beside = (uri: vscode.Uri, name: string): vscode.Uri => vscode.Uri.joinPath(uri, '..', name);
const codesIn = (uri: vscode.Uri): string[] => findings(uri).map(codeOf).sort();
const nameOf = ({ path }: vscode.Uri): string => path.split('/').at(-1) ?? '';

async function gapIn(uri: vscode.Uri): Promise<{ gap: vscode.Diagnostic; file: vscode.Uri }> {
  return until('a bare gap', () => {
    for (const file of [uri, beside(uri, 'disc.svg')]) {
      const gap = findings(file).find((found) => codeOf(found) === 'bare-gap');
      if (gap) return { gap, file };
    }
    return false;
  });
}

export const projectTests: Record<string, () => Promise<void>> = {
  'files of a project that are not open are checked too, and layers that name nothing are underlined': async () => {
    const { document } = await open('stack/post.svg');
    const disc = beside(document.uri, 'disc.svg');
    await until('an island in a file that is not open', () => codesIn(disc).includes('floating-island'));
    assert.ok(!vscode.workspace.textDocuments.some(({ uri }) => uri.toString() === disc.toString()));
    const config = beside(document.uri, 'tombolo.json');
    const [fault] = await until('a fault', () => findings(config).length > 0 && findings(config));
    const text = await vscode.workspace.openTextDocument(config);
    assert.equal(text.getText(fault?.range), '"moon.svg"');
  },

  'a gap between two files leads from one to the other, follows edits, and undo brings it back': async () => {
    const editor = await open('stack/post.svg');
    const { document } = editor;
    const { gap, file } = await gapIn(document.uri);
    const named = [file, ...(gap.relatedInformation?.map(({ location }) => location.uri) ?? [])].map(nameOf);
    assert.deepEqual([...new Set(named)].sort(), ['disc.svg', 'post.svg']);
    const at = document.positionAt(document.getText().indexOf('26.3'));
    await editor.edit((edit) => edit.replace(new vscode.Range(at, at.translate(0, 4)), '25'));
    await until('no gap', () => !codesIn(file).includes('bare-gap'));
    await vscode.commands.executeCommand('undo');
    await gapIn(document.uri);
  },

  'a file that is written outside of the editor is checked again': async () => {
    const { document } = await open('stack/post.svg');
    const disc = beside(document.uri, 'disc.svg');
    const before = await vscode.workspace.fs.readFile(disc);
    await until('an island', () => codesIn(disc).includes('floating-island'));
    const text = new TextDecoder().decode(before).replace(' M10 10 v6 h6 v-6 Z', '');
    await vscode.workspace.fs.writeFile(disc, new TextEncoder().encode(text));
    await until('no island', () => !codesIn(disc).includes('floating-island'));
    await vscode.workspace.fs.writeFile(disc, before);
    await until('an island again', () => codesIn(disc).includes('floating-island'));
  },

  'the outline has layers, openings and pieces, and hovering a shape gives its measures': async () => {
    const { document } = await open('stack/post.svg');
    await gapIn(document.uri);
    const symbols: vscode.DocumentSymbol[] = await vscode.commands.executeCommand(
      'vscode.executeDocumentSymbolProvider',
      document.uri,
    );
    const post = symbols.find(({ name }) => name === 'post');
    assert.match(post?.detail ?? '', /^1 opening, 64\.0 mm of cut$/);
    assert.deepEqual(
      post?.children.map(({ name }) => name.split(' ')[0]),
      ['Sheet', 'Opening'],
    );
    const at = document.positionAt(document.getText().indexOf('<rect') + 2);
    const measures = /8\.00 × 24\.00 mm · 192\.00 mm² · 64\.00 mm of cut/;
    // What is not measured in time is there for the next time.
    for (let tries = 0; tries < 20 && !measures.test(await hoverText(document.uri, at)); tries += 1) {
      assert.match(await hoverText(document.uri, at), /\*\*rect\*\*/);
      await new Promise((resolve) => setTimeout(resolve, 100));
    }
    assert.match(await hoverText(document.uri, at), measures);
  },
};
