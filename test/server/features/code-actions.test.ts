import { expect, test } from 'vitest';
import {
  CancellationToken,
  CancellationTokenSource,
  type TextDocumentEdit,
  type TextEdit,
} from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { check } from '../../../src/engine/index';
import { CheckedDocument } from '../../../src/server/documents/checked-document';
import { codeActions } from '../../../src/server/features/code-actions';

/** Two rings: two islands in one layer. */
const text = `<svg xmlns="http://www.w3.org/2000/svg" data-tombolo-reading="openings"
  width="60mm" height="30mm" viewBox="0 0 60 30">
<path d="M5 5h20v20h-20z M10 10v10h10v-10z"/><path d="M35 5h20v20h-20z M40 10v10h10v-10z"/>
</svg>`;

const open = () => TextDocument.create('file:///two.svg', 'xml', 3, text);
const all = { start: { line: 0, character: 0 }, end: { line: 9, character: 0 } };
const asked = { textDocument: { uri: 'file:///two.svg' }, range: all, context: { diagnostics: [] } };

test('the mends of single islands come before that of the layer, which comes once', async () => {
  const actions = await codeActions(CheckedDocument.check(open(), undefined), asked, CancellationToken.None);
  const titles = actions.map(({ title }) => title);
  const layer = titles.filter((title) => /every island in layer/i.test(title));
  expect(layer, titles.join('; ')).toHaveLength(1);
  const last = titles.findLastIndex((title) => /^Bridge this island/.test(title));
  expect(last).toBeGreaterThan(0);
  expect(titles.indexOf(layer[0] ?? '')).toBeGreaterThan(last);
});

test('nothing is offered to one who no longer asks', async () => {
  const source = new CancellationTokenSource();
  source.cancel();
  expect(await codeActions(CheckedDocument.check(open(), undefined), asked, source.token)).toEqual([]);
});

test('edits are for the version that was checked, though the text moves on while they are proven', async () => {
  const document = open();
  const pending = codeActions(CheckedDocument.check(document, undefined), asked, CancellationToken.None);
  TextDocument.update(document, [{ text: `<!-- a line more -->\n${text}` }], 4);
  const actions = await pending;
  const change = actions[0]?.edit?.documentChanges?.[0] as TextDocumentEdit;
  expect(change.textDocument.version).toBe(3);
  const mended = check(TextDocument.applyEdits(open(), change.edits as TextEdit[]));
  expect(mended.findings.map((finding) => finding.check)).toEqual(['floating-island']);
});

test('at the caret a bridge is offered there, before that of the layer', async () => {
  const place = open().positionAt(text.indexOf('M10 10v10') + 'M10 10v'.length);
  const actions = await codeActions(
    CheckedDocument.check(open(), undefined),
    { ...asked, range: { start: place, end: place } },
    CancellationToken.None,
  );
  const titles = actions.map(({ title }) => title);
  const here = titles.findIndex((title) => title.startsWith('Bridge it here'));
  expect(here, titles.join('; ')).toBeGreaterThan(0);
  expect(here).toBeLessThan(titles.findIndex((title) => /every island in layer/.test(title)));
});

test('at a bridge its changes are offered to one who asks for them', async () => {
  const bridged = text.replace(
    'M5 5h20v20h-20z M10 10v10h10v-10z',
    'M5 5h20v9.6h-5v-4.6h-10v4.6h-5z M5 15.4h5v4.6h10v-4.6h5v9.6h-20z',
  );
  const document = () => TextDocument.create('file:///two.svg', 'xml', 3, bridged);
  const place = document().positionAt(bridged.indexOf('M5 15.4h5') + 'M5 15.4h'.length);
  const ask = (context: object) =>
    codeActions(
      CheckedDocument.check(document(), undefined),
      {
        ...asked,
        range: { start: place, end: place },
        context: { diagnostics: [], ...context },
      },
      CancellationToken.None,
    );
  const titles = (await ask({ only: ['refactor'] })).map(({ title }) => title);
  expect(titles).toEqual([
    'Widen this bridge to 1.20 mm',
    'Widen this bridge to 1.60 mm',
    'Move this bridge 1.60 mm down',
    'Move this bridge 1.60 mm up',
    'Remove this bridge',
  ]);
  expect(await ask({ triggerKind: 2 })).toEqual([]);
  const [wider] = await ask({ only: ['refactor.rewrite'] });
  const change = wider?.edit?.documentChanges?.[0] as TextDocumentEdit;
  expect(TextDocument.applyEdits(document(), change.edits as TextEdit[])).toMatch(/15\.601/);
});
