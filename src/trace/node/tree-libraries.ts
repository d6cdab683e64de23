/** Libraries that build trees: whoever makes an element is remembered on it. */

/** A method of a class, at the beginning of a line. */
const MAKES_ELEMENT = /^([ \t]+)(createElement(?:NS)?)(\s*\()([^()]*)(\)\s*\{)/gm;

/** The program's own name of what remembers. */
export const REMEMBER = '__tomboloRemember';

/**
 * Wraps the methods that make elements in the text of a module, in their lines. Libraries that bring a document, as
 * linkedom, jsdom and svgdom, name them as the DOM does; those that draw on one, as svg.js and d3, call them.
 */
export function wrapMakers(source: string): string {
  if (!source.includes('createElementNS')) return source;
  return source.replace(
    MAKES_ELEMENT,
    (_all, indent: string, name: string, open: string, names: string, close: string) => {
      const inner = `__tombolo_${name}`;
      const call = `globalThis.${REMEMBER}(this.${inner}(...all))`;
      return `${indent}${name}(...all) { return ${call}; } ${inner}${open}${names}${close}`;
    },
  );
}

interface Marked {
  setAttribute?(name: string, value: string): void;
}

/** @param places who called, as marks have it; nothing where it was no code of the user's */
export function remember<Made>(element: Made, attribute: string, places: string): Made {
  if (places !== '') (element as Marked | undefined)?.setAttribute?.(attribute, places);
  return element;
}
