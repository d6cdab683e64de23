/** Bridges cut into the text of a layer, and proven. */
import type { Finding } from '../../../checks/finding';
import type { Effect } from '../../../checks/meta';
import { thinBridge } from '../../../checks/thin-bridge/check';
import { changedRegion, cutStrips, stripsFor } from '../../../edits/bridge/cut';
import type { Bridge } from '../../../edits/plan/index';
import type { Strip } from '../../../edits/strip/strip';
import { regionContains } from '../../../geometry/boolean/index';
import type { BroughtFinding } from '../../../report/fix';
import { isRefusal, mapResult, type Refusal, type Result } from '../../../report/refusal';
import type { Report } from '../../../report/report';
import type { LayerId } from '../../../sheet/layer/layer-id';
import type { Piece, Sheet } from '../../../sheet/types';
import type { TextEdit } from '../../../text/text';
import { examine, type Proof } from '../verify';
import { blamedFor, blamedForCut } from './blame';
import { rootsOn } from './plan';

export interface PlannedBridge extends Bridge {
  /** The layer's name, for people. */
  readonly layer: string;
  readonly layerId: LayerId;
  /** mm: its width less the kerf. */
  readonly cutWidth: number;
  /** What stays of the opening: the bridge, reaching a little into both banks. Sheet mm. */
  readonly strip: Strip;
}

/** A proven set of bridges. */
export interface VerifiedBridges {
  readonly edits: readonly TextEdit[];
  readonly bridges: readonly PlannedBridge[];
  readonly brings: readonly BroughtFinding[];
}

/** The same with the report on the edited text. */
export interface ProvenCut extends VerifiedBridges {
  readonly after: Report;
}

/** Why a set does not hold, and which of its bridges keep the others from it. */
export interface FailedCut extends Refusal<VerifiedBridges> {
  readonly blamed: ReadonlySet<Bridge>;
  /** Of those the ones that only came out a little under the limit. */
  readonly narrow: ReadonlySet<Bridge>;
}

/**
 * @param islands those that must hang on the sheet afterwards, or on the loose piece that a bridge leads to
 * @param others findings that must be gone as well
 */
export function verifyCut(
  report: Report,
  sheet: Sheet,
  bridges: readonly Bridge[],
  islands: readonly Piece[],
  effects: readonly Effect[] = [],
  others: readonly Finding[] = [],
): Result<VerifiedBridges> {
  const result = examineCut(report, sheet, bridges, islands, effects, others);
  if (!isRefusal(result)) return withoutReport(result);
  const { blamed: _blamed, narrow: _narrow, ...refusal } = result;
  return refusal;
}

/** The report on the edited text is large; it is known to the session where it is asked for again. */
export function withoutReport({ after: _after, ...verified }: ProvenCut): VerifiedBridges {
  return verified;
}

/** The same, for whoever leaves out bridges that keep others from it. */
export function examineCut(
  report: Report,
  sheet: Sheet,
  bridges: readonly Bridge[],
  islands: readonly Piece[],
  effects: readonly Effect[] = [],
  others: readonly Finding[] = [],
): ProvenCut | FailedCut {
  const strips = stripsFor(sheet, bridges, rootsOn(report));
  const result = examineStrips(report, sheet, bridges, strips, islands, effects, others);
  if (!isRefusal(result)) return result;
  // Where fillets may be what speaks against it, square roots will do.
  const isRounded = (i: number): boolean => strips[i]?.fillets !== undefined;
  const square = bridges.map((bridge, i) => isRounded(i) && (result.blamed.size === 0 || result.blamed.has(bridge)));
  if (!square.some((each) => each)) return result;
  const plainer = strips.map((strip, i) => (square[i] ? { corners: strip.corners } : strip));
  return examineStrips(report, sheet, bridges, plainer, islands, effects, others);
}

function examineStrips(
  report: Report,
  sheet: Sheet,
  bridges: readonly Bridge[],
  strips: readonly Strip[],
  islands: readonly Piece[],
  effects: readonly Effect[],
  others: readonly Finding[],
): ProvenCut | FailedCut {
  const cut = cutStrips(sheet, strips);
  if ('refusal' in cut) return failed(cut.refusal, blamedForCut(sheet, bridges, strips, cut.strips));
  const { id: layerId } = sheet.layer;
  const held = islands.filter((island) => hangs(island, bridges));
  const pledge = {
    gone: [...others, ...islandFindings(report, held)],
    within: new Map([[layerId, changedRegion(sheet, strips)]]),
    effects,
  };
  const proof = examine(report, cut.edits, pledge);
  const planned = bridges.map((bridge, i) => plannedBridge(sheet, bridge, strips[i] as Strip));
  const proven = ({ after, brings }: Proof): ProvenCut => ({ edits: cut.edits, bridges: planned, brings, after });
  if (isRefusal(proof)) {
    const { stays, against, strays, ...refusal } = proof;
    const why = mapResult(refusal, proven) as Refusal<VerifiedBridges>;
    const blamed = blamedFor(
      bridges,
      stays,
      against.filter((finding) => !isHardlyThin(finding)),
      strays,
    );
    const narrow = blamedFor(bridges, [], against.filter(isHardlyThin), []);
    return {
      ...why,
      blamed: new Set([...blamed, ...narrow]),
      narrow: new Set([...narrow].filter((each) => !blamed.has(each))),
    };
  }
  const apart = bridges.filter((bridge) => !areJoined(proof.after, layerId, bridge));
  if (apart.length > 0) return failed('The bridge would not reach from piece to piece.', new Set(apart));
  return proven(proof);
}

function failed(reason: string, blamed: ReadonlySet<Bridge>): FailedCut {
  return { reason, blamed, narrow: new Set() };
}

/** The share of the limit that a bridge has which need only be made a little wider: where curves meet it. */
const HARDLY = 0.88;

function isHardlyThin({ check, measure }: Finding): boolean {
  return check === thinBridge.meta.id && measure !== undefined && measure.value >= HARDLY * measure.limit;
}

function plannedBridge({ layer, kerf }: Sheet, bridge: Bridge, strip: Strip): PlannedBridge {
  return { ...bridge, layer: layer.name, layerId: layer.id, cutWidth: bridge.width - kerf, strip };
}

/** Whether bridges lead from a piece to the sheet, if need be by way of others. */
export function hangs(piece: Piece, bridges: readonly Bridge[]): boolean {
  const reached = new Set([piece]);
  for (const each of reached) {
    if (!each.island) return true;
    for (const { island, target } of bridges) {
      if (island === each) reached.add(target);
      if (target === each) reached.add(island);
    }
  }
  return false;
}

/** Whether what a bridge ties is one piece now. */
function areJoined({ sheets }: Report, layer: LayerId, { island, target }: Bridge): boolean {
  const pieces = sheets.find((sheet) => sheet.layer.id === layer)?.pieces ?? [];
  const holds = ({ polygon }: Piece, { label }: Piece) => regionContains([polygon], label);
  return pieces.some((piece) => holds(piece, island) && holds(piece, target));
}

function islandFindings(report: Report, islands: readonly Piece[]): Finding[] {
  return report.complete.filter(({ subject }) => subject?.kind === 'island' && islands.includes(subject.piece));
}
