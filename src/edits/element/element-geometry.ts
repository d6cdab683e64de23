/**
 * The path data that an element's geometry stands for, and how to write other path data in its place. Basic shapes
 * become `path` elements: name and geometry attributes change, everything else stays byte for byte.
 */
import type { Shape, Subpath } from '../../drawing/types';
import type { Curve, Matrix, Point } from '../../geometry/base/curve-types';
import { invert } from '../../geometry/base/matrix';
import { transformCurve } from '../../geometry/curve/index';
import { parsePathData } from '../../markup/path-data';
import { attributeOf, prefixOf } from '../../markup/query';
import type { Attribute, ElementNode, MarkupDocument } from '../../markup/tree';
import { applyEdits, type Span, type TextEdit } from '../../text/text';
import { formatNumber, type NumberStyle, type PathStyle, PLAIN_STYLE } from '../path/path-style';
import { type CommandEnd, CommandWriter } from '../path/path-writer';
import { radiiOf } from '../path/precision';
import { withBlankBefore, withDeclarations } from './element-text';
import { numbersOf } from './file-numbers';
import { declarationsFor, isTypeSelected } from './type-selectors';

export interface ElementGeometry {
  /** Path data in the element's own user units. */
  readonly data: string;
  /** How numbers are written in the file. */
  readonly numbers: NumberStyle;
  /** What to change in the document for edits of `data`, with a declaration more in its style; none for none. */
  editsFor(edits: readonly TextEdit[], declaration?: string): readonly TextEdit[];
}

/** The attributes that say where a basic shape is. */
const GEOMETRY: Readonly<Record<string, readonly string[]>> = {
  rect: ['x', 'y', 'width', 'height', 'rx', 'ry'],
  circle: ['cx', 'cy', 'r'],
  ellipse: ['cx', 'cy', 'rx', 'ry'],
  polygon: ['points'],
  polyline: ['points'],
  line: ['x1', 'y1', 'x2', 'y2'],
};

/**
 * @param outline the element's outline in sheet mm: a shape's subpaths, or the centreline of its stroke
 * @param decimals digits after the point that points of the element need
 * @returns a sentence where the geometry cannot be edited
 */
export function elementGeometry(
  document: MarkupDocument,
  { element, toMm }: Shape,
  outline: readonly Subpath[],
  decimals: number,
): ElementGeometry | string {
  const { text } = document;
  const numbers = numbersOf(document);
  if (element.localName === 'path') return pathGeometry(text, element, numbers);
  const names = GEOMETRY[element.localName];
  if (!names) return `A <${element.name}> cannot be cut; turn it into a path first.`;
  const styled = isTypeSelected(document, element.localName);
  if (!styled && isTypeSelected(document, 'path')) {
    return `A style rule for path would reach this <${element.name}> once it is cut; give shapes classes instead.`;
  }
  const rules = styled ? declarationsFor(document, element) : '';
  const data = element.localName.startsWith('poly')
    ? pointsAsPath(text, element)
    : outlineAsPath(outline, toMm, { ...PLAIN_STYLE, ...numbers, decimals }, element);
  if (data === undefined) return `The geometry of this <${element.name}> could not be read.`;
  return {
    data,
    numbers,
    editsFor: (edits, declaration) =>
      edits.length === 0
        ? []
        : [...replaceByPath(text, element, names, applyEdits(data, edits)), ...declaring(element, rules, declaration)],
  };
}

function declaring(element: ElementNode, ...declarations: (string | undefined)[]): TextEdit[] {
  const stated = declarations.filter((declaration) => declaration);
  return stated.length === 0 ? [] : [withDeclarations(element, stated.join(';'))];
}

function pathGeometry(text: string, element: ElementNode, numbers: NumberStyle): ElementGeometry | string {
  const attribute = attributeOf(element, 'd');
  if (!attribute) return 'This path has no d attribute to edit; its data come from a style sheet.';
  const raw = text.slice(attribute.valueSpan.from, attribute.valueSpan.to);
  const plain = !raw.includes('&');
  const data = plain ? raw : attribute.value;
  if (parsePathData(data).error) return 'This path has an error in its data; fix that first.';
  const offset = (index: number): number => (plain ? attribute.valueSpan.from + index : attribute.textOffset(index));
  return {
    data,
    numbers,
    editsFor: (edits, declaration) =>
      edits.length === 0
        ? []
        : [
            ...edits.map((edit) => ({
              span: { from: offset(edit.span.from), to: offset(edit.span.to) },
              text: edit.text,
            })),
            ...declaring(element, declaration),
          ],
  };
}

/** The list of points, as written, is a list of line commands. */
function pointsAsPath(text: string, element: ElementNode): string | undefined {
  const attribute = attributeOf(element, 'points');
  if (!attribute) return undefined;
  const raw = text.slice(attribute.valueSpan.from, attribute.valueSpan.to);
  const data = `M${(raw.includes('&') ? attribute.value : raw).trim()}`;
  const end = parsePathData(data).commands.at(-1)?.span.to;
  return end === undefined ? undefined : data.slice(0, end) + (element.localName === 'polygon' ? 'Z' : '');
}

function outlineAsPath(
  outline: readonly Subpath[],
  toMm: Matrix,
  style: PathStyle,
  element: ElementNode,
): string | undefined {
  const toUser = invert(toMm);
  if (!toUser || outline.length === 0) return undefined;
  const { decimals } = style;
  const writer = new CommandWriter({ data: '', commands: [], absolute: [], paths: [], style, decimals });
  for (const { curves, closed } of outline) {
    const own = curves.map((curve) => transformCurve(curve, toUser));
    const [first] = own;
    if (!first) continue;
    const target = (point: Point): CommandEnd => ({ point, decimals, exact: false });
    writer.command('M', [], target(first.start), false);
    own.forEach((curve, index) => {
      const closes = closed && index === own.length - 1 && curve.kind === 'line';
      if (!closes) writeCurve(writer, curve, target, style);
    });
    if (closed || element.localName !== 'line') writer.close('Z');
  }
  return writer.pieces.map((piece) => (piece.kind === 'new' ? piece.text : '')).join('');
}

/** Basic shapes have only lines and quarter arcs, whose ends say well enough where their centre is. */
function writeCurve(
  writer: CommandWriter,
  curve: Curve,
  target: (point: Point) => CommandEnd,
  { decimals, leadingZero }: PathStyle,
): void {
  if (curve.kind !== 'arc') return writer.line(target(curve.end), false);
  const { x, y, turn } = radiiOf(curve);
  const shape = [x, y, turn].map((value) => formatNumber(value, decimals + 1, leadingZero));
  writer.command('A', [...shape, '0', curve.sweep > 0 ? '1' : '0'], target(curve.end), false);
}

function replaceByPath(text: string, element: ElementNode, names: readonly string[], data: string): TextEdit[] {
  const prefix = prefixOf(element);
  const edits: TextEdit[] = [{ span: element.nameSpan, text: `${prefix}path` }];
  const given = element.attributes.filter((attribute) => names.includes(attribute.name));
  const [first, ...others] = given;
  if (first) edits.push({ span: first.span, text: `d=${quoteOf(text, first)}${data}${quoteOf(text, first)}` });
  else edits.push({ span: { from: element.nameSpan.to, to: element.nameSpan.to }, text: ` d="${data}"` });
  for (const attribute of others) edits.push({ span: withBlankBefore(text, attribute.span), text: '' });
  if (element.endTag) edits.push({ span: endName(text, element.endTag, element.name), text: `${prefix}path` });
  return edits;
}

function quoteOf(text: string, attribute: Attribute): string {
  return text[attribute.valueSpan.from - 1] === "'" ? "'" : '"';
}

function endName(text: string, endTag: Span, name: string): Span {
  const from = text.indexOf(name, endTag.from);
  return { from, to: from + name.length };
}
