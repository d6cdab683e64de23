/** What tells a finding from others from one run to the next, whatever becomes of the lines of its file. */
import { hashOfText } from '../text/hash';
import type { CheckedFile } from './checked-file';

/** mm: a finding that moves by less keeps its fingerprint, unless a boundary of this grid lies between. */
const GRID = 1;

/**
 * One for each finding of the file, in their order: of its path, check, layer and place on the sheet; of several alike,
 * also the ordinal.
 */
export function fingerprintsOf({ path, findings }: CheckedFile): string[] {
  const seen = new Map<string, number>();
  return findings.map(({ check, layer = '', at }) => {
    const place = at ? [Math.round(at.x / GRID), Math.round(at.y / GRID)] : [];
    const key = JSON.stringify([path, check, layer, ...place]);
    const ordinal = seen.get(key) ?? 0;
    seen.set(key, ordinal + 1);
    return hashOfText(`${key}${ordinal}`);
  });
}
