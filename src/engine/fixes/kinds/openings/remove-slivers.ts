/** All that is too small to see in a layer goes: its openings are taken out, its islands painted over. */

import type { SpeckKind } from '../../../../checks/finding';
import { specksOf } from '../../../../checks/specks';
import { count } from '../../../../config/values';
import { cutAway, drawnPlace } from '../../../../edits/bridge/cut-away';
import { type EditResult, mergeResults } from '../../../../edits/element/result';
import { removeLines } from '../../../../edits/outline/merge-outlines';
import { makersOf } from '../../../../edits/outline/remove-makers';
import type { Region } from '../../../../geometry/base/polygon-types';
import { PLAINLY_BESIDE } from '../../../../geometry/base/tolerances';
import { offset } from '../../../../geometry/boolean/index';
import { isRefusal, type Result, refuse } from '../../../../report/refusal';
import type { Report } from '../../../../report/report';
import type { CutLine } from '../../../../sheet/cut-lines/index';
import type { Sheet } from '../../../../sheet/types';
import type { FixKind, ProvenChange } from '../../kind';
import { verify } from '../../verify';

/** mm: the shape that covers an island reaches over its edge into the opening by as much. */
const OVER = PLAINLY_BESIDE;

export const removeSlivers: FixKind = {
  kind: 'remove-slivers',
  scope: 'layer',
  safe: false,
  effects: [],
  preferred: true,
  offer: (_, { subject }) => (subject?.kind === 'specks' ? titleFor(subject) : undefined),
  prove: (report, { subject }) => (subject?.kind === 'specks' ? proveRemoval(report, subject) : undefined),
};

interface Specks {
  readonly sheet: Sheet;
  readonly of: SpeckKind;
}

function titleFor(specks: Specks): string | undefined {
  return specks.sheet.layer.reading === 'openings' ? titleOf(specks, numberOf(specks), 0) : undefined;
}

function titleOf({ sheet, of }: Specks, before: number, left: number): string {
  const what =
    before === 1 ? `the ${of}` : left === 0 ? `all ${before} ${of}s` : `${before - left} of ${before} ${of}s`;
  return `Remove ${what} in layer "${sheet.layer.name}"`;
}

function numberOf({ sheet, of }: Specks): number {
  const { openings, islands } = specksOf(sheet, of);
  return openings.length + islands.length;
}

/** What is made by outlines that make other things too stays, and the title says so. */
function proveRemoval(report: Report, specks: Specks): Result<ProvenChange> {
  const { sheet, of } = specks;
  const { outcome, changed } = removalOf(specks);
  if ('refusal' in outcome) return refuse(outcome.refusal);
  const { edits } = outcome;
  if (edits.length === 0) return refuse(`What makes these ${of}s makes other things too: change the drawing by hand.`);
  const within = new Map([[sheet.layer.id, offset(changed, OVER + PLAINLY_BESIDE)]]);
  const proof = verify(report, edits, { gone: [], within });
  if (isRefusal(proof)) return refuse(proof.reason);
  const now = proof.after.sheets.find(({ layer }) => layer.id === sheet.layer.id);
  const [before, left] = [numberOf(specks), now ? numberOf({ sheet: now, of }) : 0];
  if (left >= before) return refuse(`${count(left, of)} would still be there.`);
  return { edits, brings: proof.brings, title: titleOf(specks, before, left) };
}

function removalOf({ sheet, of }: Specks): { readonly outcome: EditResult; readonly changed: Region } {
  const { openings, islands } = specksOf(sheet, of);
  const lines: CutLine[] = [];
  for (const opening of openings) {
    const own = makersOf(sheet, opening) ?? [];
    const isKnown = (line: CutLine) =>
      lines.some(({ shape, subpath }) => shape === line.shape && subpath === line.subpath);
    lines.push(...own.filter((line) => !isKnown(line)));
  }
  const covered = cutAway(sheet, new Map(islands.map((island) => [island, 'filled'])));
  const removed: EditResult = lines.length > 0 ? removeLines(sheet.drawing, lines) : { edits: [] };
  return {
    outcome: mergeResults([removed, covered]),
    changed: [...openings, ...islands.flatMap((island) => drawnPlace(sheet, island))],
  };
}
