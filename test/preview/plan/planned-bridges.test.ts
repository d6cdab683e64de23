/** The bridges of a plan where they stand now, and each move taken back alone. */
import { describe, expect, it } from 'vitest';
import { PlannedBridges } from '../../../src/preview/plan/planned-bridges';
import { bridgeAt, ghostAt, LEFT, RIGHT } from './made-plan';

function planned(): PlannedBridges {
  const bridges = new PlannedBridges();
  bridges.begin([LEFT, RIGHT]);
  return bridges;
}

describe('planned bridges', () => {
  it('stand where they were planned, until they are moved; what moves together is one step', () => {
    const bridges = planned();
    expect(bridges.all).toEqual([LEFT, RIGHT]);
    expect(bridges.moved).toEqual([]);
    bridges.move([ghostAt(0, { x: 12, y: 20 }), ghostAt(1, { x: 28, y: 20 })]);
    expect(bridges.all).toEqual([bridgeAt({ x: 12, y: 20 }), bridgeAt({ x: 28, y: 20 })]);
    expect(bridges.moved).toEqual([
      { bridge: 0, from: { x: 12, y: 19 }, to: { x: 12, y: 21 } },
      { bridge: 1, from: { x: 28, y: 19 }, to: { x: 28, y: 21 } },
    ]);
    expect(bridges.takeBack(false)).toBe(true);
    expect(bridges.all).toEqual([LEFT, RIGHT]);
  });

  it('go back and forth step by step; a new move ends what could be done again', () => {
    const bridges = planned();
    bridges.move([ghostAt(0, { x: 12, y: 20 })]);
    bridges.move([ghostAt(0, { x: 14, y: 20 })]);
    bridges.takeBack(false);
    expect(bridges.all[0]).toEqual(bridgeAt({ x: 12, y: 20 }));
    expect(bridges.takeBack(true)).toBe(true);
    expect(bridges.all[0]).toEqual(bridgeAt({ x: 14, y: 20 }));
    expect(bridges.takeBack(true)).toBe(false);
    bridges.takeBack(false);
    bridges.move([ghostAt(1, { x: 26, y: 20 })]);
    expect(bridges.takeBack(true)).toBe(false);
    expect(bridges.all).toEqual([bridgeAt({ x: 12, y: 20 }), bridgeAt({ x: 26, y: 20 })]);
  });

  it('are put back all at once, which can be taken back, too', () => {
    const bridges = planned();
    expect(bridges.reset()).toBe(false);
    bridges.move([ghostAt(0, { x: 12, y: 20 })]);
    bridges.move([ghostAt(1, { x: 26, y: 20 })]);
    expect(bridges.reset()).toBe(true);
    expect(bridges.moved).toEqual([]);
    bridges.takeBack(false);
    expect(bridges.moved.map(({ bridge }) => bridge)).toEqual([0, 1]);
  });

  it('of another plan begin anew', () => {
    const bridges = planned();
    bridges.move([ghostAt(0, { x: 12, y: 20 })]);
    bridges.begin([RIGHT]);
    expect(bridges.all).toEqual([RIGHT]);
    expect(bridges.takeBack(false)).toBe(false);
  });
});
