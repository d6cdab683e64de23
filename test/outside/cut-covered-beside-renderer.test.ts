/**
 * Random stacks with islands that are cut away since later layers paint over them: an independent renderer
 * (@resvg/resvg-js) draws the print before and after. Nothing may change but within the slip of the later paint.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { candidatesFor, check, proveFix } from '../../src/engine/index';
import { isRefusal } from '../../src/report/refusal';
import { applyEdits } from '../../src/text/text';
import { type Picture, renderText } from './paint';

/** mm */
const SIDE = 60;
const SLIP = 0.5;
const PIXELS_PER_MM = 12;

const wobbles = fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 5, maxLength: 9 });

/** A crooked blob, and how far it lies beyond its mean radius in each of its corners. */
function blob(x: number, y: number, radius: number, turns: readonly number[]): string {
  const corners = turns.map((turn, i) => {
    const [angle, r] = [(2 * Math.PI * i) / turns.length, radius * (1 + 0.25 * turn)];
    return `${(x + r * Math.cos(angle)).toFixed(3)} ${(y + r * Math.sin(angle)).toFixed(3)}`;
  });
  return `M${corners.join('L')}Z`;
}

/** A ring round an island, with what a later layer paints there: more than the island, less, or beside it. */
const ring = fc.record({
  turns: wobbles,
  size: fc.double({ min: 2, max: 5, noNaN: true }),
  more: fc.constantFrom(-1.2, -0.3, 0, 0.4, 1, 1),
  aside: fc.constantFrom(0, 0, 0, 0.3, 3),
  layer: fc.constantFrom(0, 2, 2, 2),
  drawn: fc.constantFrom('one path', 'halves'),
});

type Ring = typeof ring extends fc.Arbitrary<infer Value> ? Value : never;

const PLACES = [15, 45].flatMap((y) => [15, 45].map((x) => [x, y] as const));

/** Three layers; the rings lie in the second, what may cover them in the third or, in vain, in the first. */
function stackOf(rings: readonly Ring[]): string {
  const layers: string[][] = [[], [], []];
  rings.forEach(({ turns, size, more, aside, layer, drawn }, i) => {
    const [x, y] = PLACES[i] ?? [0, 0];
    const inner = blob(x, y, size, turns);
    const box = (from: number, to: number) => `M${from} ${y - 9}H${to}V${y + 9}H${from}Z`;
    // Two halves together make the same ring: no outline of the drawing is the island's own.
    const parts = drawn === 'one path' ? [`${box(x - 9, x + 9)}${inner}`] : halves(x, y, inner);
    layers[1]?.push(...parts.map((d) => `<path fill-rule="evenodd" d="${d}"/>`));
    layers[layer]?.push(`<path d="${blob(x + aside, y, size + more, turns)}"/>`);
  });
  const [under, water, heron] = layers.map((shapes) => shapes.join(''));
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" width="${SIDE}mm" height="${SIDE}mm" viewBox="0 0 ${SIDE} ${SIDE}" ` +
    `shape-rendering="crispEdges"><g id="Under" fill="#3b4a54">${under}<path d="M1 1h2v2h-2z"/></g>` +
    `<g id="Water" fill="#8fd3ff">${water}</g><g id="Heron" fill="#e8a33d">${heron}<path d="M57 1h2v2h-2z"/></g></svg>`
  );
}

/** The ring as two U, drawn by what lies above the island's middle and below it. */
function halves(x: number, y: number, inner: string): string[] {
  const points = [...inner.matchAll(/(-?[\d.]+) (-?[\d.]+)/g)].map(([, px, py]) => [Number(px), Number(py)] as const);
  const above = points.filter(([, py]) => py < y).sort(([a], [b]) => a - b);
  const below = points.filter(([, py]) => py >= y).sort(([a], [b]) => a - b);
  const half = (course: readonly (readonly [number, number])[], edge: number) =>
    `M${x - 9} ${y}V${edge}H${x + 9}V${y}H${x + 7}L${[...course]
      .reverse()
      .map(([px, py]) => `${px} ${py}`)
      .join('L')}L${x - 7} ${y}Z`;
  return [half(above, y - 9), half(below, y + 9)];
}

const at = ({ pixels }: Picture, i: number) => pixels.subarray(4 * i, 4 * i + 4).join();

/** Whether a later layer paints somewhere within so many pixels. */
function isNearPaint({ width, height, pixels }: Picture, i: number, reach: number): boolean {
  const [x, y] = [i % width, Math.floor(i / width)];
  for (let dy = -Math.ceil(reach); dy <= reach; dy += 1) {
    for (let dx = -Math.ceil(reach); dx <= reach; dx += 1) {
      const [px, py] = [x + dx, y + dy];
      const isInside = px >= 0 && py >= 0 && px < width && py < height && dx * dx + dy * dy <= reach * reach;
      if (isInside && (pixels[4 * (py * width + px) + 3] ?? 0) > 0) return true;
    }
  }
  return false;
}

/** Pixels that changed farther than the slip from what later layers paint, one for rounding. */
function changedElsewhere(before: string, after: string): number {
  const [old, now] = [before, after].map((svg) => renderText(svg, SIDE * PIXELS_PER_MM)) as [Picture, Picture];
  const later = renderText(before.replace(/<g id="(Under|Water)".*?<\/g>/g, ''), SIDE * PIXELS_PER_MM);
  let count = 0;
  for (let i = 0; i < old.width * old.height; i += 1) {
    if (at(old, i) !== at(now, i) && !isNearPaint(later, i, SLIP * PIXELS_PER_MM + 1.5)) count += 1;
  }
  return count;
}

describe('islands that later layers cover, cut away in random stacks', () => {
  it('leave the print as it is, but for rims within the slip', async () => {
    const seen = { covered: 0, cut: 0, left: 0 };
    await fc.assert(
      fc.asyncProperty(fc.array(ring, { minLength: 2, maxLength: 4 }), async (rings) => {
        const text = stackOf(rings);
        const report = check(text);
        for (const finding of report.findings.filter(({ check: id }) => id === 'floating-island')) {
          const isCovered = finding.subject?.kind === 'island' && finding.subject.cover !== undefined;
          const wanted = candidatesFor(report, finding).find(({ kind }) => kind === 'cut-covered-island');
          const result = wanted && proveFix(report, wanted);
          const fix = result && !isRefusal(result) ? result : undefined;
          expect(wanted !== undefined).toBe(isCovered);
          if (isCovered) seen.covered += 1;
          else seen.left += 1;
          if (!fix) continue;
          seen.cut += 1;
          const changed = applyEdits(text, fix.edits);
          expect(changedElsewhere(text, changed)).toBe(0);
          const islands = (svg: string) =>
            check(svg).findings.filter(({ check: id }) => id === 'floating-island').length;
          expect(islands(changed)).toBe(islands(text) - 1);
        }
        // The renderer's memory is freed only when the event loop turns.
        await new Promise((done) => setImmediate(done));
      }),
      { numRuns: 20 },
    );
    // All sorts came up, and nearly all that is covered can be cut away.
    expect(seen.left).toBeGreaterThan(3);
    expect(seen.cut).toBeGreaterThan(10);
    expect(seen.cut).toBeGreaterThan(0.9 * seen.covered);
  });
});
