/**
 * Cuts edges where they meet, so that they share nothing but ends. Crossing points are rounded to the grid, and edges
 * that pass an end of another by half a unit or less are led through it; as that bends edges by up to half a unit, the
 * pieces are looked at again until nothing meets any more (Halperin and Packer, "Iterated snap rounding", 2002).
 */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import { EdgeFinder } from './edge-finder';
import { EdgeList, type Edges, orientation } from './edge-set';

export interface SnappedEdges {
  readonly edges: Edges;
  /** Of the edges; undefined when there are none. */
  readonly finder: EdgeFinder | undefined;
  /** Whether any edge was cut. */
  readonly wasSplit: boolean;
}

/** What many cuts take has no room near the processor. */
const STEPS_PER_CUT = 24;

/** Real drawings need two or three passes. */
const MAX_PASSES = 40;

/** Undefined when the passes do not come to rest. */
export function snapRound(raw: EdgeList): SnappedEdges | undefined {
  let edges = raw.merge();
  let finder = edges.ax.length > 0 ? EdgeFinder.of(edges) : undefined;
  for (let pass = 0; pass < MAX_PASSES; pass += 1) {
    const cuts = finder ? findCuts(edges, finder) : noCuts();
    if (cuts.edge.length === 0) return { edges, finder, wasSplit: pass > 0 };
    edges = cutEdges(edges, cuts).merge();
    finder = finder?.after(edges, cuts.edge.length);
  }
  return undefined;
}

/** Where which edge is to be cut. */
interface Cuts {
  readonly edge: number[];
  readonly x: number[];
  readonly y: number[];
}

function noCuts(): Cuts {
  return { edge: [], x: [], y: [] };
}

/** Of edges none of which was looked at before. */
function findFirstCuts(edges: Edges, finder: EdgeFinder): Cuts {
  const cuts = noCuts();
  const near: number[] = [];
  for (let edge = 0; edge < edges.ax.length; edge += 1) {
    const found = finder.nearAfter(edge, near);
    checkpoint(1 + found);
    for (let place = 0; place < found; place += 1) crossEdges(edges, edge, defined(near[place]), cuts);
  }
  return cuts;
}

function findCuts(edges: Edges, finder: EdgeFinder): Cuts {
  if (!edges.dirty.includes(0)) return findFirstCuts(edges, finder);
  const cuts = noCuts();
  const { dirty: fresh } = edges;
  const near: number[] = [];
  for (let edge = 0; edge < fresh.length; edge += 1) {
    checkpoint();
    if (fresh[edge] === 0) continue;
    const found = finder.near(edge, near);
    checkpoint(found);
    for (let place = 0; place < found; place += 1) {
      const other = defined(near[place]);
      if (other > edge || (other < edge && fresh[other] === 0)) crossEdges(edges, edge, other, cuts);
    }
  }
  return cuts;
}

function crossEdges(edges: Edges, i: number, j: number, cuts: Cuts): void {
  const iax = defined(edges.ax[i]);
  const iay = defined(edges.ay[i]);
  const ibx = defined(edges.bx[i]);
  const iby = defined(edges.by[i]);
  const jax = defined(edges.ax[j]);
  const jay = defined(edges.ay[j]);
  const jbx = defined(edges.bx[j]);
  const jby = defined(edges.by[j]);
  if (iax === jbx && iay === jby && leadsAway(ibx - iax, iby - iay, jax - jbx, jay - jby)) return;
  if (ibx === jax && iby === jay && leadsAway(iax - ibx, iay - iby, jbx - jax, jby - jay)) return;
  const near = halfUnitFrom(ibx - iax, iby - iay);
  const startOfJ = orientation(iax, iay, ibx, iby, jax, jay);
  const endOfJ = orientation(iax, iay, ibx, iby, jbx, jby);
  if ((startOfJ > near && endOfJ > near) || (startOfJ < -near && endOfJ < -near)) return;
  const nearJ = halfUnitFrom(jbx - jax, jby - jay);
  const startOfI = orientation(jax, jay, jbx, jby, iax, iay);
  const endOfI = orientation(jax, jay, jbx, jby, ibx, iby);
  if ((startOfI > nearJ && endOfI > nearJ) || (startOfI < -nearJ && endOfI < -nearJ)) return;
  const before = cuts.edge.length;
  if (Math.abs(startOfJ) <= near) cutWithin(edges, i, jax, jay, cuts);
  if (Math.abs(endOfJ) <= near) cutWithin(edges, i, jbx, jby, cuts);
  if (Math.abs(startOfI) <= nearJ) cutWithin(edges, j, iax, iay, cuts);
  if (Math.abs(endOfI) <= nearJ) cutWithin(edges, j, ibx, iby, cuts);
  const crossing = startOfJ * endOfJ < 0 && startOfI * endOfI < 0;
  if (!crossing || cuts.edge.length > before) return;
  const t = startOfI / (startOfI - endOfI);
  const x = Math.round(clamp(iax + t * (ibx - iax), Math.max(iax, jax), Math.min(ibx, jbx)));
  const y = Math.round(clamp(iay + t * (iby - iay), lowest(iay, iby, jay, jby), highest(iay, iby, jay, jby)));
  cutWithin(edges, i, x, y, cuts);
  cutWithin(edges, j, x, y, cuts);
}

/** Whether two edges from one point part at a right angle or more: neither has a place of the other in its box then. */
function leadsAway(ix: number, iy: number, jx: number, jy: number): boolean {
  return ix * jx + iy * jy <= 0;
}

/** Half the length: the doubled area of a triangle over the edge whose height is half a unit. */
function halfUnitFrom(dx: number, dy: number): number {
  return Math.sqrt(dx * dx + dy * dy) / 2;
}

function clamp(value: number, low: number, high: number): number {
  return Math.max(low, Math.min(high, value));
}

/** The lower end of the range that both spans share. */
function lowest(a: number, b: number, c: number, d: number): number {
  return Math.max(Math.min(a, b), Math.min(c, d));
}

function highest(a: number, b: number, c: number, d: number): number {
  return Math.min(Math.max(a, b), Math.max(c, d));
}

/** Unless the place is an end of the edge, or beyond its ends. */
function cutWithin(edges: Edges, edge: number, x: number, y: number, cuts: Cuts): void {
  const ax = defined(edges.ax[edge]);
  const ay = defined(edges.ay[edge]);
  const bx = defined(edges.bx[edge]);
  const by = defined(edges.by[edge]);
  if (x < ax || x > bx || y < Math.min(ay, by) || y > Math.max(ay, by)) return;
  if ((x === ax && y === ay) || (x === bx && y === by)) return;
  cuts.edge.push(edge);
  cuts.x.push(x);
  cuts.y.push(y);
}

function cutEdges(edges: Edges, cuts: Cuts): EdgeList {
  const { ax, ay, bx, by, owner } = edges;
  checkpoint(STEPS_PER_CUT * cuts.edge.length);
  const result = new EdgeList(ax.length + cuts.edge.length);
  const order = inCourse(edges, cuts);
  let next = 0;
  for (let edge = 0; edge < ax.length; edge += 1) {
    checkpoint(2);
    let x = defined(ax[edge]);
    let y = defined(ay[edge]);
    const first = defined(edges.first[edge]);
    const second = defined(edges.second[edge]);
    const own = defined(owner[edge]);
    let fresh = 0;
    for (; next < order.length && cuts.edge[defined(order[next])] === edge; next += 1) {
      const cutX = defined(cuts.x[defined(order[next])]);
      const cutY = defined(cuts.y[defined(order[next])]);
      result.push(x, y, cutX, cutY, first, second, 1, own);
      x = cutX;
      y = cutY;
      fresh = 1;
    }
    result.push(x, y, defined(bx[edge]), defined(by[edge]), first, second, fresh, own);
  }
  return result;
}

/** The numbers of the cuts, edge by edge in their order, and along each. */
function inCourse(edges: Edges, cuts: Cuts): Int32Array {
  const order = byEdge(cuts.edge, edges.ax.length);
  const along = Float64Array.from(cuts.edge, (_, cut) => placeAlong(edges, cuts, cut));
  for (let from = 0, end = 0; from < order.length; from = end) {
    checkpoint();
    const edge = cuts.edge[defined(order[from])];
    for (end = from + 1; end < order.length && cuts.edge[defined(order[end])] === edge; ) end += 1;
    if (end - from > 1) order.subarray(from, end).sort((a, b) => defined(along[a]) - defined(along[b]) || a - b);
  }
  return order;
}

/** Counted out: the numbers of cuts of the first edge, then of the second, and so on, each in their order. */
function byEdge(edgeOf: readonly number[], edges: number): Int32Array {
  const free = new Int32Array(edges + 1);
  checkpoint(edges + edgeOf.length);
  for (const edge of edgeOf) free[edge + 1] = defined(free[edge + 1]) + 1;
  for (let edge = 0; edge < edges; edge += 1) free[edge + 1] = defined(free[edge + 1]) + defined(free[edge]);
  const order = new Int32Array(edgeOf.length);
  edgeOf.forEach((edge, cut) => {
    order[defined(free[edge])] = cut;
    free[edge] = defined(free[edge]) + 1;
  });
  return order;
}

function placeAlong(edges: Edges, cuts: Cuts, cut: number): number {
  const edge = defined(cuts.edge[cut]);
  const ax = defined(edges.ax[edge]);
  const ay = defined(edges.ay[edge]);
  const bx = defined(edges.bx[edge]);
  const by = defined(edges.by[edge]);
  return (defined(cuts.x[cut]) - ax) * (bx - ax) + (defined(cuts.y[cut]) - ay) * (by - ay);
}
