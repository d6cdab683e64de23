/** Thin components: chains that face each other across the same thin part of the region. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import { OVERLAY_GRID } from '../base/tolerances';
import { findRoot, uniteSets } from '../spatial/clusters';
import { TouchFinder } from './boundary-index';
import { type Chord, edgePlace } from './chord';
import { isEdge } from './tangent-disc';
import { portalsOf, type ThinBoundary, touchedInterval, visitIntervals } from './thin-boundary';

/** In mm: portals this near to each other are one. */
const SAME_PORTAL = OVERLAY_GRID;

/** In mm and radians: how far inside a chain's end the facing side is looked for. */
const INSIDE = 10 * OVERLAY_GRID;

/** In radians: the normal turns so little in a cone between two edges that what faces those faces it as well. */
const SMALL_TURN = 0.05;

export interface Components {
  readonly parents: Int32Array;
  /** 1 for chains that end at the disc at which they begin: what lies behind that disc is cut off by it. */
  readonly returning: Uint8Array;
  /**
   * For each chain the place where the least empty disc was seen that also touches another chain: its diameter in mm
   * (Infinity when there is none), its stretch and parameter. An upper bound of the width between the two.
   */
  readonly bound: Float64Array;
  readonly boundInterval: Int32Array;
  readonly boundParameter: Float64Array;
}

/** Polygons marked in `skip` are passed over. */
export function linkChains(thin: ThinBoundary, skip: Uint8Array): Components {
  const { count } = thin.chains;
  const components: Components = {
    parents: Int32Array.from({ length: count }, (_, chain) => chain),
    returning: new Uint8Array(count),
    bound: new Float64Array(count).fill(Infinity),
    boundInterval: new Int32Array(count).fill(-1),
    boundParameter: new Float64Array(count),
  };
  const finder = new TouchFinder(thin.boundary);
  const { polygon } = thin.boundary.outline;
  for (let chain = 0; chain < count; chain += 1) {
    checkpoint();
    if (skip[defined(polygon[defined(thin.chains.elementOf[defined(thin.chains.first[chain])]) >> 1])] === 1) continue;
    if (thin.chains.closed[chain] === 0 && returnsToPortal(thin, chain)) components.returning[chain] = 1;
    else linkChain(thin, chain, finder, components);
  }
  return components;
}

function returnsToPortal(thin: ThinBoundary, chain: number): boolean {
  const [begin, end] = portalsOf(thin, chain);
  const dx = end.x - begin.x;
  const dy = end.y - begin.y;
  return dx * dx + dy * dy < SAME_PORTAL * SAME_PORTAL;
}

/** Looks across from the middle of each stretch, but for the smallest turns, and from just inside the chain's ends. */
function linkChain(thin: ThinBoundary, chain: number, finder: TouchFinder, components: Components): void {
  const { chains, intervals: stretches } = thin;
  const [first, last] = [defined(chains.first[chain]), defined(chains.last[chain])];
  visitIntervals(thin, chain, (stretch) => {
    const [from, to] = [defined(stretches.from[stretch]), defined(stretches.to[stretch])];
    const inside = Math.min(INSIDE, (to - from) / 4);
    if (stretch === first) lookAcross(thin, stretch, from + inside, finder, components);
    const worthwhile = isEdge(defined(chains.elementOf[stretch])) || to - from > SMALL_TURN;
    if (worthwhile || first === last) lookAcross(thin, stretch, (from + to) / 2, finder, components);
    if (stretch === last) lookAcross(thin, stretch, to - inside, finder, components);
  });
}

function lookAcross(
  thin: ThinBoundary,
  stretch: number,
  parameter: number,
  finder: TouchFinder,
  components: Components,
): void {
  const radius = finder.find(defined(thin.chains.elementOf[stretch]), parameter, 1.01 * thin.radius);
  if (radius === Infinity) return;
  const chain = defined(thin.chains.chainOf[stretch]);
  const facing = facingInterval(thin, finder);
  if (facing < 0) return;
  const other = defined(thin.chains.chainOf[facing]);
  if (other === chain) return;
  uniteSets(components.parents, chain, other);
  if (2 * radius >= defined(components.bound[chain])) return;
  components.bound[chain] = 2 * radius;
  components.boundInterval[chain] = stretch;
  components.boundParameter[chain] = parameter;
}

/** The stretch that the disc last found touches; -1 when none. */
function facingInterval(thin: ThinBoundary, { place, touch }: TouchFinder): number {
  const { x, y, alongX, alongY } = thin.boundary.outline;
  const { edge, at, radius } = touch;
  const dx = place.x + radius * place.normalX - (defined(x[edge]) + at * defined(alongX[edge]));
  const dy = place.y + radius * place.normalY - (defined(y[edge]) + at * defined(alongY[edge]));
  return touchedInterval(thin, edge, at, dx, dy);
}

/** The places that the disc at the chain's bound touches. */
export function boundingChord(thin: ThinBoundary, components: Components, chain: number): Chord {
  const { outline } = thin.boundary;
  const finder = new TouchFinder(thin.boundary);
  const element = defined(thin.chains.elementOf[defined(components.boundInterval[chain])]);
  const parameter = defined(components.boundParameter[chain]);
  finder.find(element, parameter, 1.01 * thin.radius);
  const from = edgePlace(outline, element >> 1, isEdge(element) ? parameter : 0);
  return { from, to: edgePlace(outline, finder.touch.edge, finder.touch.at) };
}

export function rootOf(components: Components, chain: number): number {
  return findRoot(components.parents, chain);
}
