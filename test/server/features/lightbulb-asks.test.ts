/** What a list of fixes costs: titles take no proof, and what was found out is never asked for again. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { CancellationToken, CodeActionTriggerKind } from 'vscode-languageserver';
import type { KnownDocument } from '../../../src/server/documents/known-document';
import { codeActions } from '../../../src/server/features/code-actions';
import { resolveAction } from '../../../src/server/features/resolve-action';
import { LocalServer } from '../local-server';

const text = readFileSync(path.resolve(__dirname, '../../../media/demo/sun.svg'), 'utf8').replace(
  '<svg',
  '<svg data-tombolo-reading="openings"',
);

let server: LocalServer;
let asked: string[];

beforeEach(() => {
  server = new LocalServer('file:///sun.svg', text);
  asked = [];
  const ask = server.engine.ask.bind(server.engine);
  server.engine.ask = (request, priority) => {
    asked.push(request.kind);
    return ask(request, priority);
  };
});
afterEach(() => server.dispose());

function press(known: KnownDocument) {
  const { live, engine } = server;
  const island = known.facts.findings.find(({ check }) => check === 'floating-island')!;
  const at = live.positionAt(island.span.from + 1);
  const params = {
    textDocument: { uri: live.uri },
    range: { start: at, end: at },
    context: { diagnostics: [], triggerKind: CodeActionTriggerKind.Invoked, only: ['quickfix'] },
  };
  return codeActions({ known, live, engine }, params, CancellationToken.None);
}

test('no title asks for a proof, however often the list is opened', async () => {
  const known = await server.known();
  asked = [];
  const first = await press(known);
  expect(first.map(({ title }) => title)).toContainEqual(expect.stringMatching(/^Bridge this island/));
  expect((await press(known)).length).toBeGreaterThan(0);
  expect(asked).toEqual([]);
});

test('what an action turned out to be is asked for once, though it was refused', async () => {
  const known = await server.known();
  await press(known);
  const listed = (await press(known)).filter(({ edit, disabled }) => !edit && !disabled);
  expect(listed.length).toBeGreaterThan(0);
  for (const action of listed) await resolveAction(action, server.sources);
  asked = [];
  for (const action of listed) await resolveAction(action, server.sources);
  expect(asked.filter((kind) => kind === 'prove')).toEqual([]);
});
