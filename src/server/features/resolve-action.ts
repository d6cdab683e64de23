/** The edits of a code action that was chosen, proven now if that was not done ahead. */
import type { CancellationToken, CodeAction } from 'vscode-languageserver';
import type { Proof } from '../../protocol/offers';
import { Priority } from '../../protocol/run-signals';
import type { KnownDocument } from '../documents/known-document';
import type { EngineClient } from '../engine/engine-client';
import { SAFE } from './code-actions';
import { type ActionData, idNow, proven } from './offered-actions';

const CHANGED = 'The drawing has changed since; choose the fix again.';

export interface ResolveSources {
  readonly engine: EngineClient;
  /** The check of a document's present text, made now if need be. */
  current(uri: string): Promise<KnownDocument | undefined>;
}

/** @returns the action with its edits, or with the reason why there are none */
export async function resolveAction(action: CodeAction, { engine, current }: ResolveSources): Promise<CodeAction> {
  const data = action.data as ActionData | undefined;
  if (!data) return action;
  const known = await current(data.uri);
  if (action.edit && data.version === known?.version) return action;
  // Edits that came with it are of an earlier text.
  const { edit: _earlier, ...bare } = action;
  const proof = known ? await proofFor(data, known, engine) : refused(data.id, CHANGED);
  return known ? proven(bare, proof, known) : { ...bare, disabled: { reason: CHANGED } };
}

async function proofFor(data: ActionData, known: KnownDocument, engine: EngineClient): Promise<Proof> {
  const { uri, version } = known;
  const id = idNow(data, known);
  if (id === undefined) return refused(data.id, CHANGED);
  if (id === SAFE) {
    return (await engine.ask({ kind: 'proveSafe', uri, version }, Priority.chosen).answer) ?? refused(id, FAILED);
  }
  const { offset } = data;
  const key = offset === undefined ? id : `${id}@${offset}`;
  const before = known.proof(key);
  if (before && (before.outcome !== 'proven' || before.edits)) return before;
  const place = offset === undefined ? {} : { offset };
  const proof = await engine.ask({ kind: 'prove', uri, version, id, ...place }, Priority.chosen).answer;
  if (proof) known.keepProof(key, proof);
  return proof ?? refused(id, FAILED);
}

const FAILED = 'It could not be worked out; the log says why.';

function refused(id: string, reason: string): Proof {
  return { id, outcome: 'refused', reason };
}

/** Milliseconds for an editor that wants all edits at once. */
const BUDGET = 1500;

/** The actions that can be had, with their edits: for an editor that does not ask for them one by one. */
export async function resolveAll(
  actions: readonly CodeAction[],
  sources: ResolveSources,
  token: CancellationToken,
): Promise<CodeAction[]> {
  const end = performance.now() + BUDGET;
  const resolved: CodeAction[] = [];
  for (const action of actions) {
    if (token.isCancellationRequested) return [];
    if (performance.now() > end && !action.edit) continue;
    const done = await resolveAction(action, sources);
    if (done.edit || done.disabled) resolved.push(done);
  }
  return resolved;
}
