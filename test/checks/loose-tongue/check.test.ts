import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { check } from '../../../src/engine/check/check-file';
import { readConfig } from '../../../src/engine/check/known-checks';
import { findingsOf, sheetOf } from '../stencils';
import { HEADS } from './heads';

const tongues = (svg: string, settings = {}) => findingsOf('loose-tongue', svg, settings);
/** A window into which a strip of 2 mm reaches from its left side. */
const strip = (reach: number) => sheetOf(`<path d="M10 20H90V80H10V51H${10 + reach}V49H10Z"/>`);
const made = (settings: object) => ({ config: readConfig(JSON.stringify(settings)).config });

describe('loose-tongue', () => {
  it('names the lift, the most that is good, the can and what holds it', () => {
    const [tongue, ...others] = tongues(strip(40));
    expect(others).toEqual([]);
    expect(tongue).toMatchObject({ severity: 'warning', measure: '1.22 mm', layer: 'stencil' });
    expect(['H50', 'V49', 'H10']).toContain(tongue?.text);
    expect([...(tongue?.related ?? [])].sort()).toEqual(['H10', 'H50']);
    expect(tongue?.message).toBe(
      'Loose tongue lifts 1.22 mm under spray from 20 cm (maximum 0.50 mm). Bridge its end.',
    );
    expect(tongue?.detail).toBe(
      'It reaches 40.01 mm and is held only at its root, 2.00 mm wide. Its own weight and an assumed spray of 23.4 Pa ' +
        'bend it; paint creeps under what lifts by more than 0.50 mm. A plain strip of 0.3 mm card may reach 32.00 mm. ' +
        'Bridge its end to the sheet, make it shorter or its root wider, or choose a stiffer material.',
    );
  });

  it('says no figure where the bend is too great for the model', () => {
    expect(tongues(strip(79))[0]?.message).toContain('lifts over 7.90 mm under');
  });

  it.each([
    ['paper-0.1', 14.2],
    ['card-0.2', 23.5],
    ['card-0.3', 32],
    ['card-0.5', 46.7],
    ['film-0.19', 25.2],
  ])('depends on the material: %s bears %f mm', (material, most) => {
    expect(tongues(strip(most - 0.5), made({ material }))).toEqual([]);
    expect(tongues(strip(most + 0.5), made({ material }))).toHaveLength(1);
  });

  it('depends on the distance of the can and on the stiffness that was stated', () => {
    expect(tongues(strip(31))).toEqual([]);
    expect(tongues(strip(31), made({ spray: { distance: '10cm' } }))[0]?.message).toContain('from 10 cm');
    expect(tongues(strip(31), made({ bendingStiffness: '5mN·m' }))).toHaveLength(1);
    expect(tongues(strip(40), made({ bendingStiffness: ['40mN·m', '20mN·m'] }))).toEqual([]);
    expect(tongues(strip(40), made({ droop: { length: '150mm', by: '6mm' } }))).toEqual([]);
  });

  it('is found past a narrow neck, and not where its end is tied', () => {
    const leaf = 'M10 20H90V80H10V51H20C25 70 45 70 60 50C45 30 25 30 20 49H10Z';
    expect(tongues(sheetOf(`<path d="${leaf}"/>`))).toMatchObject([{ text: expect.stringContaining('C') as string }]);
    expect(tongues(sheetOf('<path d="M10 20H90V49H10Z M10 51H90V80H10Z"/>'))).toEqual([]);
  });

  it('lets islands, short strips and stout ones go', () => {
    expect(tongues(strip(31))).toEqual([]);
    expect(tongues(sheetOf('<path d="M10 10H90V90H10V58H50V42H10Z"/>'))).toEqual([]);
    expect(tongues(sheetOf('<path fill-rule="evenodd" d="M5 5H95V95H5Z M10 10H40V30H85V32H40V50H10Z"/>'))).toEqual([]);
  });
});

describe('a head on a stalk', () => {
  it.each(Object.entries(HEADS))('is found: %s', (_, svg) => {
    expect(check(svg).findings.map((finding) => finding.check)).toContain('loose-tongue');
  });

  it('reaches no farther than a strip that is good', () => {
    const [lollipop] = check(HEADS.lollipop).findings;
    expect(lollipop?.subject).toMatchObject({ tongue: { reach: expect.closeTo(30, 1) as number } });
    expect(lollipop?.measure?.value).toBeGreaterThan(2.5);
  });

  it('is found where two bridges near each other hold it, and not where they stand apart', () => {
    const island = (gap: number) =>
      sheetOf(
        '<path fill-rule="evenodd" d="M5 5H95V95H5Z M15 15H85V75H15Z' +
          `M${49.2 - gap / 2} 5H${50 - gap / 2}V15H${49.2 - gap / 2}Z M${50 + gap / 2} 5H${50.8 + gap / 2}V15H${50 + gap / 2}Z"/>`,
      );
    expect(tongues(island(4))).toHaveLength(1);
    expect(tongues(island(60))).toEqual([]);
  });
});

describe('a whisker', () => {
  const whisker = (width: number, reach: number) =>
    sheetOf(`<path d="M10 10H${50 - width / 2}V${10 + reach}H${50 + width / 2}V10H90V90H10Z"/>`);

  it('is found where it is narrower than a bridge and long, though it lifts little', () => {
    expect(tongues(whisker(0.5, 20))).toMatchObject([
      {
        measure: '0.50 mm',
        message: expect.stringMatching(
          /^Loose tongue \d+\.\d\d mm long, only 0\.50 mm wide \(minimum 0\.80 mm\): it will bend or tear\. Widen it\.$/,
        ) as string,
      },
    ]);
    expect(tongues(whisker(0.9, 20))).toEqual([]);
    expect(tongues(whisker(0.5, 10))).toEqual([]);
  });

  it('is told of once where it lifts as well', () => {
    expect(tongues(whisker(0.5, 40))).toHaveLength(1);
  });
});

describe('its page', () => {
  it('states the figures that the check uses', () => {
    const page = readFileSync(path.resolve(__dirname, '../../../src/checks/loose-tongue/README.md'), 'utf8');
    for (const figure of ['0.5 mm', '23.4', '0.04 N', '200 mm', '0.0838', '0.164']) expect(page).toContain(figure);
  });
});
