/** The lightbulb: fixes for the findings under the cursor, named at once and proven when one is chosen. */
import {
  type CancellationToken,
  type CodeAction,
  CodeActionKind,
  type CodeActionParams,
  CodeActionTriggerKind,
} from 'vscode-languageserver';
import type { TextDocument } from 'vscode-languageserver-textdocument';
import type { FindingFact } from '../../protocol/facts';
import { Priority } from '../../protocol/run-signals';
import type { KnownDocument } from '../documents/known-document';
import type { EngineClient } from '../engine/engine-client';
import { type ActionData, actionFor, anywayFor, type PlacedOffer } from './offered-actions';
import { withinRoom } from './row-limit';

export const FIX_ALL = `${CodeActionKind.SourceFixAll}.tombolo`;
export const BRIDGE_CHANGES = CodeActionKind.RefactorRewrite;

/** Milliseconds that a lightbulb waits for what the worker may just be finding out. */
const GLANCE = 30;
/** Milliseconds that somebody waits who has asked for the list. */
const PATIENCE = 1500;

/** A document as it was checked and as it stands now. */
export interface Asked {
  readonly known: KnownDocument;
  readonly live: TextDocument;
  readonly engine: EngineClient;
}

/** What is offered in a range of the live text; most of it without edits, which `resolveAction` adds. */
export async function codeActions(
  asked: Asked,
  { range, context }: CodeActionParams,
  token: CancellationToken,
): Promise<CodeAction[]> {
  const { live, known, engine } = asked;
  const [from, to] = [live.offsetAt(range.start), live.offsetAt(range.end)];
  const isAutomatic = context.triggerKind === CodeActionTriggerKind.Automatic;
  const wants = (kind: string) => context.only?.some((only) => isWithin(kind, only)) ?? false;
  engine.caret(known.uri, known.shiftTo(live).back(from));
  const actions: CodeAction[] = [];
  if (wants(FIX_ALL)) actions.push(...(await fixAll(asked)));
  if (!context.only || wants(CodeActionKind.QuickFix)) {
    const found = findingsIn(asked, from, to);
    await offersKnown(asked, found, isAutomatic);
    const placed = offersFor(asked, found, from === to ? from : undefined);
    const shown = { ...asked, shown: context.diagnostics };
    const rows = placed.flatMap((each) => {
      const action = actionFor(each, CodeActionKind.QuickFix, shown);
      return action ? [{ placed: each, action }] : [];
    });
    const listed = withinRoom(rows);
    const free = listed.map(({ action }) => action).filter(({ disabled }) => !disabled);
    const refused = listed
      .filter(({ action }) => action.disabled)
      .flatMap((row) => [row.action, ...anywayFor(row.placed, row.action, known)]);
    // What cannot be had comes last; where nobody asked, it would only be in the way.
    actions.push(...free, ...(isAutomatic ? [] : refused));
  }
  if (wants(BRIDGE_CHANGES) || (!context.only && !isAutomatic)) actions.push(...(await refactors(asked, from)));
  return token.isCancellationRequested ? [] : actions;
}

const isWithin = (kind: string, wanted: string): boolean => kind === wanted || kind.startsWith(`${wanted}.`);

function findingsIn({ known, live }: Asked, from: number, to: number): FindingFact[] {
  const shift = known.shiftTo(live);
  return known.facts.findings.filter(({ span }) => {
    const now = shift.forwardSpan(span);
    return now.from <= to && now.to >= from;
  });
}

/** Waits a little for the names of the fixes, and for those that are being proven just now. */
async function offersKnown(
  { known, engine }: Asked,
  found: readonly FindingFact[],
  isAutomatic: boolean,
): Promise<void> {
  if (found.length === 0) return;
  const isTold = () => found.every(({ id }) => known.offersOf(id) !== undefined);
  await known.until(isTold, isAutomatic ? GLANCE : PATIENCE);
  // During the check of another document nothing is proven.
  if (engine.checking) return;
  const ids = found.flatMap(({ id }) => known.offersOf(id) ?? []).filter(({ atCaret }) => !atCaret);
  await known.until(() => ids.every(({ id }) => known.proof(id)), GLANCE);
}

/** Those of a place first, then of the layer, then of the file, and last to leave it as it is. */
function offersFor({ known }: Asked, found: readonly FindingFact[], caret: number | undefined): PlacedOffer[] {
  const groups = new Set<string>();
  const placed = found.flatMap((finding) =>
    (known.offersOf(finding.id) ?? []).flatMap((offer): PlacedOffer[] => {
      if (groups.has(offer.group)) return [];
      if (offer.atCaret) return caret === undefined ? [] : [{ offer, finding, caret }];
      // What reaches as far in the same way is the same change, from whichever finding.
      groups.add(offer.group);
      return [{ offer, finding }];
    }),
  );
  return placed.sort((a, b) => a.offer.order - b.offer.order);
}

async function fixAll({ known, live }: Asked): Promise<CodeAction[]> {
  await known.until(() => known.offersTold, PATIENCE);
  if (!known.allOffers.some(({ safe }) => safe)) return [];
  const data: ActionData = { uri: known.uri, version: live.version, id: SAFE };
  return [{ title: 'Apply all safe fixes', kind: FIX_ALL, data }];
}

/** Stands for all safe fixes of a document together. */
export const SAFE = 'safe';

/**
 * Changes that no finding asks for: of the bridge at the caret, and register marks at the start of a layer. Their titles
 * take no proof, so the list is whole whatever the machine does meanwhile; what was refused before stands in it disabled.
 */
async function refactors(asked: Asked, offset: number): Promise<CodeAction[]> {
  const { known, live, engine } = asked;
  if (known.version !== live.version) return [];
  const { uri, version } = known;
  const { answer } = engine.ask({ kind: 'refactors', uri, version, offset }, Priority.chosen);
  const offers = (await answer) ?? [];
  for (const { id } of offers) void proveAhead(id, asked);
  return offers.flatMap((offer) => {
    const action = actionFor({ offer }, BRIDGE_CHANGES, { ...asked, shown: [] });
    return action ? [action, ...anywayFor({ offer }, action, known)] : [];
  });
}

/** While the list is read: then a choice takes no time, and what cannot be had is known the next time. */
async function proveAhead(id: string, { known, engine }: Asked): Promise<void> {
  if (known.proof(id)) return;
  const { uri, version } = known;
  const proof = await engine.ask({ kind: 'prove', uri, version, id }, Priority.background).answer;
  if (proof) known.keepProof(id, proof);
}
