import { describe, expect, it } from 'vitest';
import { DEFAULT_CONFIG } from '../../src/config/types';
import { cutSheet } from '../../src/cut/cut-sheet';
import { durationAlong, straightTime } from '../../src/cut/motion';
import { motionOf, sheetTime } from '../../src/cut/sheet-time';
import { check } from '../../src/engine/index';

const motion = { speed: 50, acceleration: 500, corner: 5 };
const path = (...points: [number, number][]) => points.map(([x, y]) => ({ x, y }));
const circle = (radius: number, chords: number) =>
  Array.from({ length: chords + 1 }, (_, i) => {
    const angle = (2 * Math.PI * i) / chords;
    return { x: radius * Math.cos(angle), y: radius * Math.sin(angle) };
  });

describe('along a path', () => {
  // d/v + v/a: the trapezoid of textbooks on motion control.
  it('100 mm at 50 mm/s and 500 mm/s² take 2.1 s, in one piece or in two', () => {
    expect(durationAlong(path([0, 0], [100, 0]), motion)).toBeCloseTo(2.1, 9);
    expect(durationAlong(path([0, 0], [30, 0], [30, 0], [100, 0]), motion)).toBeCloseTo(2.1, 9);
  });

  // Worked out from the formulas of `durationAlong`: braking to the corner's speed v and from it takes 2·(50 − v)²/(50·a).
  it.each([
    [5, 2.181],
    [0, 2.2],
  ])('round a right angle at %d mm/s, 50 and 50 mm take %d s', (corner, seconds) => {
    expect(durationAlong(path([0, 0], [50, 0], [50, 50]), { ...motion, corner })).toBeCloseTo(seconds, 9);
  });

  it('turns back only from rest', () => {
    expect(durationAlong(path([0, 0], [50, 0], [0, 0]), motion)).toBeCloseTo(2.2, 9);
  });

  it('a circle of radius 10 mm takes 1.357 s, and no longer with finer chords', () => {
    expect(durationAlong(circle(10, 384), motion)).toBeCloseTo(1.357, 3);
    for (const chords of [96, 200, 800, 3000]) {
      expect(Math.abs(durationAlong(circle(10, chords), motion) - 1.357)).toBeLessThan(0.002);
    }
    expect(durationAlong(circle(10, 24), motion)).toBeCloseTo(1.567, 3);
  });

  it('round a small circle no faster than √(a·r)', () => {
    const slowest = (2 * Math.PI) / Math.sqrt(500);
    expect(durationAlong(circle(1, 400), motion)).toBeGreaterThan(slowest);
    expect(durationAlong(circle(1, 400), motion)).toBeLessThan(slowest + 0.1);
  });

  it('nowhere takes no time', () => {
    expect(durationAlong([], motion)).toBe(0);
    expect(durationAlong(path([1, 1], [1, 1]), motion)).toBe(0);
    expect(straightTime(0, motion)).toBe(0);
  });
});

describe('straight on with a bounded jerk', () => {
  // The profile of seven segments: all, without the steady speed, without the steady acceleration.
  it.each([
    [100, 2.15],
    [2, 0.18566],
    [0.02, 0.04],
  ])('%d mm take %d s', (distance, seconds) => {
    expect(straightTime(distance, { ...motion, jerk: 10_000 })).toBeCloseTo(seconds, 5);
  });

  it('where the full acceleration is never reached, and without a bound', () => {
    // v·j < a²: d/v + 2·√(v/j).
    expect(straightTime(100, { ...motion, jerk: 1000 })).toBeCloseTo(2 + 2 * Math.sqrt(0.05), 9);
    expect(straightTime(100, { ...motion, jerk: 1e12 })).toBeCloseTo(2.1, 6);
    expect(straightTime(100, motion)).toBeCloseTo(2.1, 9);
  });
});

describe('a sheet', () => {
  const sheet = check(
    '<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="40mm" viewBox="0 0 60 40"><rect x="20" y="0.5" width="10" height="10"/></svg>',
  ).sheets[0]!;
  const cut = cutSheet(sheet, { number: 1, count: 1 }, { edge: false });

  it('takes its cuts and the ways between them', () => {
    const square = durationAlong(path([20, 0.5], [30, 0.5], [30, 10.5], [20, 10.5], [20, 0.5]), motion);
    expect(sheetTime(cut, motion)).toBeCloseTo(square + 2 * straightTime(Math.hypot(20, 0.5), motion), 6);
  });

  it('is timed where the machine is described', () => {
    expect(motionOf(DEFAULT_CONFIG)).toBeUndefined();
    expect(motionOf({ ...DEFAULT_CONFIG, speed: 20, acceleration: 300 })).toEqual({
      speed: 20,
      acceleration: 300,
      corner: 5,
    });
    expect(motionOf({ ...DEFAULT_CONFIG, speed: 3, acceleration: 300, corner: 9, jerk: 7 })).toEqual({
      speed: 3,
      acceleration: 300,
      corner: 3,
      jerk: 7,
    });
  });
});
