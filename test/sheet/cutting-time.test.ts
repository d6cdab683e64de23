import { describe, expect, it, test } from 'vitest';
import { DEFAULT_CONFIG } from '../../src/config/types';
import { check } from '../../src/engine/check/check-file';
import { cuttingTimeOf, formatDuration, travelTime } from '../../src/sheet/cutting-time';
import { sheetOf } from '../checks/stencils';

const config = { ...DEFAULT_CONFIG, speed: 50, acceleration: 500 };
const timeFor = (body: string) => cuttingTimeOf(check(sheetOf(body)).sheets[0] ?? { openings: [] }, config);

describe('travelTime', () => {
  // The trapezoidal profile: d/v + v/a from d = v²/a on, below 2·√(d/a); both give the same where they meet.
  it.each([
    [100, 2.1],
    [2, 0.126491],
    [5, 0.2],
    [0, 0],
  ])('over %d mm at 50 mm/s and 500 mm/s² is %d s', (distance, seconds) => {
    expect(travelTime(distance, 50, 500)).toBeCloseTo(seconds, 6);
  });
});

describe('cuttingTimeOf', () => {
  it('stops at corners, and goes round curves without a stop', () => {
    expect(timeFor('<rect x="10" y="10" width="50" height="25"/>')).toBeCloseTo(150 / 50 + 4 * 0.1, 9);
    expect(timeFor('<circle cx="50" cy="50" r="20"/>')).toBeCloseTo((40 * Math.PI) / 50 + 0.1, 3);
    // Four sides and four quarter turns with the same tangents: one run.
    expect(timeFor('<rect x="10" y="10" width="50" height="25" rx="5"/>')).toBeCloseTo(
      (110 + 10 * Math.PI) / 50 + 0.1,
      3,
    );
    // A half disc has two corners.
    expect(timeFor('<path d="M30 50A20 20 0 0 1 70 50Z"/>')).toBeCloseTo((40 + 20 * Math.PI) / 50 + 2 * 0.1, 3);
  });

  it('adds up openings and what stands in them', () => {
    const hole = '<path fill-rule="evenodd" d="M10 10H60V60H10Z M20 20H50V50H20Z"/>';
    expect(timeFor(`${hole}<path d="M70 70H71V71H70Z"/>`)).toBeCloseTo(
      320 / 50 + 8 * 0.1 + 4 * 2 * Math.sqrt(1 / 500),
      9,
    );
    expect(timeFor('')).toBe(0);
  });

  it('is not guessed where speed or acceleration are not stated', () => {
    expect(cuttingTimeOf({ openings: [] }, DEFAULT_CONFIG)).toBeUndefined();
    expect(cuttingTimeOf({ openings: [] }, { ...DEFAULT_CONFIG, speed: 50 })).toBeUndefined();
  });
});

test.each([
  [0.2, '1 s'],
  [59.4, '59 s'],
  [59.6, '1 min 00 s'],
  [185, '3 min 05 s'],
  [3720, '1 h 02 min'],
])('%d seconds are shown as %s', (seconds, text) => expect(formatDuration(seconds)).toBe(text));
