/** What the reader says of things that cannot be cut: what, why in card and paint, and what to do. */

/** Elements that are drawn but leave nothing to cut. */
export const NOT_CUTTABLE_ELEMENTS: Readonly<Record<string, string>> = {
  text:
    'Text is not cut as drawn: letters come from whichever font a machine has, so none of it is on the sheet. ' +
    'Convert it to outlines (paths), and give its inner shapes bridges.',
  image: 'A raster image has no edges to cut, so nothing of it is on the sheet. Trace it to paths, or remove it.',
  foreignObject:
    'Foreign content has no outline to cut, so nothing of it is on the sheet. Draw it as paths, or ' + 'remove it.',
};

export const ENTITY_ELEMENTS =
  'This entity holds elements, which are not drawn, so they are not on the sheet. Write ' +
  'the elements out where the entity stands.';

export const GRADIENT =
  'A gradient cannot be sprayed through one opening: the whole shape is cut and painted in one ' +
  'flat colour. Give it a flat colour, or split it into layers.';

export const PATTERN =
  'A pattern is not cut: the whole shape is taken as one opening, without its motifs. Draw the ' + 'motifs as paths.';

export const FILTER =
  'A filter (blur, shadow, …) cannot be cut, as card has sharp edges only; the shape is cut as if ' +
  'it had none. Remove the filter, or draw what it shows.';

export const MASK =
  'A mask is not applied: partly covered paint cannot be cut, so the shape is cut whole. Use a ' +
  'clip-path, or draw what remains.';

export const BLEND_MODE =
  'Paint covers what lies under it and does not blend; the shape is cut and painted as if ' +
  'mix-blend-mode were normal. Draw the blended area as a layer of its own.';

export const CLIP_SHAPE =
  'A clip-path with a CSS shape is not applied: the shape is cut whole. Refer to a clipPath ' +
  'element with url(#…) instead.';

export function partialOpacity(opacity: number): string {
  return (
    `Paint is not see-through: an opening is there or not, and at opacity ${trimmed(opacity)} it is cut in full. ` +
    'Give the shape the colour that it looks like, or remove it.'
  );
}

export function missingReference(url: string): string {
  return `Nothing in this file has the id that “${url}” refers to. Correct the reference, or remove it.`;
}

export function externalReference(url: string): string {
  return `“${url}” lies outside this file and is not read, so nothing of it is on the sheet. Copy it into the file.`;
}

export function unsupportedProperty(property: string): string {
  return (
    `The CSS property ${property} is not followed, so a browser may draw this elsewhere or otherwise. Use the ` +
    'transform, clip-path or mask attribute instead.'
  );
}

function trimmed(value: number): string {
  return String(Math.round(value * 1000) / 1000);
}
