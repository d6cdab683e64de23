import * as assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { declineToBegin } from './config-tests';
import { codeOf, findings, islandIn, noIslandIn, open, quickFixes, until } from './helpers';

export const tests: Record<string, () => Promise<void>> = {
  'an island is underlined where it is cut out, and its code leads to its page': async () => {
    const { document } = await open('ring.svg');
    const island = await islandIn(document.uri);
    assert.equal(island.severity, vscode.DiagnosticSeverity.Error);
    assert.match(document.getText(island.range), /^a10 10/);
    assert.match(island.message, /^Island, 314\.\d mm²: it will fall out/);
    assert.ok(typeof island.code === 'object', 'the code has a target');
    const page = island.code.target;
    assert.ok(page.path.endsWith('/dist/checks/floating-island.md'), String(page));
    const text = await vscode.workspace.openTextDocument(page);
    assert.match(text.getText(), /island/i);
  },

  'typing brings the findings of the text as it stands': async () => {
    const editor = await open('ring.svg');
    const { document } = editor;
    await islandIn(document.uri);
    const before = document.getText();
    const inner = before.indexOf('M20 30');
    const range = new vscode.Range(document.positionAt(inner), document.positionAt(before.indexOf('"/>')));
    await editor.edit((edit) => edit.delete(range));
    await noIslandIn(document.uri);
    await vscode.commands.executeCommand('undo');
    await islandIn(document.uri);
    assert.equal(document.getText(), before);
  },

  'the lightbulb bridges the island, and undo brings back every byte': async () => {
    const { document } = await open('ring.svg');
    const island = await islandIn(document.uri);
    const before = document.getText();
    const actions = await quickFixes(document.uri, island.range);
    const bridge = actions.find(({ title }) => /bridge/i.test(title));
    assert.ok(bridge?.edit, `offered: ${actions.map(({ title }) => title).join(', ')}`);
    assert.ok(await vscode.workspace.applyEdit(bridge.edit));
    await until('nothing found', () => findings(document.uri).length === 0);
    await vscode.commands.executeCommand('undo');
    assert.equal(document.getText(), before);
    await islandIn(document.uri);
  },

  'Bridge Every Island does so in one step of undo': async () => {
    const { document } = await open('ring.svg');
    await islandIn(document.uri);
    const before = document.getText();
    await vscode.commands.executeCommand('tombolo.bridgeIslands');
    await noIslandIn(document.uri);
    assert.notEqual(document.getText(), before);
    await vscode.commands.executeCommand('undo');
    assert.equal(document.getText(), before);
  },

  'a fix elsewhere leaves the caret, the lines and what is seen where they were': async () => {
    const editor = await open('ring.svg');
    const { document } = editor;
    const island = await islandIn(document.uri);
    const before = document.getText();
    const carets = [new vscode.Position(2, 12), new vscode.Position(5, 2)];
    for (const caret of carets) {
      editor.selection = new vscode.Selection(caret, caret);
      const seen = editor.visibleRanges[0];
      await vscode.commands.executeCommand('tombolo.bridgeIslands');
      await noIslandIn(document.uri);
      assert.notEqual(document.getText(), before);
      assert.deepEqual(editor.selection.active, caret);
      assert.deepEqual(editor.visibleRanges[0], seen);
      assert.equal(document.lineCount, before.split('\n').length);
      assert.match(document.lineAt(4).text, /^ {11}M/);
      await vscode.commands.executeCommand('undo');
      await islandIn(document.uri);
    }
    assert.equal(document.getText(), before);
    assert.match(document.getText(island.range), /^a10 10/);
  },

  'Wrap Path Data shortens long lines and draws the same, in one step of undo': async () => {
    const editor = await open('ring.svg');
    const { document } = editor;
    await islandIn(document.uri);
    const before = document.getText();
    const at = before.indexOf('\n           M20 30');
    const lines = new vscode.Range(document.positionAt(at), document.positionAt(at + 12));
    await editor.edit((edit) => edit.replace(lines, ' '), { undoStopBefore: true, undoStopAfter: true });
    const long = document.getText();
    assert.ok(document.lineAt(3).text.length > 100);
    await vscode.commands.executeCommand('tombolo.wrapPathData');
    await until('two lines', () => document.lineAt(4).text.includes('M20 30'));
    assert.equal(document.getText(), before);
    await vscode.commands.executeCommand('undo');
    assert.equal(document.getText(), long);
    await vscode.commands.executeCommand('undo');
    assert.equal(document.getText(), before);
  },

  'an SVG that nobody called a stencil is left in peace until begun': async () => {
    const { document } = await open('plain.svg');
    await new Promise((resolve) => setTimeout(resolve, 1500));
    assert.deepEqual(findings(document.uri).map(codeOf), []);
    await declineToBegin();
    await new Promise((resolve) => setTimeout(resolve, 500));
    assert.deepEqual(findings(document.uri).map(codeOf), []);
    const change = new vscode.WorkspaceEdit();
    change.insert(document.uri, document.positionAt('<svg'.length), ' data-tombolo-reading="openings"');
    await vscode.workspace.applyEdit(change);
    await islandIn(document.uri);
    await vscode.commands.executeCommand('undo');
    await until('nothing found', () => findings(document.uri).length === 0);
  },

  'a tombolo.json makes stencils of the drawings beside it, and its edits are followed': async () => {
    const { document } = await open('project/reeds.svg');
    await islandIn(document.uri);
    const config = await open('project/tombolo.json');
    const end = config.document.getText().lastIndexOf('\n}');
    await config.edit((edit) =>
      edit.insert(
        config.document.positionAt(end),
        ',\n  "checks": { "floating-island": "off" },\n  "limits": { "bridge": 1 }',
      ),
    );
    await noIslandIn(document.uri);
    const [fault] = await until('a fault', () => {
      const faults = findings(config.document.uri);
      return faults.length > 0 && faults;
    });
    assert.equal(config.document.getText(fault?.range), '1');
    await vscode.commands.executeCommand('undo');
    await islandIn(document.uri);
  },

  'the bench opens beside the text, which stays active': async () => {
    const { document } = await open('ring.svg');
    await vscode.commands.executeCommand('tombolo.openBench', document.uri);
    const tab = await until('the bench', () =>
      vscode.window.tabGroups.all
        .flatMap(({ tabs }) => tabs)
        .find(({ input }) => input instanceof vscode.TabInputWebview && input.viewType.includes('tombolo.bench')),
    );
    assert.equal(tab.label, 'Stencil Preview (Bench): ring.svg');
    assert.equal(vscode.window.activeTextEditor?.document.uri.toString(), document.uri.toString());
    assert.notEqual(tab.group.viewColumn, vscode.window.activeTextEditor?.viewColumn);
  },

  'no setting of the user was written': async () => {
    const associations = vscode.workspace.getConfiguration('workbench').inspect('editorAssociations');
    assert.equal(associations?.workspaceValue, undefined);
    assert.equal(associations?.workspaceFolderValue, undefined);
  },
};
