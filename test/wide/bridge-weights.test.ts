/**
 * What each weight of a plan does: the same drawing planned with and without it. `TOMBOLO_SHEETS=folder` writes the
 * picture. Drawings: @mdi/svg (Apache-2.0), letters of DejaVu Sans (@fontsource/dejavu-sans), and three made by hand.
 */
import { describe, expect, it } from 'vitest';
import { WEIGHTS } from '../../src/edits/plan/search/weights';
import { compared, EXAMPLES, type Weight } from './bridge-weights/examples';
import { writeWeightsPicture } from './bridge-weights/picture';

describe('the weights of a plan', () => {
  it('have an example each', () => {
    const weights = Object.keys(WEIGHTS).filter((name) => name !== 'longest');
    expect(Object.keys(EXAMPLES).sort()).toEqual(weights.sort());
  });

  it.each(Object.keys(EXAMPLES) as Weight[])('%s changes its example', (weight) => {
    const { withIt, without } = compared(weight);
    expect(withIt.length).toBeGreaterThan(0);
    expect(without).not.toEqual(withIt);
  });

  it.runIf(process.env.TOMBOLO_SHEETS)('are drawn', () => {
    writeWeightsPicture(process.env.TOMBOLO_SHEETS as string);
  });
});
