/** Edits that write the artwork's size into the root element, in the author's own layout and quotes. */

import { parseLength } from '../../config/values';
import type { Drawing } from '../../drawing/types';
import { DRAWN_ALIKE, OVERLAY_GRID } from '../../geometry/base/tolerances';
import { attributeOf } from '../../markup/query';
import type { Attribute, ElementNode } from '../../markup/tree';
import { MM_PER_PX, MM_PER_UNIT } from '../../text/css-units';
import type { TextEdit } from '../../text/text';

/** Units that other programs can be trusted to know on the root; lengths in others are written in mm. */
const COMMON_UNITS = ['mm', 'cm', 'in', 'pt', 'pc'];

/** mm: lengths are written to a tenth of a micrometre. */
const LENGTH_STEP = OVERLAY_GRID;

/** User units map to millimetres as without a viewBox where the two scales differ by less than this share. */
const SAME_SCALE = 1e-9;

/** mm: the file says another size where it differs by more. */
const SAME_SIZE = DRAWN_ALIKE / 2;

/**
 * Edits after which the root says that the artwork is `width` wide, and as high as its ratio asks. Where no viewBox ties
 * the user units to the size, one is added, so that the artwork follows. Attributes of ours that state a size say the
 * same afterwards.
 * @param width mm
 * @param unit of the lengths as they are written
 */
export function sizeEdits(drawing: Drawing, width: number, unit = 'mm'): TextEdit[] {
  const { root } = drawing.document;
  if (!root || !(drawing.width > 0) || !(width > 0)) return [];
  const scale = width / drawing.width;
  const [across, down] = [width, drawing.height * scale].map((length) => lengthText(length, unit)) as [string, string];
  const own = { 'data-tombolo-width': across, 'data-tombolo-height': down };
  const stated = Object.entries(own).filter(([name]) => attributeOf(root, name));
  const isTied = attributeOf(root, 'viewBox') || Math.abs((drawing.toMm.a * scale) / MM_PER_PX - 1) < SAME_SCALE;
  const viewBox = `0 0 ${plain(drawing.width / drawing.toMm.a)} ${plain(drawing.height / drawing.toMm.d)}`;
  const values = { width: across, height: down, ...(isTied ? {} : { viewBox }) };
  return attributeEdits(drawing.document.text, root, { ...values, ...Object.fromEntries(stated) });
}

/**
 * The same for a width as an artist writes it, in its unit.
 * @returns no edits where the file says so already; undefined where the text is no length above zero, or a style sets the size
 */
export function askedSizeEdits(drawing: Drawing, text: string): TextEdit[] | undefined {
  const width = parseLength(text);
  const { ownSize } = drawing;
  if (width === undefined || !(width > 0) || ownSize.byStyle) return undefined;
  if (ownSize.physical && Math.abs(ownSize.width - width) < SAME_SIZE && Math.abs(drawing.width - width) < SAME_SIZE) {
    return [];
  }
  return sizeEdits(drawing, width, unitOf(text));
}

/**
 * Gives attributes their values: between the quotes where they stand already. New ones come together, beside `width` or
 * `height`, else before the viewBox, else last, set apart as the attributes there are.
 */
export function attributeEdits(
  text: string,
  element: ElementNode,
  values: Readonly<Record<string, string>>,
): TextEdit[] {
  const edits: TextEdit[] = [];
  const added: [string, string][] = [];
  for (const [name, value] of Object.entries(values)) {
    const existing = attributeOf(element, name);
    if (existing) edits.push(valueEdit(text, existing, value));
    else added.push([name, value]);
  }
  const insertion = added.length > 0 ? insertionOf(text, element, added) : undefined;
  return insertion ? [...edits, insertion] : edits;
}

function valueEdit(text: string, attribute: Attribute, value: string): TextEdit {
  if (quoteOf(text, attribute)) return { span: attribute.valueSpan, text: value };
  return { span: attribute.span, text: `${attribute.name}="${value}"` };
}

function quoteOf(text: string, { valueSpan }: Attribute): string | undefined {
  const before = text[valueSpan.from - 1];
  return before === '"' || before === "'" ? before : undefined;
}

function insertionOf(text: string, element: ElementNode, added: readonly [string, string][]): TextEdit {
  const [width, height, viewBox] = ['width', 'height', 'viewBox'].map((name) => attributeOf(element, name));
  const before = width ? undefined : (height ?? viewBox);
  const after = width && (height ?? width);
  const beside = before ?? after ?? element.attributes.at(-1);
  if (!beside) {
    const { to } = element.nameSpan;
    return { span: { from: to, to }, text: added.map(([name, value]) => ` ${name}="${value}"`).join('') };
  }
  const quote = quoteOf(text, beside) ?? '"';
  const gap = gapBefore(text, beside);
  const parts = added.map(([name, value]) => `${name}=${quote}${value}${quote}`);
  const at = before ? before.span.from : beside.span.to;
  return {
    span: { from: at, to: at },
    text: before ? parts.map((part) => part + gap).join('') : parts.map((part) => gap + part).join(''),
  };
}

/** The blanks and line breaks that set an attribute apart from what stands before it. */
function gapBefore(text: string, { span, owner }: Attribute): string {
  const [blanks] = /\s*$/.exec(text.slice(owner.nameSpan.to, span.from)) ?? [];
  return blanks || ' ';
}

/** The unit of a length as it is written; mm where it has none. */
export function unitOf(text = ''): string {
  return /[a-z]+/i.exec(text.replace(/e[+-]?\d/i, ''))?.[0].toLowerCase() ?? 'mm';
}

/** A length in a unit that other programs can be trusted to know, else in mm. */
export function lengthText(mm: number, wished: string): string {
  const unit = COMMON_UNITS.includes(wished) ? wished : 'mm';
  const perUnit = MM_PER_UNIT[unit] as number;
  const decimals = Math.ceil(-Math.log10(LENGTH_STEP / perUnit) - 1e-9);
  return `${Number((mm / perUnit).toFixed(decimals))}${unit}`;
}

/** To a tenth of a thousandth of a user unit, without needless digits. */
function plain(value: number): string {
  return String(Number(value.toFixed(4)));
}
