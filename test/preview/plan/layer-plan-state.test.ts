/** What is said and drawn of a plan, from the question for it until it is in the text. */
import { describe, expect, it } from 'vitest';
import { LayerPlanState } from '../../../src/preview/plan/layer-plan-state';
import { PlanDrag } from '../../../src/preview/plan/plan-drag';
import type { PlanGhost } from '../../../src/protocol/layer-plan';
import { ghostAt, LEFT, madePlan, RIGHT, SUN } from './made-plan';

const looks = ({ strips }: LayerPlanState) => strips.map(({ look }) => look);

function ready(): LayerPlanState {
  const state = new LayerPlanState(SUN, 'Sun');
  state.takePlan(madePlan());
  return state;
}

/** Drags its first bridge, and hears that answer. */
function dragged(state: LayerPlanState, ...answers: Omit<PlanGhost, 'version'>[]): void {
  const drag = new PlanDrag(0, LEFT, { x: 10, y: 20 });
  state.drag = drag;
  answers.forEach((answer, i) => {
    drag.aim({ x: 12 + i, y: 20 }, false);
    drag.hear({ version: 1, ...answer }, drag.question);
  });
}

const TOGETHER = { ghosts: [ghostAt(0, { x: 12, y: 20 }), ghostAt(1, { x: 28, y: 20 })] };
const NOWHERE = { ghosts: [], reason: 'No straight bridge fits there.' };

describe('a plan', () => {
  it('is asked for, sketched, and proven', () => {
    const state = new LayerPlanState(SUN, 'Sun');
    expect(state.sentence).toBe('Planning the bridges of "Sun"…');
    state.takeSketch({ version: 1, layer: SUN, style: 'auto', stated: 'auto', bridges: [LEFT] });
    expect(state.sentence).toBe('1 bridge, being checked…');
    expect(looks(state)).toEqual(['sketched']);
    expect([state.style, state.isHandled]).toEqual(['auto', false]);
    // Those that hold are others: who has pressed Enter has not seen them.
    expect(state.takePlan(madePlan())).toBe(false);
    expect(state.sentence).toBe('Bridge every island in layer "Sun" (2 bridges of 0.80 mm)');
    expect(looks(state)).toEqual(['planned', 'planned']);
    expect([state.stage, state.isHandled]).toEqual(['ready', true]);
  });

  it('that has the bridges of its sketch is as it was seen', () => {
    const state = new LayerPlanState(SUN, 'Sun');
    state.takeSketch({ version: 1, layer: SUN, style: 'auto', stated: 'auto', bridges: [LEFT, RIGHT] });
    expect(state.takePlan(madePlan())).toBe(true);
  });

  it('tells what comes with it as long as it is proven as it stands', () => {
    const told = ['Bridge at 3.0, 4.0 mm: 13.00 mm long.'];
    const state = new LayerPlanState(SUN, 'Sun');
    state.takePlan(madePlan({ told }));
    expect(state.told).toEqual(told);
    state.awaitProof();
    expect(state.told).toEqual([]);
    state.judge(madePlan());
    expect(state.told).toEqual([]);
  });

  it('that cannot be had says why', () => {
    const state = new LayerPlanState(SUN, 'Sun');
    state.takePlan(madePlan({ bridges: [], answer: { version: 1, reason: 'No bridge fits.', first: 'Remove it.' } }));
    expect(state.stage).toBe('refused');
    expect(state.isRefusing).toBe(true);
    expect(state.sentence).toBe('No bridge fits. Remove it.');
  });

  it('in another style begins anew, and what was moved is forgotten', () => {
    const state = ready();
    dragged(state, TOGETHER);
    state.letGo();
    state.begin('level');
    expect([state.stage, state.style]).toEqual(['planning', 'level']);
    // What was seen stays until there is something else to see.
    expect(state.strips.length).toBe(2);
    state.takePlan(madePlan({ style: 'level' }));
    expect(state.bridges.moved).toEqual([]);
  });

  it('has the islands that stay loose, and whether its style can be kept', () => {
    const left = [{ at: { x: 1, y: 1 }, outline: 'M0 0L2 0L2 2Z', reason: 'No bridge fits the island.' }];
    const state = new LayerPlanState(SUN, 'Sun');
    expect([state.left, state.keepable]).toEqual([[], false]);
    state.takePlan(madePlan({ left, keep: { uri: 'file:///tombolo.json', version: 0, edits: [] } }));
    expect([state.left, state.keepable]).toEqual([left, true]);
  });
});

describe('a bridge of a plan on its way', () => {
  it('is drawn with what follows it, and where they were', () => {
    const state = ready();
    dragged(state, TOGETHER);
    expect(looks(state)).toEqual(['was', 'was', 'moving', 'moving']);
    expect(state.sentence).toBe('2 bridges that are alike. Hold Alt to move this one alone.');
    expect(state.letGo()).toBe(true);
    expect(state.bridges.all.map(({ from }) => from.x)).toEqual([12, 28]);
    expect(state.sentence).toBe('2 bridges, being checked…');
  });

  it('is red where it cannot stand, and goes back to where it could', () => {
    const state = ready();
    dragged(state, TOGETHER, NOWHERE);
    expect(looks(state)).toEqual(['was', 'planned', 'refused']);
    expect([state.sentence, state.isRefusing]).toEqual(['No straight bridge fits there.', true]);
    expect(state.letGo()).toBe(true);
    expect(state.sentence).toBe('No straight bridge fits there. It went back.');
    expect(state.bridges.all.map(({ from }) => from.x)).toEqual([12, 28]);
  });

  it('stays where it was planned where it could stand nowhere', () => {
    const state = ready();
    dragged(state, NOWHERE);
    expect(state.letGo()).toBe(false);
    expect(state.stage).toBe('ready');
    expect(state.bridges.moved).toEqual([]);
  });

  it('that was only clicked moves nothing', () => {
    const state = ready();
    state.drag = new PlanDrag(1, RIGHT, { x: 30, y: 20 });
    state.selected = 1;
    expect(looks(state)).toEqual(['planned', 'selected']);
    expect(state.letGo()).toBe(false);
    expect(state.notice).toBeUndefined();
  });

  it('is marked where the whole does not hold with it', () => {
    const state = ready();
    dragged(state, { ghosts: [ghostAt(0, { x: 12, y: 20 })] });
    state.letGo();
    state.judge(madePlan({ answer: { version: 1, reason: 'It would leave a loose tongue.' } }));
    expect(looks(state)).toEqual(['refused', 'planned']);
    expect(state.sentence).toBe('It would leave a loose tongue.');
  });
});
