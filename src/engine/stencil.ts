/** What a drawing says of itself in its root. */
import { parseRootTag } from '../markup/parse';
import { PICTURE_MARK } from '../picture/scene-svg';

/** Whether the text itself asks to be checked: its root carries a `data-tombolo-*` attribute. */
export function isStencil(text: string): boolean {
  const names = ownAttributes(text);
  return names.length > 0 && !names.includes(PICTURE_MARK);
}

/** Whether a text is a picture that was drawn of a stencil: in a stencil's folder it is none itself. */
export function isPicture(text: string): boolean {
  return ownAttributes(text).includes(PICTURE_MARK);
}

function ownAttributes(text: string): string[] {
  const names = parseRootTag(text)?.attributes.map(({ name }) => name) ?? [];
  return names.filter((name) => name.startsWith('data-tombolo-'));
}
