/**
 * Rings moved by a few grid units, with mitred corners. Each is led round its course at the distance, crossing itself and
 * others at will; what the outlines wind round in the sense of outer rings, once or more, is the moved region (Chen and
 * McMains 2005, "Polygon offsetting by computing winding numbers"). The overlay finds that, exactly on its grid, and far
 * sooner than the library does, as long as the move is short beside the edges.
 */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Ring } from '../base/polygon-types';
import { offsetRings } from './clipper';
import { fromGrid, toGrid, UNITS_PER_MM } from './grid';
import { overlayRings } from './overlay';

/** Mitres longer than this many times the move are cut square. */
const MITRE_LIMIT = 10;

/** The cosine of a turn beyond which a mitre would be longer. */
const LEAST_MITRE_COSINE = 2 / MITRE_LIMIT ** 2 - 1;

/** The cosine of a turn that leads back. */
const TURNED_BACK = -0.999;

/**
 * The rings of one region, outer ones of positive area, moved outwards by `delta` mm (inwards when negative): rings as
 * `overlayRings` gives them.
 * @param refinement makes the grid finer than usual by that factor
 */
export function mitredOffset(rings: readonly Ring[], delta: number, refinement: number): Ring[] {
  const units = UNITS_PER_MM * refinement;
  const outlines = rings
    .map((ring) => withoutRepeatedEnd(toGrid(ring, units)))
    .filter((ring) => ring.length >= 6)
    .map((ring) => outlineOf(ring, delta * units));
  const result = overlayRings(outlines, [], (turns) => turns > 0);
  return result ? result.map((ring) => fromGrid(ring, units)) : offsetRings(rings, delta, 'miter', 1, refinement);
}

function withoutRepeatedEnd(ring: Ring): Ring {
  const size = ring.length;
  const isRepeated = size >= 4 && ring[0] === ring[size - 2] && ring[1] === ring[size - 1];
  return isRepeated ? ring.slice(0, size - 2) : ring;
}

/** Grid units. */
function outlineOf(ring: Ring, delta: number): Ring {
  const size = ring.length >> 1;
  const outline = new Outline(ring, delta);
  checkpoint(2 * size);
  for (let at = 0, before = size - 1; at < size; before = at, at += 1) outline.turn(before, at);
  return Float64Array.from(outline.points);
}

class Outline {
  readonly points: number[] = [];
  private readonly ring: Ring;
  private readonly delta: number;
  /** Of the edge from each point to the next one: outwards, of length 1. */
  private readonly normalX: Float64Array;
  private readonly normalY: Float64Array;
  private readonly length: Float64Array;

  constructor(ring: Ring, delta: number) {
    this.ring = ring;
    this.delta = delta;
    const size = ring.length >> 1;
    this.normalX = new Float64Array(size);
    this.normalY = new Float64Array(size);
    this.length = new Float64Array(size);
    for (let at = 0; at < size; at += 1) {
      const next = at + 1 < size ? at + 1 : 0;
      const dx = defined(ring[2 * next]) - defined(ring[2 * at]);
      const dy = defined(ring[2 * next + 1]) - defined(ring[2 * at + 1]);
      const length = Math.sqrt(dx * dx + dy * dy);
      this.normalX[at] = dy / length;
      this.normalY[at] = -dx / length;
      this.length[at] = length;
    }
  }

  /** Leads the outline round the point `at`, from the edge that begins at `before` to the one that begins here. */
  turn(before: number, at: number): void {
    const { delta } = this;
    const [fromX, fromY] = [defined(this.normalX[before]), defined(this.normalY[before])];
    const [toX, toY] = [defined(this.normalX[at]), defined(this.normalY[at])];
    const sine = fromX * toY - fromY * toX;
    const cosine = fromX * toX + fromY * toY;
    const [x, y] = [defined(this.ring[2 * at]), defined(this.ring[2 * at + 1])];
    const turnsIn = cosine > TURNED_BACK && sine * delta < 0;
    if (turnsIn ? this.leavesEdges(before, at, sine, cosine) : cosine > LEAST_MITRE_COSINE) {
      const share = delta / (cosine + 1);
      this.push(x + share * (fromX + toX), y + share * (fromY + toY));
    } else if (turnsIn) {
      // Through the point itself: what lies between winds the other way round, whatever is beside it.
      this.push(x + delta * fromX, y + delta * fromY);
      this.push(x, y);
      this.push(x + delta * toX, y + delta * toY);
    } else {
      // The square end reaches as far beyond the point as the edges are moved.
      const aside = Math.abs(delta) * Math.tan(Math.atan2(Math.abs(sine), cosine) / 4);
      this.push(x + delta * fromX - aside * fromY, y + delta * fromY + aside * fromX);
      this.push(x + delta * toX + aside * toY, y + delta * toY - aside * toX);
    }
  }

  /** Whether the mitre takes less than half of either edge: then neither is turned round, whatever its other end loses. */
  private leavesEdges(before: number, at: number, sine: number, cosine: number): boolean {
    const taken = Math.abs((this.delta * sine) / (1 + cosine));
    return 2 * taken < Math.min(defined(this.length[before]), defined(this.length[at]));
  }

  private push(x: number, y: number): void {
    const { points } = this;
    const [gridX, gridY] = [Math.round(x) + 0, Math.round(y) + 0];
    const size = points.length;
    if (size > 0 && points[size - 2] === gridX && points[size - 1] === gridY) return;
    points.push(gridX, gridY);
  }
}
