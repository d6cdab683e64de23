/** Every choice about bridges in the real editor: applied, checked again, undone to the byte. */
import * as assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { codeActions, codeOf, findings, islandIn, open, until } from './helpers';

/** Three noughts in one layer, in another a disc with a small counter and an island on two bridges: four islands. */
const DRAWING = 'waymarker.svg';
const ISLANDS = 4;

interface Choice {
  /** What the caret stands at: the second character of this. */
  readonly at: string;
  readonly kind: vscode.CodeActionKind;
  readonly title: RegExp;
  /** How many islands are left. */
  readonly left: number;
}

const { QuickFix, RefactorRewrite } = vscode.CodeActionKind;
const NOUGHT = 'v14h8v-14z"/>\n    <path d="M32';
const COUNTER = 'v4 h4 v-4';
const BRIDGE = 'V60H30';

const choices: Readonly<Record<string, Choice>> = {
  'the preferred plan': {
    at: NOUGHT,
    kind: QuickFix,
    title: /^Bridge this island \(2 bridges of 0\.80 mm\)$/,
    left: 3,
  },
  'the shortest place': { at: NOUGHT, kind: QuickFix, title: /^Add one bridge at the narrowest gap/, left: 3 },
  'two opposite sides': { at: COUNTER, kind: QuickFix, title: /^Add two opposite bridges/, left: 3 },
  'a bridge at the caret': { at: NOUGHT, kind: QuickFix, title: /^Add a bridge at the cursor \(1 /, left: 3 },
  'the whole layer': { at: NOUGHT, kind: QuickFix, title: /in layer "numerals" \(6 /, left: 1 },
  'the whole layer upright': {
    at: NOUGHT,
    kind: QuickFix,
    title: /in layer "numerals" with vertical bridges \(6 /,
    left: 1,
  },
  'the whole file': { at: COUNTER, kind: QuickFix, title: /in this file \(7 /, left: 0 },
  'cutting the island away': { at: COUNTER, kind: QuickFix, title: /^Remove the island/, left: 3 },
  'accepting it': { at: COUNTER, kind: QuickFix, title: /^Ignore floating-island/, left: 3 },
  'a standing bridge wider': {
    at: BRIDGE,
    kind: RefactorRewrite,
    title: /^Widen this bridge to 1\.20 mm$/,
    left: ISLANDS,
  },
  'a standing bridge elsewhere': {
    at: BRIDGE,
    kind: RefactorRewrite,
    title: /^Move this bridge 1\.60 mm to the/,
    left: ISLANDS,
  },
  'a standing bridge gone': { at: BRIDGE, kind: RefactorRewrite, title: /^Remove this bridge$/, left: ISLANDS },
};

const islandsIn = (uri: vscode.Uri): number =>
  findings(uri).filter((found) => codeOf(found) === 'floating-island').length;

function caretAt(document: vscode.TextDocument, text: string): vscode.Range {
  const offset = document.getText().indexOf(text);
  assert.ok(offset >= 0, `no ${text}`);
  const caret = document.positionAt(offset + 1);
  return new vscode.Range(caret, caret);
}

/** The title tells all once the change has been proven: in the background, the nearest to the caret first. */
async function proven(
  { uri }: vscode.TextDocument,
  range: vscode.Range,
  kind: vscode.CodeActionKind,
  title: RegExp,
): Promise<vscode.CodeAction & { edit: vscode.WorkspaceEdit }> {
  let actions: vscode.CodeAction[] = [];
  for (const end = Date.now() + 30_000; Date.now() < end; ) {
    actions = await codeActions(uri, range, kind);
    const action = actions.find((each) => title.test(each.title));
    if (action?.edit) return { ...action, edit: action.edit };
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  return assert.fail(`offered: ${actions.map((each) => each.title).join('; ')}`);
}

async function choose({ at, kind, title, left }: Choice): Promise<void> {
  const { document } = await open(DRAWING);
  const { uri } = document;
  await until('all islands', () => islandsIn(uri) === ISLANDS);
  const before = document.getText();
  const action = await proven(document, caretAt(document, at), kind, title);
  assert.ok(await vscode.workspace.applyEdit(action.edit));
  assert.notEqual(document.getText(), before);
  await until(`${left} islands`, () => islandsIn(uri) === left);
  assert.deepEqual(
    findings(uri)
      .map(codeOf)
      .filter((code) => code !== 'floating-island'),
    [],
  );
  await vscode.commands.executeCommand('undo');
  assert.equal(document.getText(), before);
  await until('all islands again', () => islandsIn(uri) === ISLANDS);
}

export const bridgeTests: Record<string, () => Promise<void>> = {
  ...Object.fromEntries(
    Object.entries(choices).map(([name, choice]) => [
      `choosing ${name} is applied, checked and undone to the byte`,
      () => choose(choice),
    ]),
  ),

  'the choices stand in order: this island, its layer, the file, and last to accept it': async () => {
    const { document } = await open(DRAWING);
    await islandIn(document.uri);
    const actions = await codeActions(document.uri, caretAt(document, NOUGHT), QuickFix);
    const reach = actions.map(({ title }) =>
      /^Accept/.test(title) ? 3 : /this file/.test(title) ? 2 : /in layer/.test(title) ? 1 : 0,
    );
    assert.ok(actions.length >= 6, actions.map(({ title }) => title).join('; '));
    assert.deepEqual(reach, [...reach].sort());
    assert.equal(actions[0]?.isPreferred, true);
  },

  'taking the last bridge out is offered with what comes of it': async () => {
    const { document } = await open(DRAWING);
    const { uri } = document;
    await islandIn(uri);
    const before = document.getText();
    const one = await proven(document, caretAt(document, COUNTER), QuickFix, /^Bridge this island \(1 /);
    assert.ok(await vscode.workspace.applyEdit(one.edit));
    await until('three islands', () => islandsIn(uri) === ISLANDS - 1);
    const bridged = document.getText();
    const place = [...bridged.matchAll(/[HVL][\d.]+/g)]
      .map(({ index }) => index)
      .filter((index) => index > bridged.indexOf('id="disc"') && index < bridged.indexOf('id="held"'));
    const titles = new Set<string>();
    for (const index of place) {
      const caret = document.positionAt(index + 1);
      const offered = await codeActions(uri, new vscode.Range(caret, caret), RefactorRewrite, 1);
      for (const { title } of offered) titles.add(title);
    }
    const last = /^Remove this bridge \(it is the last: 16\.0 mm² will fall out\)$/;
    assert.ok(
      [...titles].some((title) => last.test(title)),
      [...titles].join('; '),
    );
    await vscode.commands.executeCommand('undo');
    assert.equal(document.getText(), before);
  },
};
