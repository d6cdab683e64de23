/** Commands and settings of the editor that are about no single finding. */
import * as assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { codeOf, findings, islandIn, noIslandIn, open, until } from './helpers';

const { commands, window, workspace } = vscode;

const uriOf = (name: string): vscode.Uri => {
  const [folder] = workspace.workspaceFolders ?? [];
  if (!folder) throw new Error('No folder is open.');
  return vscode.Uri.joinPath(folder.uri, name);
};

const tabs = (): vscode.Tab[] => window.tabGroups.all.flatMap((group) => group.tabs);

/** Answers question after question with what is proposed, until the command has ended. */
async function acceptAll(command: string): Promise<void> {
  let ended = false;
  const done = Promise.resolve(commands.executeCommand(command)).finally(() => {
    ended = true;
  });
  while (!ended) {
    await new Promise((resolve) => setTimeout(resolve, 400));
    if (!ended) await commands.executeCommand('workbench.action.acceptSelectedQuickOpenItem');
  }
  await done;
}

export const editorTests: Record<string, () => Promise<void>> = {
  'New Stencil… makes a drawing that is checked at once and has nothing wrong with it': async () => {
    await open('ring.svg');
    await acceptAll('tombolo.newStencil');
    const document = window.activeTextEditor?.document;
    assert.ok(document);
    assert.equal(document.uri.scheme, 'untitled');
    assert.match(document.uri.path, /\/stencil\.svg$/);
    assert.match(document.getText(), /width="148mm" height="105mm" viewBox="0 0 148 105"/);
    const symbols = await until('an outline', () => document.getText().includes('<title>Reeds</title>') && document);
    assert.deepEqual(findings(symbols.uri), []);
    await commands.executeCommand('workbench.action.revertAndCloseActiveEditor');
  },

  'the editor can make findings less serious, on top of tombolo.json': async () => {
    const { document } = await open('ring.svg');
    const island = await islandIn(document.uri);
    assert.equal(island.severity, vscode.DiagnosticSeverity.Error);
    const settings = workspace.getConfiguration('tombolo');
    await settings.update('severity', { 'floating-island': 'info' }, vscode.ConfigurationTarget.Workspace);
    await until('an info', () =>
      findings(document.uri).some(({ severity }) => severity === vscode.DiagnosticSeverity.Information),
    );
    await settings.update('severity', { 'floating-island': 'off' }, vscode.ConfigurationTarget.Workspace);
    await noIslandIn(document.uri);
    await settings.update('severity', undefined, vscode.ConfigurationTarget.Workspace);
    assert.equal((await islandIn(document.uri)).severity, vscode.DiagnosticSeverity.Error);
  },

  'Restart Server checks what is open anew, and findings follow the text again': async () => {
    const editor = await open('ring.svg');
    const { document } = editor;
    await islandIn(document.uri);
    await commands.executeCommand('tombolo.restartServer');
    await islandIn(document.uri);
    const inner = document.getText().indexOf('M20 30');
    const range = new vscode.Range(document.positionAt(inner), document.positionAt(document.getText().indexOf('"/>')));
    await editor.edit((edit) => edit.delete(range));
    await noIslandIn(document.uri);
    await commands.executeCommand('undo');
    await islandIn(document.uri);
  },

  'Apply All Safe Fixes applies them, in one step of undo': async () => {
    const { document } = await open('plain.svg');
    const before = document.getText();
    const change = new vscode.WorkspaceEdit();
    const text = before.replace(' width="60mm" height="60mm"', ' data-tombolo-reading="openings"');
    change.replace(document.uri, new vscode.Range(0, 0, document.lineCount, 0), text);
    await workspace.applyEdit(change);
    await until('no size', () => findings(document.uri).map(codeOf).includes('unstated-size'));
    await commands.executeCommand('tombolo.fixAll');
    await until('a size', () => !findings(document.uri).map(codeOf).includes('unstated-size'));
    await commands.executeCommand('undo');
    assert.equal(document.getText(), text);
    await commands.executeCommand('undo');
    assert.equal(document.getText(), before);
  },

  'the page of a check is shown as it is to be read, beside the drawing': async () => {
    const { document } = await open('ring.svg');
    const { code } = await islandIn(document.uri);
    assert.ok(typeof code === 'object');
    await commands.executeCommand('vscode.open', code.target);
    const page = await until('the page', () =>
      tabs().find(({ input }) => input instanceof vscode.TabInputCustom && input.uri.path === code.target.path),
    );
    assert.equal(page.label.includes('floating-island'), true);
    assert.ok(!tabs().some(({ input }) => input instanceof vscode.TabInputText && input.uri.path === code.target.path));
    const drawing = tabs().find(
      ({ input }) => input instanceof vscode.TabInputText && input.uri.path === document.uri.path,
    );
    assert.notEqual(page.group.viewColumn, drawing?.group.viewColumn);
    assert.equal(drawing?.isActive, true);
    await window.tabGroups.close(page);
  },

  'Check the Workspace tells of stencils that nobody has opened': async () => {
    const closed = uriOf('print/reeds.svg');
    assert.deepEqual(findings(closed), []);
    await commands.executeCommand('tombolo.checkWorkspace');
    await until('a narrow opening', () => findings(closed).map(codeOf).includes('narrow-opening'));
    assert.deepEqual(findings(uriOf('plain.svg')), []);
  },
};
