import { oneLine } from '../../text/plain-text';
import type { CutSheet } from '../types';

/** What a sheet is called in its file and on itself: "Sheet 2 of 5: Reeds, #3b4a54". */
export function titleOf({ number, count, name, paint }: Pick<CutSheet, 'number' | 'count' | 'name' | 'paint'>): string {
  return `Sheet ${number} of ${count}: ${oneLine(name)}, ${paint}`;
}
