import { describe, expect, it } from 'vitest';
import { findingsOf, sheetOf } from '../stencils';

const slots = (svg: string, settings = {}) => findingsOf('narrow-opening', svg, settings);
const dumbbell = (width: number) =>
  sheetOf(`<path d="M20 20H40V${40 - width / 2}H60V20H80V60H60V${40 + width / 2}H40V60H20Z"/>`);

describe('narrow-opening', () => {
  it('measures a slot between its sides', () => {
    const [slot, ...others] = slots(dumbbell(0.4));
    expect(others).toEqual([]);
    expect(slot).toMatchObject({ severity: 'warning', measure: '0.40 mm' });
    expect([...(slot?.related ?? [])].sort()).toEqual(['H40', 'H60']);
    expect(slot?.message).toMatch(/^Slot only 0\.40 mm wide \(minimum 0\.60 mm for 0\.3 mm card\)/);
  });

  it('says how far a point is too fine', () => {
    // A wedge of 10 mm over 50 mm: the apex lies r/sin(α/2) − r beyond the last disc of 0.6 mm.
    const half = Math.atan(5 / 50);
    const reach = 0.3 / Math.sin(half) - 0.3;
    const [point, ...others] = slots(sheetOf('<path d="M20 40L70 45L20 50Z"/>'));
    expect(others).toEqual([]);
    expect(point?.message).toContain(`Tip too fine to paint: last ${reach.toFixed(2)} mm narrower than 0.60 mm`);
  });

  it('gains the kerf', () => {
    expect(slots(dumbbell(0.45), { kerf: 0.2 })).toEqual([]);
    expect(slots(dumbbell(0.3), { kerf: 0.2 })).toMatchObject([{ measure: '0.50 mm' }]);
  });

  it('lets wide slots and blunt corners go', () => {
    expect(slots(dumbbell(0.61))).toEqual([]);
    // An equilateral triangle: 60° is well above the 39° of the rule.
    expect(slots(sheetOf('<path d="M20 20H60L40 54.641Z"/>'))).toEqual([]);
  });
});
