/** Stacks of coloured fields as SVG text, each layer a group. Millimetres. */
import fc from 'fast-check';

export const PAINTS = ['#cc3322', '#2255cc', '#22aa55', '#ddbb22', '#883399', '#111111'];

export const WIDTH = 28;
export const HEIGHT = 24;
const CELL = 4;
const [COLUMNS, ROWS] = [WIDTH / CELL, HEIGHT / CELL];

export interface MadeLayer {
  readonly paint: string;
  /** Path data */
  readonly d: string;
}

/** @param order which layers, first sprayed first */
export function svgOf(layers: readonly MadeLayer[], order: readonly number[] = layers.map((_, i) => i)): string {
  const groups = order.map((index) => {
    const { paint, d } = layers[index] as MadeLayer;
    return `<g id="layer-${index}" fill="${paint}"><path shape-rendering="crispEdges" d="${d}"/></g>`;
  });
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" width="${WIDTH}mm" height="${HEIGHT}mm" viewBox="0 0 ${WIDTH} ${HEIGHT}">` +
    `${groups.join('\n')}</svg>`
  );
}

const box = (x: number, y: number, width: number, height: number) => `M${x} ${y}h${width}v${height}h${-width}z`;

/** The cells of a label, each grown to all sides. */
function cells(labels: readonly number[], label: number, grown: number): string {
  return labels
    .map((each, i) => {
      const [x, y] = [(i % COLUMNS) * CELL, Math.floor(i / COLUMNS) * CELL];
      return each === label ? box(x - grown, y - grown, CELL + 2 * grown, CELL + 2 * grown) : '';
    })
    .join('');
}

/**
 * A picture of square fields, taken apart by colour: nothing overlaps but where a colour was extended; and some boxes that
 * lie on it as they were drawn.
 */
export const madeStack: fc.Arbitrary<MadeLayer[]> = fc.integer({ min: 2, max: 6 }).chain((count) => {
  const one = fc.integer({ min: 0, max: count - 1 });
  const patch = fc.record({
    layer: one,
    x: fc.integer({ min: 1, max: 20 }),
    y: fc.integer({ min: 1, max: 16 }),
    width: fc.constantFrom(0.4, 1, 3, 6),
    height: fc.constantFrom(0.4, 1, 5),
  });
  return fc
    .record({
      labels: fc.array(fc.integer({ min: -1, max: count - 1 }), {
        minLength: COLUMNS * ROWS,
        maxLength: COLUMNS * ROWS,
      }),
      // Fields of one colour that hang together make the islands; late in the order they are not covered.
      main: fc.oneof(one, fc.constant(count - 1)),
      many: fc.boolean(),
      grown: fc.array(fc.constantFrom(0, 0, 0, 0.3, 0.7), { minLength: count, maxLength: count }),
      patches: fc.array(patch, { maxLength: 2 }),
      paints: fc.shuffledSubarray(PAINTS, { minLength: count, maxLength: count }),
    })
    .map(({ labels, main, many, grown, patches, paints }) => {
      const drawn = labels.map((label, i) =>
        many && ((i % COLUMNS) * Math.floor(i / COLUMNS)) % 2 === 0 ? main : label,
      );
      return paints.map((paint, layer) => ({
        paint,
        d:
          cells(drawn, layer, grown[layer] as number) +
          patches
            .filter((each) => each.layer === layer)
            .map(({ x, y, width, height }) => box(x, y, width, height))
            .join(''),
      }));
    })
    .filter((layers) => layers.every(({ d }) => d !== ''));
});
