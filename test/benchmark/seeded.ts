/** Seeded artwork for the benchmark: the same text on every run and machine. */

/** A small generator of uniform numbers in [0, 1): mulberry32, public domain. */
export function seededRandom(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t ^= t + Math.imul(t ^ (t >>> 7), 61 | t);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** How many flattened segments one of the blobs below gives, about; measured once at the engine's flatness. */
export const SEGMENTS_PER_BLOB = 167;

/**
 * A sheet of rounded blobs on a jittered grid, each a closed chain of eight cubics, gaps between 0.3 and 3 mm: about
 * `segments` flattened segments. The sheet grows with the number, its density stays.
 * @param counterEach one blob in so many has a counter
 */
export function blobSheet(segments: number, counterEach = 7, seed = 7): string {
  const random = seededRandom(seed);
  const blobs = Math.max(1, Math.round(segments / SEGMENTS_PER_BLOB));
  const columns = Math.ceil(Math.sqrt(blobs));
  const pitch = 6;
  const side = (columns + 1) * pitch;
  const paths: string[] = [];
  for (let i = 0; i < blobs; i += 1) {
    const x = ((i % columns) + 1 + (random() - 0.5) * 0.3) * pitch;
    const y = (Math.floor(i / columns) + 1 + (random() - 0.5) * 0.3) * pitch;
    const outer = blob(x, y, 1.4 + random() * 1.1, random);
    paths.push(`<path d="${outer}${i % counterEach === 0 ? blob(x, y, 0.6, random) : ''}"/>`);
  }
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" width="${side}mm" height="${side}mm" viewBox="0 0 ${side} ${side}" ` +
    `data-tombolo-reading="openings" fill-rule="evenodd">\n${paths.join('\n')}\n</svg>\n`
  );
}

/** A closed curve about (x, y), its radius wavering by a tenth. */
function blob(x: number, y: number, radius: number, random: () => number): string {
  const knots = 8;
  const points = Array.from({ length: knots }, (_, i) => {
    const angle = (2 * Math.PI * i) / knots;
    const r = radius * (0.9 + 0.2 * random());
    return { angle, r, x: x + r * Math.cos(angle), y: y + r * Math.sin(angle) };
  });
  const handle = (4 / 3) * Math.tan(Math.PI / (2 * knots));
  const number = (value: number) => value.toFixed(3);
  const [first] = points;
  const curves = points.map((from, i) => {
    const to = points[(i + 1) % knots] ?? from;
    const c1 = [from.x - handle * from.r * Math.sin(from.angle), from.y + handle * from.r * Math.cos(from.angle)];
    const c2 = [to.x + handle * to.r * Math.sin(to.angle), to.y - handle * to.r * Math.cos(to.angle)];
    return `C${[...c1, ...c2, to.x, to.y].map(number).join(' ')}`;
  });
  return `M${number(first?.x ?? x)} ${number(first?.y ?? y)}${curves.join('')}Z`;
}

/**
 * A sheet of shapes as traced from a picture: closed polygons of about `segments` edges in all, their corners 0.1 mm
 * from each other and up to 0.03 mm beside a wavy course, 2.5 to 5 mm from the shape's middle; one in so many has a
 * counter.
 */
export function tracedSheet(segments: number, counterEach = 7, seed = 3): string {
  const random = seededRandom(seed);
  const pitch = 11;
  const shapes = Math.max(1, Math.round(segments / 235));
  const columns = Math.ceil(Math.sqrt(shapes));
  const side = (columns + 1) * pitch;
  const paths = Array.from({ length: shapes }, (_, i) => {
    const x = ((i % columns) + 1 + (random() - 0.5) * 0.1) * pitch;
    const y = (Math.floor(i / columns) + 1 + (random() - 0.5) * 0.1) * pitch;
    const radius = 2.5 + random() * 2.5;
    const outline = traced(x, y, radius, random);
    const counter = i % counterEach === 0 ? traced(x, y, radius / 2, random) : '';
    return `<path d="${outline}${counter}"/>`;
  });
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" width="${side}mm" height="${side}mm" viewBox="0 0 ${side} ${side}" ` +
    `data-tombolo-reading="openings" fill-rule="evenodd">\n${paths.join('\n')}\n</svg>\n`
  );
}

/** A closed polygon about (x, y). */
function traced(x: number, y: number, radius: number, random: () => number): string {
  const waves = Array.from({ length: 9 }, (_, k) => ({
    often: k + 2,
    far: (0.35 * random()) / (k + 2),
    from: 6.3 * random(),
  }));
  const count = Math.round((2 * Math.PI * radius) / 0.1);
  const points = Array.from({ length: count }, (_, i) => {
    const angle = (2 * Math.PI * i) / count;
    const wavy = waves.reduce((sum, { often, far, from }) => sum + far * Math.cos(often * angle + from), 1);
    const r = radius * wavy + 0.06 * (random() - 0.5);
    return `${(x + r * Math.cos(angle)).toFixed(3)} ${(y + r * Math.sin(angle)).toFixed(3)}`;
  });
  return `M${points.join('L')}Z`;
}

/** The sheet with the last point of its middle path moved by `by` mm to the right. */
export function withMovedPoint(svg: string, by: number): string {
  const start = svg.indexOf('<path', svg.length / 2);
  const place = /([\d.]+) [\d.]+Z/g;
  place.lastIndex = start;
  const found = place.exec(svg);
  if (!found) return svg;
  const moved = (Number(found[1]) + by).toFixed(3);
  return svg.slice(0, found.index) + moved + svg.slice(found.index + (found[1] ?? '').length);
}
