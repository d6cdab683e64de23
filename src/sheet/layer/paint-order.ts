/** In which order the colours of a drawing must be sprayed, so that the print looks as the drawing does. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Shape } from '../../drawing/types';
import { memoizeByIdentity } from '../../geometry/base/derived-facts';
import type { Region } from '../../geometry/base/polygon-types';
import { boxesTouch, joinBoxes } from '../../geometry/base/ring';
import { DRAWN_ALIKE } from '../../geometry/base/tolerances';
import { areaOf, boxOfPolygon, difference, intersection, perimeterOf, union } from '../../geometry/boolean/index';
import { leastLoss } from './least-loss';
import { shapeRegion } from './shape-region';

/** A colour that would have to be sprayed both before and after another. */
export interface PaintConflict {
  /** `#rrggbb`: sprayed first, though the drawing shows it over the other here. */
  readonly covered: string;
  readonly over: string;
  /** The first shape of the run that should be seen, and where it is not. */
  readonly shape: Shape;
  readonly region: Region;
}

export interface PaintOrder {
  /** `#rrggbb`, first sprayed first. */
  readonly colours: readonly string[];
  readonly conflicts: readonly PaintConflict[];
  /** Set where the colours change too often from shape to shape to be put in order. */
  readonly unsorted?: true;
}

/** Shapes of one colour that are painted one after the other. */
interface Run {
  readonly colour: string;
  readonly shapes: Shape[];
}

/** One colour is seen over another. */
interface Constraint {
  readonly below: string;
  readonly above: string;
  readonly run: Run;
  readonly region: Region;
}

/** Drawings whose colours change more often are sprayed in the order in which the colours appear first. */
const MAX_RUNS = 120;

/** `#rrggbb`; a shape without a colour, as a cut line is, counts as black. */
export function colourOf({ paint }: Shape): string {
  return paint.kind === 'none' ? '#000000' : paint.colour;
}

/** @param shapes in painting order */
export const paintOrder = memoizeByIdentity('order of paints', (shapes: readonly Shape[]): PaintOrder => {
  const runs = runsOf(shapes);
  const appearing = [...new Set(runs.map(({ colour }) => colour))];
  if (runs.length === appearing.length) return { colours: appearing, conflicts: [] };
  if (runs.length > MAX_RUNS) return { colours: appearing, conflicts: [], unsorted: true };
  const constraints = constraintsOf(runs);
  const colours = sorted(appearing, constraints);
  const place = new Map(colours.map((colour, index) => [colour, index]));
  const broken = constraints.filter(({ below, above }) => defined(place.get(below)) > defined(place.get(above)));
  const conflicts = broken.map(({ below, above, run, region }) => ({
    covered: above,
    over: below,
    shape: defined(run.shapes[0]),
    region,
  }));
  return { colours, conflicts };
});

function runsOf(shapes: readonly Shape[]): Run[] {
  const runs: Run[] = [];
  for (const shape of shapes) {
    const colour = colourOf(shape);
    const last = runs.at(-1);
    if (last?.colour === colour) last.shapes.push(shape);
    else runs.push({ colour, shapes: [shape] });
  }
  return runs;
}

/** Every run that is still seen where it lies on another colour: what later ones cover asks for nothing. */
function constraintsOf(runs: readonly Run[]): Constraint[] {
  const areas = runs.map(({ shapes }) => union(shapes.map(shapeRegion)));
  const seen = seenOf(areas);
  const beneath = new Map<string, Region>();
  const constraints: Constraint[] = [];
  runs.forEach((run, index) => {
    for (const [below, region] of beneath) {
      const overlap = below === run.colour ? [] : overlapOf(region, defined(seen[index]));
      if (isMeant(overlap)) constraints.push({ below, above: run.colour, run, region: overlap });
    }
    beneath.set(run.colour, union([beneath.get(run.colour) ?? [], defined(areas[index])]));
  });
  return constraints;
}

/** What of each area no later one covers. */
function seenOf(areas: readonly Region[]): Region[] {
  let covered: Region = [];
  return areas
    .toReversed()
    .map((area) => {
      checkpoint(50);
      const seen = difference(area, covered);
      covered = union([covered, area]);
      return seen;
    })
    .reverse();
}

/** Only of the polygons whose boxes meet: most of a colour lies elsewhere. */
function overlapOf(region: Region, other: Region): Region {
  checkpoint(50);
  if (other.length === 0) return [];
  const box = joinBoxes(other.map(boxOfPolygon));
  const near = region.filter((polygon) => boxesTouch(boxOfPolygon(polygon), box));
  return near.length === 0 ? [] : intersection(near, other);
}

/** Neighbours that were drawn to one line overlap by rounding. */
function isMeant(region: Region): boolean {
  return region.some((polygon) => areaOf(polygon) > (DRAWN_ALIKE * perimeterOf(polygon)) / 2);
}

/** The order in which the least is covered that should be seen; of several such the one nearest to the drawing's. */
function sorted(appearing: readonly string[], constraints: readonly Constraint[]): string[] {
  const place = new Map(appearing.map((colour, index) => [colour, index]));
  const losses = appearing.map(() => new Float64Array(appearing.length));
  for (const { below, above, region } of constraints) {
    const row = defined(losses[defined(place.get(above))]);
    const column = defined(place.get(below));
    row[column] = defined(row[column]) + areaOf(region);
  }
  return leastLoss(losses).map((index) => defined(appearing[index]));
}
