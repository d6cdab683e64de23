/** Removes all outlines and lines that together form one opening, with what stands in it. */
import type { Shape } from '../../drawing/types';
import type { Polygon } from '../../geometry/base/polygon-types';
import { boxContainsBox, growBox, joinBoxes, ringsOf } from '../../geometry/base/ring';
import { NEAR_EDGE } from '../../geometry/base/tolerances';
import { boxOfPolygon } from '../../geometry/boolean/index';
import { boundsOf } from '../../geometry/curve/index';
import type { CutLine } from '../../sheet/cut-lines/index';
import { sourcesOf } from '../../sheet/source-index';
import type { Sheet } from '../../sheet/types';
import type { EditResult } from '../element/result';
import { removeLines } from './merge-outlines';

const ELSEWHERE = 'What makes this opening reaches beyond it; change the drawing by hand.';

/** A line of a shape goes with its whole element; of a fill, the outlines that lie within the opening go. */
export function removeMakers(sheet: Sheet, opening: Polygon): EditResult {
  const lines = makersOf(sheet, opening);
  return lines ? removeLines(sheet.drawing, lines) : { refusal: ELSEWHERE };
}

/**
 * All outlines and lines that draw the edges of an opening, or of a piece of material.
 * @returns undefined where one of them reaches beyond it
 */
export function makersOf(sheet: Sheet, place: Polygon): readonly CutLine[] | undefined {
  const room = growBox(boxOfPolygon(place), sheet.kerf / 2 + NEAR_EDGE);
  const sources = sourcesOf(sheet);
  const found = new Map<Shape, Set<number>>();
  for (const { shape, subpath } of ringsOf(place).flatMap((ring) => sources.along(ring))) {
    if (subpath === undefined) return undefined;
    const known = found.get(shape);
    if (known) known.add(subpath);
    else found.set(shape, new Set([subpath]));
  }
  const lines: CutLine[] = [];
  for (const [shape, subpaths] of found) {
    const chosen =
      shape.part === 'stroke' && sheet.layer.reading !== 'outlines'
        ? wholeLine(shape)
        : outlines(sheet, shape, subpaths);
    const curves = chosen.flatMap((line) => line.curves);
    if (curves.length === 0 || !boxContainsBox(room, joinBoxes(curves.map(boundsOf)))) return undefined;
    lines.push(...chosen);
  }
  return lines.length > 0 ? withoutTwins(lines) : undefined;
}

function wholeLine(shape: Shape): CutLine[] {
  return (shape.centreline ?? []).map(({ curves, spans }, subpath) => ({
    shape,
    subpath,
    curves,
    spans,
    closed: false,
  }));
}

function outlines({ layer: { reading } }: Sheet, shape: Shape, subpaths: ReadonlySet<number>): CutLine[] {
  const all = reading === 'outlines' ? (shape.centreline ?? []) : shape.subpaths;
  return [...subpaths].flatMap((subpath) => {
    const own = all[subpath];
    return own ? [{ shape, subpath, curves: own.curves, spans: own.spans, closed: true }] : [];
  });
}

/** Fill and line of one element are removed once. */
function withoutTwins(lines: readonly CutLine[]): CutLine[] {
  const kept = new Map<CutLine['shape']['element'], Shape>();
  for (const { shape } of lines) if (!kept.has(shape.element)) kept.set(shape.element, shape);
  return lines.filter(({ shape }) => kept.get(shape.element) === shape);
}
