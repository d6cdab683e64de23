/** Bridges where what is filled is the material: a strip more, beside the shape that it belongs to. */
import { defined } from '../../base/defined';
import type { Drawing, Shape } from '../../drawing/types';
import type { Curve } from '../../geometry/base/curve-types';
import { invert, maxScale } from '../../geometry/base/matrix';
import type { Region } from '../../geometry/base/polygon-types';
import { interpolate } from '../../geometry/base/vector';
import { regionContains } from '../../geometry/boolean/index';
import { transformCurve } from '../../geometry/curve/index';
import { prefixOf } from '../../markup/query';
import type { Attribute, MarkupDocument } from '../../markup/tree';
import { shapeRegion } from '../../sheet/layer/shape-region';
import type { TextEdit } from '../../text/text';
import { indentBefore } from '../element/element-text';
import { numbersOf } from '../element/file-numbers';
import type { EditResult } from '../element/result';
import { inlineThenEdit } from '../element/two-step';
import { type PathStyle, PLAIN_STYLE } from '../path/path-style';
import { decimalsFor } from '../path/precision';
import type { LoopItem } from '../path/reconnect';
import { writeLoops } from '../path/write-loops';
import { outlineOf } from '../roots/outline';
import type { Strip } from '../strip/strip';

/** What the strip takes over from its neighbour: how it looks and where it stands, but no name and no geometry. */
const TAKEN_OVER = ['class', 'style', 'fill', 'fill-opacity', 'opacity', 'transform'];

/** @param strips in sheet mm; each reaches into the material at both ends */
export function addStrips(drawing: Drawing, shapes: readonly Shape[], strips: readonly Strip[], depth = 0): EditResult {
  const fills = shapes.filter(({ part }) => part === 'fill').map((shape) => ({ shape, region: shapeRegion(shape) }));
  const [own, drawnByUse] = [true, false].map((direct) =>
    fills.filter(({ shape }) => (shape.instances.length === 0) === direct),
  );
  const beside = strips.map((strip) => ({ strip, neighbour: neighbourIn(own ?? [], strip) }));
  const lost = beside.filter(({ neighbour }) => !neighbour).map(({ strip }) => neighbourIn(drawnByUse ?? [], strip));
  const uses = new Set(lost.flatMap((shape) => shape?.instances[0] ?? []));
  if (uses.size > 0) {
    return inlineThenEdit(drawing, shapes, uses, depth, (...again) => addStrips(again[0], again[1], strips, again[2]));
  }
  const edits: TextEdit[] = [];
  for (const { strip, neighbour } of beside) {
    const edit = neighbour && parallelStrip(drawing.document, neighbour, strip);
    if (!edit) return { refusal: 'What the bridge would hang on is no filled shape; draw the bridge by hand.' };
    edits.push(edit);
  }
  return { edits: joinInserts(edits) };
}

/** The last painted of the shapes that one end of a strip lies in. */
function neighbourIn(
  fills: readonly { shape: Shape; region: Region }[],
  { corners: [a, b, c, d] }: Strip,
): Shape | undefined {
  const ends = [interpolate(a, d, 0.5), interpolate(b, c, 0.5)];
  return fills.findLast(({ region }) => ends.some((end) => regionContains(region, end)))?.shape;
}

function parallelStrip(document: MarkupDocument, { element, toMm }: Shape, strip: Strip): TextEdit | undefined {
  const { text } = document;
  const toUser = invert(toMm);
  if (!toUser) return undefined;
  const decimals = decimalsFor(maxScale(toMm));
  const style = { ...PLAIN_STYLE, ...numbersOf(document), decimals };
  const data = outlineData(
    outlineOf(strip).map((curve) => transformCurve(curve, toUser)),
    style,
  );
  const kept = element.attributes.filter((attribute) => TAKEN_OVER.includes(attribute.name));
  const prefix = prefixOf(element);
  const attributes = kept.map((attribute) => ` ${attributeSource(text, attribute)}`).join('');
  const { from, to } = element.span;
  return { span: { from: to, to }, text: `${indentBefore(text, from)}<${prefix}path${attributes} d="${data}"/>` };
}

function attributeSource(text: string, { span }: Attribute): string {
  return text.slice(span.from, span.to);
}

function outlineData(curves: readonly Curve[], style: PathStyle): string {
  const { decimals } = style;
  const source = { data: '', commands: [], absolute: [], paths: [], style, decimals };
  const items = curves.map(
    (curve): LoopItem => (curve.kind === 'line' ? { kind: 'line', to: curve.end } : { kind: 'curve', curve }),
  );
  const start = defined(curves[0]).start;
  const pieces = writeLoops(source, [{ start, items, home: undefined }]);
  return pieces.map((piece) => (piece.kind === 'new' ? piece.text : '')).join('');
}

/** Several insertions at one place are one: two edits may not begin at one place. */
export function joinInserts(edits: readonly TextEdit[]): TextEdit[] {
  const places = new Map<number, string>();
  for (const { span, text } of edits) places.set(span.from, (places.get(span.from) ?? '') + text);
  return [...places].map(([from, text]) => ({ span: { from, to: from }, text }));
}
