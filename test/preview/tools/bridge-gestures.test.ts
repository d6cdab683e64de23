/** Where keys and drags lead a bridge. */
import { describe, expect, it } from 'vitest';
import {
  aimOfKey,
  aimOfMove,
  aimOfStretch,
  LEAST_WIDTH,
  provisional,
} from '../../../src/preview/tools/bridge-gestures';

/** It stands upright in a gap that runs level. */
const upright = { centre: { x: 10, y: 5 }, along: { x: 0, y: 1 }, width: 0.8, length: 2.4 };
const press = (key: string, more: Partial<{ shiftKey: boolean; altKey: boolean }> = {}) =>
  aimOfKey(upright, { key, shiftKey: false, altKey: false, ...more });

describe('keys', () => {
  it('arrows go along the gap by 0.2 mm, and with Shift by 1 mm', () => {
    expect(press('ArrowRight')).toEqual({ to: { x: 10.2, y: 5 }, width: 0.8 });
    expect(press('ArrowLeft', { shiftKey: true })).toEqual({ to: { x: 9, y: 5 }, width: 0.8 });
  });

  it('an arrow across the gap leads nowhere', () => {
    expect(press('ArrowUp')).toEqual({ to: { x: 10, y: 5 }, width: 0.8 });
  });

  it('in a gap that falls to the right, right and down lead the same way', () => {
    const slanting = { ...upright, along: { x: Math.SQRT1_2, y: -Math.SQRT1_2 } };
    const to = (key: string) => aimOfKey(slanting, { key, shiftKey: true, altKey: false })?.to;
    expect(to('ArrowRight')).toEqual({ x: expect.closeTo(10.707, 3), y: expect.closeTo(5.707, 3) });
    expect(to('ArrowDown')).toEqual(to('ArrowRight'));
    expect(to('ArrowUp')).toEqual(to('ArrowLeft'));
  });

  it('brackets, and arrows with Alt, change the width by 0.1 mm', () => {
    expect(press(']')?.width).toBeCloseTo(0.9, 10);
    expect(press('[')?.width).toBeCloseTo(0.7, 10);
    expect(press('ArrowUp', { altKey: true })?.width).toBeCloseTo(0.9, 10);
    expect(press('ArrowLeft', { altKey: true })?.width).toBeCloseTo(0.7, 10);
  });

  it('nothing gets narrower than can be asked for', () => {
    const thin = aimOfKey({ ...upright, width: LEAST_WIDTH }, { key: '[', shiftKey: false, altKey: false });
    expect(thin?.width).toBe(LEAST_WIDTH);
  });

  it('other keys are for somebody else', () => {
    expect([press('a'), press('Enter'), press(' ')]).toEqual([undefined, undefined, undefined]);
  });
});

describe('drags', () => {
  it('take the bridge as far as the pointer goes', () => {
    expect(aimOfMove(upright, { x: 10.1, y: 5.5 }, { x: 13.1, y: 6 })).toEqual({ to: { x: 13, y: 5.5 }, width: 0.8 });
  });

  it('of a handle widen both sides alike, whichever handle it is', () => {
    expect(aimOfStretch(upright, { x: 11, y: 5 }, { x: 11.3, y: 5.2 })).toEqual({
      to: upright.centre,
      width: expect.closeTo(1.4, 10),
    });
    expect(aimOfStretch(upright, { x: 9, y: 5 }, { x: 8.7, y: 5 }).width).toBeCloseTo(1.4, 10);
    expect(aimOfStretch(upright, { x: 11, y: 5 }, { x: 10, y: 5 }).width).toBe(LEAST_WIDTH);
  });

  it('are drawn at once: along the gap only, as wide as is asked for', () => {
    expect(provisional(upright, { to: { x: 12, y: 9 }, width: 1.2 })).toEqual({
      ...upright,
      centre: { x: 12, y: 5 },
      width: 1.2,
    });
  });
});
