import type { Shape } from '../../drawing/types';
import type { Point } from '../../geometry/base/curve-types';
import { pointInside } from '../../geometry/base/point-inside';
import type { Region } from '../../geometry/base/polygon-types';
import { DRAWN_ALIKE } from '../../geometry/base/tolerances';
import { areaOf } from '../../geometry/boolean/index';
import { colourOf, type PaintConflict } from '../../sheet/layer/paint-order';
import { shapeRegion } from '../../sheet/layer/shape-region';
import type { Sheet } from '../../sheet/types';
import type { Check, Stencil } from '../check';
import type { FindingDraft } from '../finding';
import { takenApart } from '../paint-conflicts';
import { inLayer, layerSpan } from '../places';

/** mm²: a colour that covers less was never meant to be sprayed. */
const NOTHING = DRAWN_ALIKE;

/** So many colours are named in a message. */
const NAMED = 3;

/** One sheet is sprayed in one colour: drawings that mean several lose them, or come out in another order. */
export const mixedColours: Check = {
  meta: {
    id: 'mixed-colours',
    summary: 'Two colours in one sheet, or colours that no order of spraying gives.',
    outcome: 'leave two colours in one sheet',
    severity: 'warning',
    reads: 'file',
    fixes: ['layers-by-paint', 'layers-inner-groups'],
    acceptable: true,
    afterFix: { refuses: false },
    row: { wrong: 'a sheet is sprayed in one colour, but drawn in two', click: 'take each colour as a layer' },
  },
  *run(stencil) {
    for (const sheet of stencil.sheets) {
      const finding = describeMixture(stencil, sheet);
      if (finding) yield finding;
    }
    yield* conflictsIn(stencil);
  },
};

function describeMixture(stencil: Stencil, sheet: Sheet): FindingDraft | undefined {
  const { shapes, paint, paintStated, reading, byPaint } = sheet.layer;
  // Lines that only show where to cut may be of any colour, and whoever states a paint has decided.
  if (reading === 'outlines' || paintStated || byPaint) return undefined;
  const first = firstOfEach(shapes);
  const others = [...first].filter(([colour]) => colour !== paint);
  if (others.length === 0) return undefined;
  const colours = [paint, ...others.map(([colour]) => colour)];
  const more = colours.length > NAMED ? ` and ${colours.length - NAMED} more` : '';
  const count = colours.length === 2 ? 'Two' : colours.length === 3 ? 'Three' : `${colours.length}`;
  return {
    message: `${count} colours in one sheet (${colours.slice(0, NAMED).join(', ')}${more}): all is sprayed ${paint}.`,
    detail:
      'All openings of a sheet get the same paint. Take each colour as a layer, or the groups within the layer, or ' +
      'give all its shapes one colour.',
    span: layerSpan(stencil, sheet),
    ...inLayer(sheet),
    related: others.slice(0, NAMED).map(([colour, shape]) => ({ message: colour, span: shape.element.nameSpan })),
    subject: { kind: 'colours', sheet },
  };
}

/** The colours that are seen to cover something, each with the first shape that it fills. */
function firstOfEach(shapes: readonly Shape[]): Map<string, Shape> {
  const first = new Map<string, Shape>();
  for (const shape of shapes) {
    const colour = colourOf(shape);
    if (first.has(colour)) continue;
    if (areaOfAll(shapeRegion(shape)) > NOTHING) first.set(colour, shape);
  }
  return first;
}

/** Where colours that were taken apart would print in another order than they are drawn. */
function* conflictsIn(stencil: Stencil): Iterable<FindingDraft> {
  for (const { sheets, order } of takenApart(stencil)) {
    const [first] = sheets;
    if (order.unsorted && first) yield describeUnsorted(stencil, first);
    for (const places of byColour(order.conflicts)) {
      const sheet = sheets.find(({ layer }) => layer.paint === places[0]?.covered);
      if (sheet) yield describeConflict(sheet, places);
    }
  }
}

/** Of each colour that is covered together, the largest place first: it is one coat that comes too early. */
function byColour(conflicts: readonly PaintConflict[]): PaintConflict[][] {
  const largestFirst = [...conflicts].sort((a, b) => areaOfAll(b.region) - areaOfAll(a.region));
  const colours = new Map<string, PaintConflict[]>(conflicts.map(({ covered }) => [covered, []]));
  for (const conflict of largestFirst) colours.get(conflict.covered)?.push(conflict);
  return [...colours.values()];
}

function areaOfAll(region: Region): number {
  return region.reduce((sum, polygon) => sum + areaOf(polygon), 0);
}

function describeUnsorted(stencil: Stencil, sheet: Sheet): FindingDraft {
  return {
    severity: 'info',
    message: 'The colours change too often to be put in order: they are sprayed as they first appear.',
    detail: 'Whether the print then looks as the drawing does was not worked out. Look at it on the bench.',
    span: layerSpan(stencil, sheet),
    related: [],
  };
}

/** So many other places are listed with the largest one. */
const LISTED = 20;

function describeConflict(sheet: Sheet, places: readonly PaintConflict[]): FindingDraft {
  const [{ covered, over, shape, region }, ...others] = places as readonly [PaintConflict, ...PaintConflict[]];
  return {
    message: `${covered} is drawn over ${over} here, but under it elsewhere: it is sprayed first, so this part is covered.`,
    detail: `Each colour is sprayed once. Cut ${over} away below this part, or give the part a colour and a layer of its own.`,
    span: shape.element.nameSpan,
    ...inLayer(sheet),
    ...placeIn(region),
    related: others.slice(0, LISTED).map((other) => ({
      message: `${covered} is covered by ${other.over} here as well`,
      span: other.shape.element.nameSpan,
      ...placeIn(other.region),
    })),
  };
}

function placeIn(region: Region): { at?: Point } {
  const [largest] = [...region].sort((a, b) => areaOf(b) - areaOf(a));
  return largest ? { at: pointInside(largest.outer, largest.holes) } : {};
}
