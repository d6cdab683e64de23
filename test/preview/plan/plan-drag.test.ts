/** A bridge on its way: what is asked about it, what is drawn of it, and where it is put when it is let go. */
import { describe, expect, it } from 'vitest';
import { PlanDrag } from '../../../src/preview/plan/plan-drag';
import { bridgeAt, ghostAt, LEFT } from './made-plan';

/** Taken hold of a little beside its middle. */
const HOLD = { x: 10.3, y: 20.5 };
const begun = (): PlanDrag => new PlanDrag(0, LEFT, HOLD);

describe('a dragged bridge', () => {
  it('wants its middle where the pointer has taken it', () => {
    const drag = begun();
    expect(drag.moved).toBe(false);
    drag.aim({ x: 12.3, y: 21 }, false);
    expect(drag.moved).toBe(true);
    expect(drag.question).toEqual({ bridge: 0, to: { x: 12, y: 20.5 }, apart: false });
    expect(drag.isAnswered).toBe(false);
  });

  it('is drawn at the pointer at once, then as it is answered, with what follows it', () => {
    const drag = begun();
    drag.aim({ x: 12.3, y: 20.5 }, false);
    expect(drag.drawn.map(({ shape }) => shape.centre)).toEqual([{ x: 12, y: 20 }]);
    const about = drag.question;
    drag.hear({ version: 1, ghosts: [ghostAt(0, { x: 12, y: 20.2 }), ghostAt(1, { x: 28, y: 20.2 })] }, about);
    expect(drag.isAnswered).toBe(true);
    expect(drag.drawn.map(({ bridge, outline }) => [bridge, outline])).toEqual([
      [0, bridgeAt({ x: 12, y: 20.2 }).outline],
      [1, bridgeAt({ x: 28, y: 20.2 }).outline],
    ]);
  });

  it('goes on from the last answer along its gap while the next is under way', () => {
    const drag = begun();
    drag.aim({ x: 12.3, y: 20.5 }, false);
    drag.hear({ version: 1, ghosts: [ghostAt(0, { x: 12, y: 20.2 })] }, drag.question);
    drag.aim({ x: 13.3, y: 25 }, false);
    expect(drag.isAnswered).toBe(false);
    // It stands upright in a gap that runs level: only the way along it counts.
    expect(drag.place.centre).toEqual({ x: 13, y: 20.2 });
  });

  it('tells why it cannot stand, and is put where it could stand last', () => {
    const drag = begun();
    drag.aim({ x: 12.3, y: 20.5 }, false);
    const good = [ghostAt(0, { x: 12, y: 20 }), ghostAt(1, { x: 28, y: 20 })];
    drag.hear({ version: 1, ghosts: good }, drag.question);
    drag.aim({ x: 40.3, y: 40.5 }, false);
    drag.hear({ version: 1, ghosts: [], reason: 'No straight bridge fits there.' }, drag.question);
    expect(drag.reason).toBe('No straight bridge fits there.');
    // It is drawn where the pointer has it all the same.
    expect(drag.drawn.map(({ shape }) => shape.centre)).toEqual([{ x: 40, y: 40 }]);
    expect(drag.standing).toEqual(good);
  });

  it('is asked about anew where it shall go alone', () => {
    const drag = begun();
    expect(drag.hold(true)).toBe(false);
    drag.aim({ x: 12.3, y: 20.5 }, false);
    drag.hear({ version: 1, ghosts: [ghostAt(0, { x: 12, y: 20 })] }, drag.question);
    expect(drag.hold(true)).toBe(true);
    expect(drag.question.apart).toBe(true);
    expect(drag.isAnswered).toBe(false);
    expect(drag.hold(true)).toBe(false);
  });

  it('stays as it was answered last where there is no answer', () => {
    const drag = begun();
    drag.aim({ x: 12.3, y: 20.5 }, false);
    drag.hear(undefined, drag.question);
    expect(drag.isAnswered).toBe(true);
    expect(drag.standing).toEqual([]);
  });
});
