/** Keeps the lightbulb short. */
import type { CodeAction } from 'vscode-languageserver';
import type { PlacedOffer } from './offered-actions';

/** More rows than these for one finding are not read. */
const MAX_ROWS = 6;

export interface Row {
  readonly placed: PlacedOffer;
  readonly action: CodeAction;
}

/**
 * At most so many rows for each finding, in the order given: what can be had before what cannot, and what is spare only
 * while there is room.
 */
export function withinRoom(rows: readonly Row[]): Row[] {
  const ofFinding = new Map<string, Row[]>();
  for (const row of rows) {
    const { finding } = row.placed.offer;
    ofFinding.set(finding, [...(ofFinding.get(finding) ?? []), row]);
  }
  const kept = new Set([...ofFinding.values()].flatMap((own) => mostUseful(own)));
  return rows.filter((row) => kept.has(row));
}

function mostUseful(rows: readonly Row[]): Row[] {
  return [...rows].sort((a, b) => rankOf(a) - rankOf(b)).slice(0, MAX_ROWS);
}

function rankOf({ placed: { offer }, action }: Row): number {
  return (action.disabled ? 10 : 0) + (offer.spare ?? 0);
}
