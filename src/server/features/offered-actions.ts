/** From offers to code actions, and from a chosen code action back to its offer. */
import type { CodeAction, CodeActionKind, Diagnostic } from 'vscode-languageserver';
import type { TextDocument } from 'vscode-languageserver-textdocument';
import type { FindingFact } from '../../protocol/facts';
import { ANYWAY, type Offer, type Proof } from '../../protocol/offers';
import { whyNot } from '../../report/refusal';
import { oneLine } from '../../text/plain-text';
import type { KnownDocument } from '../documents/known-document';
import { commandAfter, workspaceEdit } from './workspace-edit';

/** What an action carries so that its edits can be had later. */
export interface ActionData {
  readonly uri: string;
  /** Of the text that it was offered for. */
  readonly version: number;
  readonly id: string;
  /** Where the caret was, in that text, for a bridge that is wanted there. */
  readonly offset?: number;
  /** The finding that it is for, by what it looks like: it may have been found in an earlier text. */
  readonly finding?: { readonly check: string; readonly from: number; readonly to: number };
}

/** An offer at a place, with what it is offered for. */
export interface PlacedOffer {
  readonly offer: Offer;
  readonly finding?: FindingFact;
  /** In the live text. */
  readonly caret?: number;
}

/** Under which a proof is known: a bridge at the caret is another at each place. */
function proofKey({ offer, caret }: PlacedOffer): string {
  return caret === undefined ? offer.id : `${offer.id}@${caret}`;
}

/**
 * @param shown what the editor underlines there
 * @returns undefined where another action already does the same
 */
export function actionFor(
  placed: PlacedOffer,
  kind: CodeActionKind,
  { known, live, shown }: { known: KnownDocument; live: TextDocument; shown: readonly Diagnostic[] },
): CodeAction | undefined {
  const { offer, finding } = placed;
  const isCurrent = known.version === live.version;
  const proof = isCurrent ? known.proof(proofKey(placed)) : undefined;
  if (proof?.outcome === 'needless') return undefined;
  const diagnostics = shown.filter(({ data }) => (data as { finding?: unknown } | undefined)?.finding === finding?.id);
  const action: CodeAction = {
    title: oneLine(offer.title),
    kind,
    ...(finding && { diagnostics, isPreferred: offer.preferred }),
    data: dataOf(placed, known, live),
  };
  return proof ? proven(action, proof, known) : action;
}

/** The action with what is known of it by now. */
export function proven(action: CodeAction, proof: Proof, known: KnownDocument): CodeAction {
  if (proof.outcome === 'refused')
    return { ...action, isPreferred: false, disabled: { reason: oneLine(whyNot(proof)) } };
  if (proof.outcome === 'needless') return action;
  const { title, preferred, edits } = proof;
  const command = edits && commandAfter(known, edits);
  return {
    ...action,
    title: oneLine(title),
    ...(action.isPreferred !== undefined && { isPreferred: preferred }),
    ...(edits && { edit: workspaceEdit(known, edits) }),
    ...(command && { command }),
  };
}

/** Behind what was refused, the same change for who wants it anyway: never preferred, and its title says what it leaves. */
export function anywayFor(placed: PlacedOffer, refused: CodeAction, known: KnownDocument): CodeAction[] {
  const proof = known.proof(proofKey(placed));
  if (!refused.disabled || proof?.outcome !== 'refused' || !proof.anyway) return [];
  const { disabled: _refused, ...action } = refused;
  const data = { ...(action.data as ActionData), id: `${placed.offer.id}${ANYWAY}` };
  return [{ ...proven({ ...action, data }, proof.anyway, known), isPreferred: false }];
}

function dataOf({ offer, finding, caret }: PlacedOffer, known: KnownDocument, live: TextDocument): ActionData {
  const span = finding && known.shiftTo(live).forwardSpan(finding.span);
  return {
    uri: known.uri,
    version: live.version,
    id: offer.id,
    ...(caret !== undefined && { offset: caret }),
    ...(finding && span && { finding: { check: finding.check, ...span } }),
  };
}

/**
 * The offer's name in the text as it has been checked now.
 * @returns undefined where nothing there is what it was offered for
 */
export function idNow({ id, version, finding }: ActionData, known: KnownDocument): string | undefined {
  if (version !== known.version) return undefined;
  if (!finding || known.facts.findings.some((each) => id.startsWith(`${each.id}!`))) return id;
  const [same, ...others] = known.facts.findings.filter(
    ({ check, span }) => check === finding.check && span.from === finding.from && span.to === finding.to,
  );
  return same && others.length === 0 ? `${same.id}${id.slice(id.lastIndexOf('!'))}` : undefined;
}
