import { describe, expect, it } from 'vitest';
import { CutCourse } from '../../../src/preview/cutting/cut-course';
import type { OrderedCut } from '../../../src/protocol/cutting';

const square: OrderedCut = {
  kind: 'opening',
  line: 'M30 40L40 40L40 50L30 50L30 40',
  from: { x: 30, y: 40 },
  to: { x: 30, y: 40 },
  length: 40,
};
const line: OrderedCut = {
  kind: 'edge',
  line: 'M30 70L30 80',
  from: { x: 30, y: 70 },
  to: { x: 30, y: 80 },
  length: 10,
};
const course = new CutCourse({ cuts: [square, line], home: { x: 0, y: 0 } });

describe('the way of the tool', () => {
  it('is the cuts and the ways to them', () => {
    expect(course.length).toBe(50 + 40 + 30 + 10);
    expect([0, 1, 2, 9].map((done) => course.after(done))).toEqual([0, 90, 130, 130]);
  });

  it('goes out to the first cut', () => {
    expect(course.at(0)).toEqual({ done: 0, begun: [], tool: { x: 0, y: 0 } });
    expect(course.at(25)).toEqual({ done: 0, begun: [], tool: { x: 15, y: 20 } });
  });

  it('follows a cut by its length', () => {
    const { done, begun, tool } = course.at(50 + 15);
    expect(done).toBe(0);
    expect(begun).toEqual([
      { x: 30, y: 40 },
      { x: 40, y: 40 },
      { x: 40, y: 45 },
    ]);
    expect(tool).toEqual({ x: 40, y: 45 });
  });

  it('goes on from where a cut ends', () => {
    expect(course.at(90)).toEqual({ done: 1, begun: [], tool: { x: 30, y: 40 } });
    expect(course.at(105).tool).toEqual({ x: 30, y: 55 });
    expect(course.at(125).begun.at(-1)).toEqual({ x: 30, y: 75 });
  });

  it('ends where the last cut ends', () => {
    expect(course.at(130)).toEqual({ done: 2, begun: [], tool: { x: 30, y: 80 } });
    expect(course.at(500).done).toBe(2);
    expect(course.travel()).toBe('M0 0L30 40M30 40L30 70');
  });

  it('of a sheet with nothing to cut is none', () => {
    const none = new CutCourse({ cuts: [], home: { x: 1, y: 2 } });
    expect([none.length, none.after(1), none.at(0)]).toEqual([0, 0, { done: 0, begun: [], tool: { x: 1, y: 2 } }]);
  });
});
