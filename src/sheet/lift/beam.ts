/**
 * How far a loose part of the sheet lifts: a beam of varying width along its course, clamped at the root, under an even
 * load wherever there is material. It bends and twists.
 */
import { defined } from '../../base/defined';
import type { Point } from '../../geometry/base/curve-types';
import { add, dot, perpendicular, scale } from '../../geometry/base/vector';
import type { CourseStep } from './course';
import { type LoosePart, type Stretch, stretchesOf } from './stretches';

export interface Bending {
  /** MPa: the load on each mm² of material. */
  readonly load: number;
  /** N·mm, which is mN·m: bending stiffness for each mm of width (ISO 5628). */
  readonly stiffness: number;
}

export interface Lift {
  /** mm */
  readonly lift: number;
  /** Where it lifts farthest, sheet mm. */
  readonly at: Point;
}

/** Poisson's ratio: paper and film lie near it. */
const POISSON = 0.3;
/** How much stiffer a flat strip is against twisting than against bending: G b t³ / 3 to E b t³ / 12. */
const TWIST = 2 / (1 + POISSON);
/** The part at a place of its course: how far it has lifted there, in mm, and turned about both axes, in radians. */
interface State {
  readonly lift: number;
  readonly turnX: number;
  readonly turnY: number;
}

const CLAMPED: State = { lift: 0, turnX: 0, turnY: 0 };

export function liftAlong(steps: readonly CourseStep[], part: LoosePart, bending: Bending): Lift {
  const stretches = stretchesOf(steps, part);
  const states: State[] = [];
  let best: Lift = { lift: 0, at: defined(steps[0]).corner };
  steps.forEach((step, i) => {
    const before = steps[step.from];
    const stretch = defined(stretches[i]);
    const state = before
      ? bend(defined(states[step.from]), stretch, momentAt(stretch.middle, before, step), bending)
      : CLAMPED;
    states.push(state);
    const lift = liftAt(state, step.middle, step.corner);
    if (lift > best.lift) best = { lift, at: step.corner };
  });
  return best;
}

/** What lies at `place` where all between is stiff. */
function liftAt({ lift, turnX, turnY }: State, from: Point, place: Point): number {
  return lift + turnX * (place.y - from.y) - turnY * (place.x - from.x);
}

/**
 * From one section to the next one. The moment of what lies beyond is about an axis in the sheet; of that the share across
 * the course bends, the share along it twists.
 */
function bend(state: State, stretch: Stretch, area: Point, { load, stiffness }: Bending): State {
  const { from, to, length, bearing } = stretch;
  if (length === 0) return state;
  const along = { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
  const across = perpendicular(along);
  const bow = (load * dot(area, across) * length) / (stiffness * bearing);
  const twist = (load * dot(area, along) * length) / (TWIST * stiffness * bearing);
  const turn = add(scale(across, bow), scale(along, twist));
  const halfway = { lift: state.lift, turnX: state.turnX + turn.x / 2, turnY: state.turnY + turn.y / 2 };
  return { lift: liftAt(halfway, from, to), turnX: state.turnX + turn.x, turnY: state.turnY + turn.y };
}

/** mm³: the moment, about the axes, of what lies beyond the middle between two sections, for each MPa of load. */
function momentAt(place: Point, before: CourseStep, step: CourseStep): Point {
  const area = (before.beyond.area + step.beyond.area) / 2;
  const momentX = (before.beyond.momentX + step.beyond.momentX) / 2;
  const momentY = (before.beyond.momentY + step.beyond.momentY) / 2;
  return { x: momentY - area * place.y, y: -(momentX - area * place.x) };
}
