import { describe, expect, it } from 'vitest';
import { bendingStiffness, sprayPressure, weightPressure } from '../../src/config/bending';
import { readConfig } from '../../src/engine/check/known-checks';

const read = (settings: object) => readConfig(JSON.stringify(settings));
const stiffness = (settings: object) => bendingStiffness(read(settings).config);
const messages = (settings: object) => read(settings).problems.map(({ message }) => message);

describe('the bending stiffness', () => {
  it("is the material's E t³ / 12 where nothing is stated", () => {
    expect(stiffness({})).toBeCloseTo(6.75, 9);
    expect(stiffness({ material: 'paper-0.1' })).toBeCloseTo(0.25, 9);
    expect(stiffness({ material: 'film-0.19' })).toBeCloseTo(2.57, 2);
  });

  it('is what is stated, the less of both ways of the grain', () => {
    expect(stiffness({ bendingStiffness: '7mN·m' })).toBe(7);
    expect(stiffness({ bendingStiffness: '0.007 N·m' })).toBeCloseTo(7, 9);
    expect(stiffness({ bendingStiffness: ['9.5mNm', '4.8 mN*m'] })).toBe(4.8);
  });

  it('comes from the droop of a strip: 22.1 mm of 150 mm of 240 g/m² are 6.75 mN·m', () => {
    expect(stiffness({ droop: { length: '150mm', by: '22.1mm', grammage: '240g/m²' } })).toBeCloseTo(6.75, 1);
    // The weight of the table's card is the same.
    expect(stiffness({ droop: { length: '15cm', by: '22.1mm' } })).toBeCloseTo(6.75, 1);
    expect(stiffness({ bendingStiffness: '7mN·m', droop: { length: '150mm', by: '22.1mm' } })).toBe(7);
  });

  it('is not read from what cannot be meant', () => {
    expect(messages({ droop: { length: '200mm', by: '69.7mm' } })).toEqual([
      'The strip droops by more than a quarter of its length: let less of it hang over.',
    ]);
    expect(messages({ droop: { length: '200mm' } })).toEqual([expect.stringMatching(/^A droop needs "length"/)]);
    expect(messages({ droop: { length: '200mm', by: '1' } })).toHaveLength(1);
    expect(messages({ droop: 3 })).toHaveLength(1);
    expect(messages({ bendingStiffness: ['7mN·m'] })).toEqual(['These are two figures, along and across the grain.']);
    expect(messages({ bendingStiffness: ['7mN·m', '7'] })).toHaveLength(1);
    expect(messages({ bendingStiffness: 7, spray: { distance: '0mm', thrust: '4g' } })).toHaveLength(3);
    expect(stiffness({ bendingStiffness: '0mN·m' })).toBeCloseTo(6.75, 9);
  });
});

describe('what bends it', () => {
  it('is the jet, four times as much from half the distance', () => {
    const pressure = (spray: object) => sprayPressure(read({ spray }).config);
    expect(pressure({})).toBeCloseTo(23.4, 9);
    expect(pressure({ distance: '100mm' })).toBeCloseTo(93.6, 9);
    expect(pressure({ thrust: '0.02N' })).toBeCloseTo(11.7, 9);
  });

  it('and its own weight', () => {
    expect(weightPressure(read({}).config)).toBeCloseTo(2.354, 3);
    expect(weightPressure(read({ droop: { length: '150mm', by: '10mm', grammage: '300gsm' } }).config)).toBeCloseTo(
      2.943,
      3,
    );
  });
});
