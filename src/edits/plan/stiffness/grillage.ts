/**
 * Islands that hang on each other and on the frame, as one grillage: stiff plates under an even load, joined by beams that
 * bend and twist, clamped at both ends (direct stiffness method; Euler–Bernoulli and Saint-Venant, any textbook of the
 * matrix analysis of structures). Sheet mm, N.
 */
import { checkpoint } from '../../../base/checkpoint';
import { defined } from '../../../base/defined';
import type { Point } from '../../../geometry/base/curve-types';
import { distance, perpendicular, scale, subtract } from '../../../geometry/base/vector';
import type { Body } from '../search/body';
import { type Statics, TWIST } from '../search/hold';
import { inverseOf, solved } from './linear';

/** A bridge between two pieces. */
export interface Beam {
  /** The numbers of the pieces at either end. */
  readonly island: number;
  readonly target: number;
  readonly from: Point;
  readonly to: Point;
  /** mm as drawn. */
  readonly width: number;
}

export interface Grillage {
  /** For each plate where its three unknowns begin: the lift of its middle, and its slopes by x and by y. */
  readonly place: ReadonlyMap<number, number>;
  readonly bodies: ReadonlyMap<number, Body>;
  readonly statics: Statics;
  /** What the unknowns are for a unit of force at each, row by row. */
  readonly give: readonly Float64Array[];
  /** The unknowns under the load. */
  readonly moved: Float64Array;
}

/** A place of a plate, by which of its unknowns count there. */
interface Place {
  readonly number: number;
  readonly row: readonly [number, number, number];
}

/** How far a plate lifts where it lifts most. */
export interface PlateLift extends Place {
  /** mm */
  readonly lift: number;
}

/** @param bodies all pieces that hang by beams, by their numbers; what has no body here is firm */
export function grillageOf(bodies: ReadonlyMap<number, Body>, beams: readonly Beam[], statics: Statics): Grillage {
  const place = new Map([...bodies.keys()].map((number, i) => [number, 3 * i]));
  const size = 3 * place.size;
  checkpoint(size ** 3 / 8);
  const stiffness = Array.from({ length: size }, () => new Float64Array(size));
  for (const beam of beams) {
    const { unknowns, matrix } = beamIn({ place, bodies, statics }, beam);
    unknowns.forEach((row, r) => {
      unknowns.forEach((column, c) => {
        const line = defined(stiffness[row]);
        line[column] = defined(line[column]) + defined(matrix[r]?.[c]);
      });
    });
  }
  const give = inverseOf(stiffness);
  const moved = new Float64Array(size);
  for (const [number, { area }] of bodies) {
    const column = defined(place.get(number));
    give.forEach((row, r) => {
      moved[r] = defined(moved[r]) + defined(row[column]) * statics.bending.load * area;
    });
  }
  return { place, bodies, statics, give, moved };
}

/** Where a plate lifts most: at a corner of its hull. */
export function liftOfPlate({ place, bodies, moved }: Grillage, number: number): PlateLift {
  const at = defined(place.get(number));
  const { hull, mass } = defined(bodies.get(number));
  let most: PlateLift = { number, row: [1, 0, 0], lift: Math.abs(defined(moved[at])) };
  for (const corner of hull) {
    const row = [1, corner.x - mass.x, corner.y - mass.y] as const;
    const lift = Math.abs(row.reduce((sum, share, k) => sum + share * defined(moved[at + k]), 0));
    if (lift > most.lift) most = { number, row, lift };
  }
  return most;
}

/**
 * mm: by how much less each of some places lifts with one more beam. By the formula of Sherman, Morrison and Woodbury, so that nothing
 * is solved anew.
 * @param instead one that goes for it; what it held must hang by others
 */
export function gainsOf(grillage: Grillage, places: readonly PlateLift[], beam: Beam, instead?: Beam): number[] {
  const { give, moved } = grillage;
  const { unknowns, matrix } = differenceOf(grillage, beam, instead);
  const own = unknowns.map((unknown) => defined(moved[unknown]));
  const force = matrix.map((line) => line.reduce((sum, value, c) => sum + value * defined(own[c]), 0));
  const system = matrix.map((line, r) =>
    unknowns.map(
      (_, c) =>
        Number(r === c) +
        line.reduce((sum, value, k) => sum + value * defined(give[defined(unknowns[k])]?.[defined(unknowns[c])]), 0),
    ),
  );
  const carried = solved(system, force);
  return places.map(({ number, row, lift }) => {
    const at = defined(grillage.place.get(number));
    const change = unknowns.reduce((sum, unknown, c) => {
      const felt = row.reduce((all, share, k) => all + share * defined(give[at + k]?.[unknown]), 0);
      return sum + felt * defined(carried[c]);
    }, 0);
    const before = row.reduce((sum, share, k) => sum + share * defined(moved[at + k]), 0);
    return lift - Math.abs(before - change);
  });
}

interface Resistance {
  readonly unknowns: readonly number[];
  readonly matrix: readonly (readonly number[])[];
}

/** What one beam resists more than another: of the same ends as one matrix, else the two of them side by side. */
function differenceOf(grillage: Grillage, beam: Beam, instead: Beam | undefined): Resistance {
  const more = beamIn(grillage, beam);
  if (!instead) return more;
  const less = beamIn(grillage, instead);
  if (beam.island === instead.island && beam.target === instead.target) {
    const matrix = more.matrix.map((line, r) => line.map((value, c) => value - defined(less.matrix[r]?.[c])));
    return { unknowns: more.unknowns, matrix };
  }
  return {
    unknowns: [...more.unknowns, ...less.unknowns],
    matrix: [
      ...more.matrix.map((line) => [...line, ...less.unknowns.map(() => 0)]),
      ...less.matrix.map((line) => [...more.unknowns.map(() => 0), ...line.map((value) => -value)]),
    ],
  };
}

/** The unknowns that a beam joins, and what it resists between them. */
function beamIn(
  { place, bodies, statics }: Pick<Grillage, 'place' | 'bodies' | 'statics'>,
  { island, target, from, to, width }: Beam,
): Resistance {
  const length = distance(from, to);
  const along = length > 0 ? scale(subtract(to, from), 1 / length) : { x: 1, y: 0 };
  const cut = Math.max(width - statics.kerf, 0);
  const inner = resistanceOf(length + cut, statics.bending.stiffness * cut);
  const ends = [
    { number: island, end: from },
    { number: target, end: to },
  ].flatMap(({ number, end }, side) => {
    const at = place.get(number);
    const body = bodies.get(number);
    return at === undefined || !body ? [] : [{ at, rows: rowsAt(subtract(end, body.mass), along), side }];
  });
  const unknowns = ends.flatMap(({ at }) => [at, at + 1, at + 2]);
  // Each of the end's three values, by the unknown that it hangs on.
  const shares = ends.flatMap(({ rows, side }) =>
    [0, 1, 2].map((k) => [0, 1, 2].map((value) => ({ value: 3 * side + value, share: defined(rows[value]?.[k]) }))),
  );
  const matrix = shares.map((a) =>
    shares.map((b) =>
      a.reduce(
        (sum, one) =>
          sum + b.reduce((all, other) => all + one.share * other.share * defined(inner[one.value]?.[other.value]), 0),
        0,
      ),
    ),
  );
  return { unknowns, matrix };
}

/** Lift, slope along and slope across at one end of a beam, by the unknowns of the plate there. */
function rowsAt(away: Point, along: Point): number[][] {
  const across = perpendicular(along);
  return [
    [1, away.x, away.y],
    [0, along.x, along.y],
    [0, across.x, across.y],
  ];
}

/**
 * Forces for lift, slope and twist at either end.
 * @param long mm: roots give as if the beam were half its width longer there
 * @param bend N·mm²
 */
function resistanceOf(long: number, bend: number): number[][] {
  const unit = bend / long ** 3;
  const [a, b, c, d] = [12 * unit, 6 * unit * long, 4 * unit * long ** 2, 2 * unit * long ** 2];
  const t = (TWIST * bend) / long;
  return [
    [a, b, 0, -a, b, 0],
    [b, c, 0, -b, d, 0],
    [0, 0, t, 0, 0, -t],
    [-a, -b, 0, a, -b, 0],
    [b, d, 0, -b, c, 0],
    [0, 0, -t, 0, 0, t],
  ];
}
