import { describe, expect, it } from 'vitest';
import { readConfig } from '../../../src/engine/check/known-checks';
import { findingsOf, sheetOf } from '../stencils';

const tongues = (svg: string, settings = {}) => findingsOf('loose-tongue', svg, settings);
/** A window into which a strip of 2 mm reaches from its left side. */
const strip = (reach: number) => sheetOf(`<path d="M10 20H90V80H10V51H${10 + reach}V49H10Z"/>`);
const made = (material: string) => ({ config: readConfig(JSON.stringify({ material })).config });

describe('loose-tongue', () => {
  it('names the length, the root, the predicted lift and the most that is good', () => {
    const [tongue, ...others] = tongues(strip(40));
    expect(others).toEqual([]);
    expect(tongue).toMatchObject({ severity: 'warning', measure: '40.01 mm', layer: 'stencil' });
    expect(['H50', 'V49', 'H10']).toContain(tongue?.text);
    expect([...(tongue?.related ?? [])].sort()).toEqual(['H10', 'H50']);
    expect(tongue?.message).toBe(
      'Loose tongue 40.01 mm long (maximum 33.15 mm for 0.3 mm card): it will lift under the spray.',
    );
    expect(tongue?.detail).toBe(
      'It is held only at its root, 2.00 mm wide. Its own weight and an assumed spray of 20 Pa lift its end by about ' +
        '1.06 mm; 0.50 mm is the most that paint does not creep under. Paint creeps under what lifts. Bridge its end ' +
        'to the sheet, make it shorter, or choose a stiffer material.',
    );
  });

  it('says no figure where the bend is too great for the formula', () => {
    expect(tongues(strip(79))[0]?.detail).toContain('lift its end by more than 7.90 mm');
  });

  it.each([
    ['paper-0.1', 14.8],
    ['card-0.2', 24.5],
    ['card-0.3', 33.1],
    ['card-0.5', 48.2],
    ['film-0.19', 26.0],
  ])('depends on the material: %s bears %f mm', (material, most) => {
    expect(tongues(strip(most - 0.5), made(material))).toEqual([]);
    expect(tongues(strip(most + 0.5), made(material))).toHaveLength(1);
  });

  it('is found past a narrow neck, and not where its end is tied', () => {
    const leaf = 'M10 20H90V80H10V51H20C25 70 45 70 60 50C45 30 25 30 20 49H10Z';
    expect(tongues(sheetOf(`<path d="${leaf}"/>`))).toMatchObject([{ measure: '50.00 mm' }]);
    expect(tongues(sheetOf('<path d="M10 20H90V49H10Z M10 51H90V80H10Z"/>'))).toEqual([]);
  });

  it('lets islands, short strips and stout ones go', () => {
    expect(tongues(strip(32))).toEqual([]);
    expect(tongues(sheetOf('<path d="M10 10H90V90H10V58H50V42H10Z"/>'))).toEqual([]);
    expect(tongues(sheetOf('<path fill-rule="evenodd" d="M5 5H95V95H5Z M10 10H40V30H85V32H40V50H10Z"/>'))).toEqual([]);
  });
});
