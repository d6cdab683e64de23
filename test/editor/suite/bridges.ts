/** Every choice about bridges in the real editor: applied, checked again, undone to the byte. */
import * as assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { codeActions, codeOf, findings, islandIn, open, until } from './helpers';

/** Three noughts in one layer, in another a disc with a small counter and an island on two bridges: four islands. */
const DRAWING = 'waymarker.svg';
const ISLANDS = 4;

/** A nought alone in its layer, and a disc with a small counter alone in another. */
const ALONE = 'alone.svg';
/** Nothing but three noughts in one layer: no other layer takes room in the list. */
const NOUGHTS = 'noughts.svg';
const islandsOf: Readonly<Record<string, number>> = { [DRAWING]: ISLANDS, [ALONE]: 2, [NOUGHTS]: 3 };

interface Choice {
  readonly drawing?: string;
  /** What the caret stands at: the second character of this. */
  readonly at: string;
  /** Where a stretch of text is selected from the caret on: then nothing at the cursor is offered, and others have room. */
  readonly selected?: true;
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
  'the narrowest gap': {
    drawing: ALONE,
    at: 'v14h8v-14z',
    selected: true,
    kind: QuickFix,
    title: /^Add one bridge at the narrowest gap$/,
    left: 1,
  },
  'two opposite bridges': {
    drawing: ALONE,
    at: COUNTER,
    selected: true,
    kind: QuickFix,
    title: /^Add two opposite bridges$/,
    left: 1,
  },
  'a bridge at the caret': { at: NOUGHT, kind: QuickFix, title: /^Add a bridge at the cursor \(1 /, left: 3 },
  'the whole layer': { at: NOUGHT, kind: QuickFix, title: /in layer "numerals" \(6 /, left: 1 },
  'a row of counters, which is upright by itself': {
    drawing: NOUGHTS,
    at: 'v14h8v-14z',
    selected: true,
    kind: QuickFix,
    title: /in layer "numerals" \(6 /,
    left: 0,
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

function caretAt(document: vscode.TextDocument, text: string, selected = 0): vscode.Range {
  const offset = document.getText().indexOf(text);
  assert.ok(offset >= 0, `no ${text}`);
  return new vscode.Range(document.positionAt(offset + 1), document.positionAt(offset + 1 + selected));
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

async function choose({ drawing = DRAWING, at, selected, kind, title, left }: Choice): Promise<void> {
  const { document } = await open(drawing);
  const { uri } = document;
  const all = islandsOf[drawing];
  await until('all islands', () => islandsIn(uri) === all);
  const before = document.getText();
  const action = await proven(document, caretAt(document, at, selected ? 1 : 0), kind, title);
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
  await until('all islands again', () => islandsIn(uri) === all);
}

export const bridgeTests: Record<string, () => Promise<void>> = {
  ...Object.fromEntries(
    Object.entries(choices).map(([name, choice]) => [
      `choosing ${name} is applied, checked and undone to the byte`,
      () => choose(choice),
    ]),
  ),

  'the choices stand in order: this island, its layer or the file, and last to accept it; six at most': async () => {
    const { document } = await open(DRAWING);
    await islandIn(document.uri);
    const reach = ({ title }: vscode.CodeAction) =>
      /^Ignore/.test(title) ? 3 : /this file|two sheets/.test(title) ? 2 : /in layer/.test(title) ? 1 : 0;
    for (const [at, reaches] of [
      [NOUGHT, [0, 0, 0, 1, 2, 3]],
      [COUNTER, [0, 0, 0, 2, 2, 3]],
    ] as const) {
      const actions = await codeActions(document.uri, caretAt(document, at), QuickFix);
      assert.deepEqual(actions.map(reach), reaches, actions.map(({ title }) => title).join('; '));
      assert.deepEqual(
        actions.map(({ isPreferred }) => isPreferred === true),
        [true, false, false, false, false, false],
      );
    }
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
    const last = /^Remove this bridge \(it is the last: .* will fall out\)$/;
    const offered = [];
    for (const index of place) {
      const caret = document.positionAt(index + 1);
      const range = new vscode.Range(caret, caret);
      const titles = (await codeActions(uri, range, RefactorRewrite, 1)).map(({ title }) => title);
      if (titles.some((title) => last.test(title))) offered.push(range);
    }
    assert.ok(offered[0], 'said before anything is proven');
    await proven(
      document,
      offered[0],
      RefactorRewrite,
      /^Remove this bridge \(it is the last: 16\.0 mm² will fall out\)$/,
    );
    await vscode.commands.executeCommand('undo');
    assert.equal(document.getText(), before);
  },
};
