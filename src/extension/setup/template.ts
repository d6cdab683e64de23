/** The drawing that a new stencil begins with: a waymarker for a marsh trail, at true size. */

interface TemplateLayer {
  readonly title: string;
  readonly paint: string;
  /** In a square of 100 × 100. */
  readonly shapes: readonly Shape[];
}

type Shape =
  | { readonly kind: 'circle'; readonly at: readonly [number, number]; readonly radius: number }
  /** With round corners. */
  | { readonly kind: 'bar'; readonly at: readonly [number, number]; readonly size: readonly [number, number] };

/** The first painted first. No two touch, and nothing in them is finer than a twentieth of the square. */
const LAYERS: readonly TemplateLayer[] = [
  {
    title: 'Reeds',
    paint: '#5a7d4f',
    shapes: [
      { kind: 'bar', at: [10, 30], size: [5, 62] },
      { kind: 'bar', at: [22, 18], size: [5, 74] },
      { kind: 'bar', at: [34, 40], size: [5, 52] },
    ],
  },
  { title: 'Sun', paint: '#e2b04a', shapes: [{ kind: 'circle', at: [62, 24], radius: 14 }] },
  {
    title: 'Otter',
    paint: '#6b4a3a',
    shapes: [
      { kind: 'circle', at: [62, 70], radius: 14 },
      { kind: 'circle', at: [51, 58], radius: 5 },
      { kind: 'circle', at: [73, 58], radius: 5 },
    ],
  },
  { title: 'Numeral', paint: '#b4472c', shapes: [{ kind: 'bar', at: [88, 56], size: [6, 30] }] },
];

export const MOST_LAYERS = LAYERS.length;

/**
 * @param sides of the artwork, in mm: a user unit is a millimetre
 * @param count of layers, at most `MOST_LAYERS`
 */
export function stencilTemplate([width, height]: readonly [number, number], count: number): string {
  const side = Math.min(width, height);
  const place: Place = { scale: side / 100, x: (width - side) / 2, y: (height - side) / 2 };
  const layers = LAYERS.slice(0, count).map((layer) => layerText(layer, place));
  const [w, h] = [round(width), round(height)];
  return `<svg xmlns="http://www.w3.org/2000/svg" data-tombolo-reading="openings"
     width="${w}mm" height="${h}mm" viewBox="0 0 ${w} ${h}">
  <!-- Each group is one colour and one sheet; the first is sprayed first. Filled areas are cut out. 1 unit is 1 mm. -->
${layers.join('\n')}
</svg>
`;
}

interface Place {
  readonly scale: number;
  readonly x: number;
  readonly y: number;
}

function layerText({ title, paint, shapes }: TemplateLayer, place: Place): string {
  const lines = shapes.map((shape) => `    ${shapeText(shape, place)}`);
  return `  <g id="${title.toLowerCase()}" fill="${paint}">
    <title>${title}</title>
${lines.join('\n')}
  </g>`;
}

function shapeText(shape: Shape, { scale, x, y }: Place): string {
  const [left, top] = [round(x + shape.at[0] * scale), round(y + shape.at[1] * scale)];
  if (shape.kind === 'circle') return `<circle cx="${left}" cy="${top}" r="${round(shape.radius * scale)}"/>`;
  const [width, height] = [round(shape.size[0] * scale), round(shape.size[1] * scale)];
  return `<rect x="${left}" y="${top}" width="${width}" height="${height}" rx="${round(Math.min(width, height) / 2)}"/>`;
}

const round = (millimetres: number): number => Math.round(millimetres * 100) / 100;
