/** Fixes that cannot be had are shown with their reason, where one looks for them. */
import { expect, test } from 'vitest';
import { CancellationToken, CodeActionTriggerKind } from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { CheckedDocument } from '../../../src/server/documents/checked-document';
import { codeActions } from '../../../src/server/features/code-actions';
import { hoverAt } from '../../../src/server/features/symbols-and-hover';

/** An island that there is no place for. */
const text = `<svg xmlns="http://www.w3.org/2000/svg" data-tombolo-reading="openings"
  width="60mm" height="60mm" viewBox="0 0 60 60">
<path fill-rule="evenodd" d="M20 20h20v20h-20z M30 30h.2v.2h-.2z"/>
</svg>`;
const island = text.indexOf('h.2v.2') + 1;
const document = TextDocument.create('file:///one.svg', 'xml', 1, text);
const at = document.positionAt(island);

function ask(checked: CheckedDocument, showsDisabled: boolean, triggerKind: CodeActionTriggerKind) {
  const params = {
    textDocument: { uri: document.uri },
    range: { start: at, end: at },
    context: { diagnostics: [], triggerKind },
  };
  return codeActions(checked, params, CancellationToken.None, showsDisabled);
}

test('the lightbulb shows them as disabled, behind all that can be had', async () => {
  const checked = CheckedDocument.check(document, undefined);
  const actions = await ask(checked, true, CodeActionTriggerKind.Invoked);
  const refused = actions.find(({ title }) => title === 'Bridge this island');
  expect(refused?.disabled?.reason).toBe('No place for a bridge was found for the island at 30.1, 30.1 mm.');
  expect(refused?.edit).toBeUndefined();
  const first = actions.findIndex(({ disabled }) => disabled);
  expect(first).toBeGreaterThan(0);
  expect(actions.slice(first).every(({ disabled }) => disabled)).toBe(true);
});

test('but not to an editor that cannot show them so, nor where nobody asked', async () => {
  const checked = CheckedDocument.check(document, undefined);
  for (const actions of [
    await ask(checked, false, CodeActionTriggerKind.Invoked),
    await ask(checked, true, CodeActionTriggerKind.Automatic),
  ]) {
    expect(actions.length).toBeGreaterThan(0);
    expect(actions.filter(({ disabled }) => disabled)).toEqual([]);
  }
});

test('the hover tells them once they are known, and proves nothing for it', async () => {
  const checked = CheckedDocument.check(document, undefined);
  const hover = () => JSON.stringify(hoverAt(checked, island)?.contents) ?? '';
  expect(hover()).not.toContain('Not offered');
  await ask(checked, false, CodeActionTriggerKind.Invoked);
  expect(hover()).toContain('Not offered for floating');
  expect(hover()).toContain('No place for a bridge was found');
});

test('two layers of one title are each offered their own bridges', async () => {
  const ring = (x: number, y: number) => `<path d="M${x} ${y}h20v20h-20z M${x + 5} ${y + 5}v10h10v-10z"/>`;
  const sky = (y: number) => `<g><title>sky</title>${ring(5, y)}${ring(35, y)}</g>`;
  const two = `<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="60mm" viewBox="0 0 60 60"
    data-tombolo-reading="openings">${sky(5)}${sky(35)}</svg>`;
  const drawing = TextDocument.create('file:///two.svg', 'xml', 1, two);
  const range = { start: drawing.positionAt(0), end: drawing.positionAt(two.length) };
  const checked = CheckedDocument.check(drawing, undefined);
  // Proven before: the lightbulb's own time must not decide what is shown.
  for (const index of checked.report.findings.keys()) checked.fixes(index);
  const params = { textDocument: { uri: drawing.uri }, range, context: { diagnostics: [] } };
  const actions = await codeActions(checked, params, CancellationToken.None);
  const layers = actions.filter(({ title }) => title.startsWith('Bridge every island in layer "sky"'));
  expect(layers).toHaveLength(2);
  expect(JSON.stringify(layers[0]?.edit)).not.toBe(JSON.stringify(layers[1]?.edit));
});
