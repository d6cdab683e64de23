/** Bridges where only cut lines are drawn: the lines of both sides are opened and joined along the bridge. */
import type { Drawing, Shape, Subpath } from '../../drawing/types';
import type { Curve, Matrix } from '../../geometry/base/curve-types';
import { invert, maxScale } from '../../geometry/base/matrix';
import { transformCurve } from '../../geometry/curve/index';
import type { ElementNode } from '../../markup/tree';
import { isSheetEdge } from '../../sheet/layer/outlines';
import type { TextEdit } from '../../text/text';
import { elementGeometry } from '../element/element-geometry';
import { type EditResult, mergeResults } from '../element/result';
import { inlineThenEdit } from '../element/two-step';
import { removeElement } from '../outline/remove-outline';
import { splitSubpaths } from '../path/clip-subpaths';
import { decimalsFor } from '../path/precision';
import { cutPathData } from '../path/subtract-strips';
import { type Strip, transformStrip } from '../strip/strip';

/** Elements that strips connect, with these strips. */
interface Group {
  readonly shapes: readonly Shape[];
  readonly strips: readonly Strip[];
}

/** @param strips in sheet mm */
export function cutOutlines(
  drawing: Drawing,
  shapes: readonly Shape[],
  strips: readonly Strip[],
  depth = 0,
): EditResult {
  const uses = crossedUses(drawing, shapes, strips);
  if (uses.size > 0) {
    return inlineThenEdit(drawing, shapes, uses, depth, (...again) =>
      cutOutlines(again[0], again[1], strips, again[2]),
    );
  }
  const lines = shapes.filter(({ part, centreline }) => part === 'stroke' && centreline !== undefined);
  const frame = { minX: 0, minY: 0, maxX: drawing.width, maxY: drawing.height };
  const all = lines.flatMap(({ centreline = [] }) => centreline).filter((outline) => !isSheetEdge(outline, frame));
  return mergeResults(groupsOf(lines, strips).map((group) => cutGroup(drawing, group, all)));
}

/** The uses that draw crossed lines, or draw once more what is crossed where it stands itself. */
function crossedUses(drawing: Drawing, shapes: readonly Shape[], strips: readonly Strip[]): Set<ElementNode> {
  const crossed = shapes.filter((shape) => strips.some((strip) => crosses(shape, strip)));
  const drawn = crossed.flatMap((shape) =>
    shape.instances.length > 0 ? [shape] : drawing.shapes.filter(({ element }) => element === shape.element),
  );
  return new Set(drawn.flatMap(({ instances: [outermost] }) => outermost ?? []));
}

function groupsOf(lines: readonly Shape[], strips: readonly Strip[]): Group[] {
  const groups: Group[] = [];
  for (const strip of strips) {
    const crossed = lines.filter((shape) => crosses(shape, strip));
    if (crossed.length === 0) continue;
    const shared = groups.filter((group) => group.shapes.some((shape) => crossed.includes(shape)));
    for (const group of shared) groups.splice(groups.indexOf(group), 1);
    const members = new Set([...shared.flatMap((group) => group.shapes), ...crossed]);
    groups.push({
      shapes: lines.filter((shape) => members.has(shape)),
      strips: [...shared.flatMap((group) => group.strips), strip],
    });
  }
  return groups;
}

function crosses({ centreline = [] }: Shape, strip: Strip): boolean {
  return splitSubpaths(centreline.map(closedCurves), [strip]).untouched.length < centreline.length;
}

/** The first element in the text takes up the outlines of the others. */
function cutGroup(drawing: Drawing, { shapes, strips }: Group, all: readonly Subpath[]): EditResult {
  const [first, ...others] = shapes as [Shape, ...Shape[]];
  if (shapes.some(({ element }) => drawing.shapes.filter((shape) => shape.element === element).length > 1)) {
    return { refusal: 'A line that the bridge crosses is painted more than once.' };
  }
  const toUser = invert(first.toMm);
  if (!toUser) return { refusal: 'This shape is flattened to nothing by its transform.' };
  const decimals = decimalsFor(maxScale(first.toMm));
  const geometry = elementGeometry(drawing.document, first, first.centreline ?? [], decimals);
  if (typeof geometry === 'string') return { refusal: geometry };
  const edits = cutPathData(geometry.data, {
    strips: strips.map((strip) => transformStrip(strip, toUser)),
    fillRule: 'evenodd',
    decimals,
    numbers: geometry.numbers,
    joined: others.flatMap(({ centreline = [] }) => centreline.map((line) => toUserUnits(line, toUser))),
    filling: all.map((line) => toUserUnits(line, toUser)),
    rounding: { toMm: first.toMm, fillets: strips.flatMap(({ fillets = [] }) => fillets) },
  });
  if (!edits) return { refusal: `A line of this <${first.element.name}> runs along the bridge's edge.` };
  const removals: TextEdit[] = others.flatMap(({ element }) => removeElement(drawing, element));
  return { edits: [...geometry.editsFor(edits), ...removals] };
}

function toUserUnits(line: Subpath, toUser: Matrix): Curve[] {
  return closedCurves(line).map((curve) => transformCurve(curve, toUser));
}

function closedCurves({ curves }: Subpath): readonly Curve[] {
  const [start, end] = [curves[0]?.start, curves.at(-1)?.end];
  if (!start || !end || (start.x === end.x && start.y === end.y)) return curves;
  return [...curves, { kind: 'line', start: end, end: start }];
}
