/** Fixes that cannot be had are shown with their reason, where one looks for them. */
import { afterEach, beforeEach, expect, test } from 'vitest';
import { CancellationToken, type CodeAction, CodeActionTriggerKind } from 'vscode-languageserver';
import type { KnownDocument } from '../../../src/server/documents/known-document';
import { codeActions } from '../../../src/server/features/code-actions';
import { hoverAt } from '../../../src/server/features/hover';
import { resolveAction, resolveAll } from '../../../src/server/features/resolve-action';
import { LocalServer } from '../local-server';

/** An island that there is no place for. */
const text = `<svg xmlns="http://www.w3.org/2000/svg" data-tombolo-reading="openings"
  width="60mm" height="60mm" viewBox="0 0 60 60">
<path fill-rule="evenodd" d="M20 20h20v20h-20z M30 30h.23v.23h-.23z"/>
</svg>`;
const island = text.indexOf('h.23v.23') + 1;

let server: LocalServer;

beforeEach(() => {
  server = new LocalServer('file:///one.svg', text);
});
afterEach(() => server.dispose());

async function ask(known: KnownDocument, triggerKind: CodeActionTriggerKind): Promise<CodeAction[]> {
  const { live, engine } = server;
  const at = live.positionAt(island);
  const params = {
    textDocument: { uri: live.uri },
    range: { start: at, end: at },
    context: { diagnostics: [], triggerKind },
  };
  return codeActions({ known, live, engine }, params, CancellationToken.None);
}

const isRefused = ({ title, disabled }: CodeAction) => title === 'Bridge this island' && disabled !== undefined;

test('the lightbulb shows them as disabled, behind all that can be had', async () => {
  const known = await server.known();
  const actions = await expect
    .poll(() => ask(known, CodeActionTriggerKind.Invoked), { timeout: 20_000 })
    .toSatisfy((listed: CodeAction[]) => listed.some(isRefused))
    .then(() => ask(known, CodeActionTriggerKind.Invoked));
  const refused = actions.find(isRefused);
  expect(refused?.disabled?.reason).toBe(
    'No bridge fits the island at 30.1, 30.1 mm, which is narrower than a bridge of 0.80 mm. ' +
      'Remove it, or redraw what is round it.',
  );
  expect(refused?.edit).toBeUndefined();
  const first = actions.findIndex(({ disabled }) => disabled);
  expect(first).toBeGreaterThan(0);
  expect(actions.slice(first).every(({ disabled }) => disabled)).toBe(true);
});

test('but not where nobody asked', async () => {
  const known = await server.known();
  await expect.poll(async () => (await ask(known, CodeActionTriggerKind.Invoked)).some(isRefused)).toBe(true);
  const actions = await ask(known, CodeActionTriggerKind.Automatic);
  expect(actions.length).toBeGreaterThan(0);
  expect(actions.filter(({ disabled }) => disabled)).toEqual([]);
});

test('the hover tells them once they are known, and proves nothing for it', async () => {
  const known = await server.known();
  const { live, engine } = server;
  const hover = async () => JSON.stringify((await hoverAt(known, live, island, engine))?.contents) ?? '';
  expect(await hover()).not.toContain('Why no fix');
  await expect.poll(hover, { timeout: 20_000 }).toContain('Why no fix:');
  expect(await hover()).toContain('No bridge fits the island');
});

test('two layers of one title are each offered their own bridges', async () => {
  const ring = (x: number, y: number) => `<path d="M${x} ${y}h20v20h-20z M${x + 5} ${y + 5}v10h10v-10z"/>`;
  const sky = (y: number) => `<g><title>sky</title>${ring(5, y)}${ring(35, y)}</g>`;
  server.open(`<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="60mm" viewBox="0 0 60 60"
    data-tombolo-reading="openings">${sky(5)}${sky(35)}</svg>`);
  const known = await server.known();
  const { live, engine } = server;
  const range = { start: live.positionAt(0), end: live.positionAt(live.getText().length) };
  const params = { textDocument: { uri: live.uri }, range, context: { diagnostics: [] } };
  const listed = await codeActions({ known, live, engine }, params, CancellationToken.None);
  const ofLayers = listed.filter(({ title }) => title.startsWith('Bridge every island in layer "sky"'));
  const layers = (await resolveAll(ofLayers, server.sources, CancellationToken.None)).filter(
    ({ title }) => !/upright/.test(title),
  );
  expect(layers).toHaveLength(2);
  expect(JSON.stringify(layers[0]?.edit)).not.toBe(JSON.stringify(layers[1]?.edit));
});

/** An island that a single bridge could only hold as a tongue. */
const long = `<svg xmlns="http://www.w3.org/2000/svg" data-tombolo-reading="openings"
  width="100mm" height="100mm" viewBox="0 0 100 100">
<path fill-rule="evenodd" d="M10 10h80v80h-80zM20 47h60v6h-60z"/>
</svg>`;

test('what may be had anyway stands behind its refusal, plainly marked, and is put in when it is chosen', async () => {
  server.open(long);
  const known = await server.known();
  const { live, engine } = server;
  const at = live.positionAt(long.indexOf('h60v6') + 1);
  const params = {
    textDocument: { uri: live.uri },
    range: { start: at, end: at },
    context: { diagnostics: [], triggerKind: CodeActionTriggerKind.Invoked },
  };
  const listed = () => codeActions({ known, live, engine }, params, CancellationToken.None);
  const isForced = ({ title }: CodeAction) => title.includes(' anyway: leaves a loose tongue');
  await expect.poll(async () => (await listed()).some(isForced), { timeout: 20_000 }).toBe(true);
  const actions = await listed();
  const forced = actions.findIndex(isForced);
  expect(actions[forced - 1]).toMatchObject({ disabled: { reason: 'It would leave a loose tongue.' } });
  expect(actions[forced]).toMatchObject({ isPreferred: false });
  expect(actions.filter(({ isPreferred }) => isPreferred).map(({ title }) => title)).not.toContain(
    actions[forced]?.title,
  );
  const { edit: _told, ...bare } = actions[forced] as CodeAction;
  const resolved = await resolveAction(bare, server.sources);
  expect(resolved.edit).toEqual(actions[forced]?.edit);
  expect(resolved.title).toBe(actions[forced]?.title);
});
