/** `tombolo.json` in the editor: how a project begins, what is completed, and that changes are followed at once. */
import * as assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { codeOf, findings, hoverText, islandIn, noIslandIn, open, until } from './helpers';

const rest = (milliseconds: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, milliseconds));

const configBeside = ({ document }: vscode.TextEditor): vscode.Uri =>
  vscode.Uri.joinPath(document.uri, '..', 'tombolo.json');

const isThere = (uri: vscode.Uri): Thenable<boolean> =>
  vscode.workspace.fs.stat(uri).then(
    () => true,
    () => false,
  );

/** Runs Set Up as Stencil… and answers each question with the command, until it has ended. */
async function begin(answer: string): Promise<void> {
  let ended = false;
  const begun = Promise.resolve(vscode.commands.executeCommand('tombolo.begin')).finally(() => {
    ended = true;
  });
  while (!ended) {
    await rest(400);
    if (!ended) await vscode.commands.executeCommand(answer);
  }
  await begun;
}

/** Leaves the first question with Escape. */
export const declineToBegin = (): Promise<void> => begin('workbench.action.closeQuickOpen');

/** What is completed at the mark `|` of a text in place of the document's. */
async function completions(editor: vscode.TextEditor, marked: string): Promise<vscode.CompletionItem[]> {
  const { document } = editor;
  const whole = new vscode.Range(document.positionAt(0), document.positionAt(document.getText().length));
  await editor.edit((edit) => edit.replace(whole, marked.replace('|', '')));
  const at = document.positionAt(marked.indexOf('|'));
  const list: vscode.CompletionList = await vscode.commands.executeCommand(
    'vscode.executeCompletionItemProvider',
    document.uri,
    at,
  );
  return list.items;
}

/** The editor may not know the text yet that it is asked about: then it is asked again. */
async function hoverAt({ uri, positionAt }: vscode.TextDocument, offset: number): Promise<string> {
  for (let tries = 0; tries < 20; tries += 1) {
    const shown = await hoverText(uri, positionAt(offset));
    if (shown !== '') return shown;
    await rest(250);
  }
  return '';
}

const labelOf = ({ label }: vscode.CompletionItem): string =>
  (typeof label === 'string' ? label : label.label).replaceAll('"', '');

export const configTests: Record<string, () => Promise<void>> = {
  'leaving the questions of Set Up as Stencil… writes nothing': async () => {
    const editor = await open('beginning/reeds.svg');
    const before = editor.document.getText();
    await declineToBegin();
    await rest(500);
    assert.equal(editor.document.getText(), before);
    assert.equal(await isThere(configBeside(editor)), false);
    assert.deepEqual(findings(editor.document.uri), []);
  },

  'its answers write a tombolo.json and the size into the drawing; undo takes both away': async () => {
    const reeds = await open('beginning/reeds.svg');
    const sun = await open('beginning/sun.svg');
    const before = sun.document.getText();
    await begin('workbench.action.acceptSelectedQuickOpenItem');
    const config = configBeside(sun);
    const text = Buffer.from(await vscode.workspace.fs.readFile(config)).toString();
    assert.deepEqual(JSON.parse(text), {
      material: 'card-0.3',
      cutter: { tool: 'laser', kerf: '0.08mm', compensated: true },
    });
    assert.equal(vscode.window.activeTextEditor?.document.uri.toString(), sun.document.uri.toString());
    await islandIn(sun.document.uri);
    await islandIn(reeds.document.uri);
    assert.match(sun.document.getText(), /<svg[^>]* width="120mm" height="[\d.]+mm"/);
    assert.ok(!findings(sun.document.uri).map(codeOf).includes('unstated-size'));
    await vscode.commands.executeCommand('undo');
    for (let tries = 0; (await isThere(config)) && tries < 100; tries += 1) await rest(100);
    assert.equal(await isThere(config), false);
    assert.equal(sun.document.getText(), before);
    await until('nothing found', () => findings(reeds.document.uri).length === 0);
  },

  'Set Up as Stencil… never writes over a tombolo.json': async () => {
    const { document } = await open('project/reeds.svg');
    const config = vscode.Uri.joinPath(document.uri, '..', 'tombolo.json');
    const before = await vscode.workspace.fs.readFile(config);
    await islandIn(document.uri);
    await begin('workbench.action.acceptSelectedQuickOpenItem');
    assert.deepEqual(await vscode.workspace.fs.readFile(config), before);
  },

  'keys and values of tombolo.json are completed and explained': async () => {
    const editor = await open('project/tombolo.json');
    const before = editor.document.getText();
    const keys = await completions(editor, '{\n  "|"\n}\n');
    for (const key of ['size', 'material', 'materials', 'ground', 'accept', 'baseline', 'layers', 'cutter']) {
      assert.ok(
        keys.some((item) => labelOf(item) === key),
        `${key} in ${keys.map(labelOf).join()}`,
      );
    }
    const materials = await completions(editor, '{ "material": | }\n');
    const film = materials.find((item) => labelOf(item) === 'film-0.19');
    assert.ok(film, materials.map(labelOf).join());
    const severities = await completions(editor, '{ "checks": { "doubled-cut": | } }\n');
    assert.ok(
      severities.some((item) => labelOf(item) === 'hint'),
      severities.map(labelOf).join(),
    );
    await completions(editor, '{ "margin": "2mm" }|\n');
    assert.match(await hoverAt(editor.document, 4), /Sheet added around the artwork's frame/);
    const whole = new vscode.Range(0, 0, editor.document.lineCount, 0);
    await editor.edit((edit) => edit.replace(whole, before));
  },

  'a wrong key is underlined once, at its place, and the rest is followed': async () => {
    const { document: reeds } = await open('project/reeds.svg');
    await islandIn(reeds.uri);
    const editor = await open('project/tombolo.json');
    const { document } = editor;
    const before = document.getText();
    const whole = () => new vscode.Range(0, 0, document.lineCount, 0);
    await editor.edit((edit) =>
      edit.replace(
        whole(),
        '{ "materail": "card-0.5", ' +
          '"checks": { "floating-island": "loud" }, "accept": { "floating-island": "hung by hand" } }\n',
      ),
    );
    await noIslandIn(reeds.uri);
    const faults = await until('two faults', () => findings(document.uri).length === 2 && findings(document.uri));
    assert.deepEqual(
      faults.map(({ range }) => document.getText(range)),
      ['"materail"', '"loud"'],
    );
    await rest(500);
    assert.equal(vscode.languages.getDiagnostics(document.uri).length, 2, 'the schema says nothing of its own');
    await editor.edit((edit) => edit.replace(whole(), before));
    await islandIn(reeds.uri);
    await until('no fault', () => findings(document.uri).length === 0);
  },
};
