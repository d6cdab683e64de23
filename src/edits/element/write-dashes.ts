/** Writes the dashes of a line out as subpaths: then one can be parted, and the others stay where they are. */
import type { Dash, Shape, Subpath } from '../../drawing/types';
import type { Curve } from '../../geometry/base/curve-types';
import { maxScale } from '../../geometry/base/matrix';
import { add, scale } from '../../geometry/base/vector';
import { pointAt, tangentAt } from '../../geometry/curve/index';
import { attributeOf } from '../../markup/query';
import type { ElementNode, MarkupDocument } from '../../markup/tree';
import type { TextEdit } from '../../text/text';
import type { OrderedLoop } from '../path/loop-order';
import type { StepPath } from '../path/path-model';
import { pathSource, writeInstead } from '../path/path-source';
import { decimalsFor } from '../path/precision';
import type { LoopItem } from '../path/reconnect';
import { elementGeometry } from './element-geometry';
import { withBlankBefore } from './element-text';

/** A dot is written as a line of so many steps of its last digit, for which renderers draw its caps. */
const DOT_STEPS = 2;
/** Digits more where the caps of a dot show which way it points. */
const DIRECTION_DIGITS = 3;
const NOT_DASHED = 'stroke-dasharray:none';

/** Edits of the document after which the same is painted without a dash pattern; a sentence where that cannot be. */
export function writeDashes(document: MarkupDocument, stroke: Shape): readonly TextEdit[] | string {
  const { element, toMm, centreline = [], dashes, strokeCap } = stroke;
  if (!dashes) return 'There are too many dashes in a line that the bridge crosses; use longer dashes.';
  const least = decimalsFor(maxScale(toMm));
  const geometry = elementGeometry(document, stroke, centreline, least);
  if (typeof geometry === 'string') return geometry;
  const plain = pathSource(geometry.data, { decimals: least, numbers: geometry.numbers, lined: true }, false);
  if (!isDrawnBy(plain.paths, centreline)) return `The line of this <${element.name}> is not in its text.`;
  const seen = dashes.filter((dash) => strokeCap !== 'butt' || !isDot(dash));
  const pointed = strokeCap === 'square' && seen.some(isDot);
  const source = { ...plain, decimals: plain.decimals + (pointed ? DIRECTION_DIGITS : 0) };
  const dot = DOT_STEPS * 10 ** -plain.decimals;
  const edits = writeInstead(
    source,
    seen.flatMap((dash) => lineOf(dash, plain.paths, dot)),
  );
  return [
    ...geometry.editsFor(edits, isDashedByAttribute(document, element) ? undefined : NOT_DASHED),
    ...withoutPattern(document, element),
  ];
}

function isDrawnBy(paths: readonly StepPath[], centreline: readonly Subpath[]): boolean {
  return (
    paths.length === centreline.length &&
    paths.every(({ steps }, index) => steps.length === centreline[index]?.curves.length)
  );
}

function isDot({ stretches }: Dash): boolean {
  return stretches.every(({ from, to }) => from === to);
}

/** @param dot how long a dot is written, in user units */
function lineOf({ subpath, stretches }: Dash, paths: readonly StepPath[], dot: number): OrderedLoop[] {
  const [first] = stretches;
  const curve = first && paths[subpath]?.steps[first.curve]?.curve;
  if (!curve) return [];
  const items = stretches.map(
    ({ curve: step, from, to }): LoopItem =>
      from === to
        ? { kind: 'curve', curve: dotAt(curve, from, dot) }
        : { kind: 'stretch', stretch: { subpath, step, from, to } },
  );
  const home = first.curve === 0 && first.from === 0 ? subpath : undefined;
  return [{ start: pointAt(curve, first.from), items, home, open: true }];
}

function dotAt(curve: Curve, t: number, long: number): Curve {
  const start = pointAt(curve, t);
  return { kind: 'line', start, end: add(start, scale(tangentAt(curve, t), long)) };
}

/** Whether its own attribute gives the pattern, as no style in the file does. */
function isDashedByAttribute({ text }: MarkupDocument, element: ElementNode): boolean {
  return attributeOf(element, 'stroke-dasharray') !== undefined && !/stroke-dasharray\s*:/.test(text);
}

function withoutPattern({ text }: MarkupDocument, element: ElementNode): TextEdit[] {
  return element.attributes.flatMap(({ name, span, valueSpan }): TextEdit[] => {
    if (name === 'stroke-dasharray') return [{ span: valueSpan, text: 'none' }];
    return name === 'stroke-dashoffset' ? [{ span: withBlankBefore(text, span), text: '' }] : [];
  });
}
