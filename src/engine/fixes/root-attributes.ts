/** Edits of the attributes of the root element. */
import type { Drawing } from '../../drawing/types';
import { attributeOf } from '../../markup/query';
import type { ElementNode } from '../../markup/tree';
import type { TextEdit } from '../../text/text';

/** Gives attributes their values: where they stand already, else behind the element's name. */
export function attributeEdits(element: ElementNode, values: Readonly<Record<string, string>>): TextEdit[] {
  const edits: TextEdit[] = [];
  let added = '';
  for (const [name, value] of Object.entries(values)) {
    const existing = attributeOf(element, name);
    if (existing) edits.push({ span: existing.span, text: `${name}="${value}"` });
    else added += ` ${name}="${value}"`;
  }
  const { to } = element.nameSpan;
  return added === '' ? edits : [...edits, { span: { from: to, to }, text: added }];
}

/**
 * Edits that give the drawing a physical size. Where no viewBox ties the user units to it, one is added when the size
 * changes, so that the artwork follows.
 * @param scale how many times as large as it is read now
 */
export function sizeEdits({ document: { root }, width, height, toMm }: Drawing, scale: number): TextEdit[] {
  if (!root) return [];
  const size = { width: `${plain(width * scale)}mm`, height: `${plain(height * scale)}mm` };
  const own = ['data-tombolo-width', 'data-tombolo-height'].filter((name) => attributeOf(root, name));
  if (own.length > 0) {
    const values = own.map((name) => [name, name.endsWith('width') ? size.width : size.height]);
    return attributeEdits(root, Object.fromEntries(values));
  }
  const tied = scale === 1 || attributeOf(root, 'viewBox');
  const viewBox = `0 0 ${plain(width / toMm.a)} ${plain(height / toMm.d)}`;
  return attributeEdits(root, tied ? size : { ...size, viewBox });
}

/** To a tenth of a micrometre, without needless digits. */
function plain(value: number): string {
  return String(Number(value.toFixed(4)));
}
