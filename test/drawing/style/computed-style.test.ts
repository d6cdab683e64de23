/** `inherit` (CSS Cascade 4, "Explicit Inheritance") is understood before a property's own reader sees it. */
import { describe, expect, it } from 'vitest';
import { type ComputedStyle, INITIAL_STYLE } from '../../../src/drawing/style/computed-style';
import type { PropertyName } from '../../../src/drawing/style/properties';
import { Styles } from '../../../src/drawing/style/styles';
import { parseMarkup } from '../../../src/markup/parse';
import { elementsWithin } from '../../../src/markup/query';

function computedValue({ inherited, own }: ComputedStyle, name: PropertyName): unknown {
  return { ...inherited, ...own }[name];
}

/** What the group and the shape in it have for a property. */
function values(name: PropertyName, group: string, shape: string): unknown[] {
  const { root } = parseMarkup(`<g ${group}><rect ${shape}/></g>`);
  const styles = new Styles([]);
  return [...elementsWithin(root!)].map((element) => computedValue(styles.computeInPlace(element), name));
}

describe('inherit takes the value of the parent, as an attribute and in style', () => {
  it.each([
    ['fill', 'red'],
    ['stroke', 'url(#a) blue'],
    ['fill-rule', 'evenodd'],
    ['clip-rule', 'evenodd'],
    ['stroke-width', '3mm'],
    ['stroke-dasharray', '1 2'],
    ['stroke-linecap', 'round'],
    ['stroke-linejoin', 'bevel'],
    ['stroke-miterlimit', '7'],
    ['fill-opacity', '.5'],
    ['visibility', 'hidden'],
    ['paint-order', 'stroke'],
    ['marker-end', 'url(#m)'],
    ['color', 'blue'],
    ['opacity', '.25'],
    ['display', 'none'],
    ['clip-path', 'url(#c)'],
    ['mask', 'url(#m)'],
    ['filter', 'blur(1px)'],
    ['mix-blend-mode', 'multiply'],
    ['vector-effect', 'non-scaling-stroke'],
    ['overflow', 'visible'],
    ['transform-box', 'fill-box'],
    ['transform-origin', '1px 2px'],
    ['stop-color', 'lime'],
    ['stop-opacity', '.5'],
  ] as const)('%s: %s', (name, value) => {
    for (const word of ['inherit', ' INHERIT ']) {
      for (const shape of [`${name}="${word}"`, `style="${name}:${word}"`]) {
        const [outer, inner] = values(name, `${name}="${value}"`, shape);
        expect(outer).not.toEqual(computedValue(INITIAL_STYLE, name));
        expect(inner).toEqual(outer);
      }
    }
  });

  it.each(['mask', 'filter', 'mix-blend-mode', 'vector-effect', 'display'] as const)(
    '%s: the initial value, where the parent states none',
    (name) => {
      const [outer, inner] = values(name, '', `${name}="inherit"`);
      expect(outer).toEqual(computedValue(INITIAL_STYLE, name));
      expect(inner).toEqual(outer);
    },
  );
});
