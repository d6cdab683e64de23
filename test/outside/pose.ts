/** Shapes in many notations, posed on a sheet in many ways that all come to the same drawing. */
import fc from 'fast-check';

/** All ways to write one outline, each an element (or several) in the form's own millimetres. */
export type Ways = readonly string[];

const n = (value: number) => String(Math.abs(value) < 1e-12 ? 0 : value);
const join = (...values: number[]) => values.map(n).join(' ');

export function circleWays(x: number, y: number, r: number): Ways {
  return [`<circle cx="${n(x)}" cy="${n(y)}" r="${n(r)}"/>`, ...ellipseWays(x, y, r, r)];
}

export function ellipseWays(x: number, y: number, rx: number, ry: number): Ways {
  const radii = join(rx, ry);
  const quarter = (dx: number, dy: number) => `a${radii} 0 0 1 ${join(dx, dy)}`;
  return [
    `<ellipse cx="${n(x)}" cy="${n(y)}" rx="${n(rx)}" ry="${n(ry)}"/>`,
    `<rect x="${n(x - rx)}" y="${n(y - ry)}" width="${n(2 * rx)}" height="${n(2 * ry)}" rx="${n(rx)}" ry="${n(ry)}"/>`,
    `<circle transform="translate(${join(x, y)}) scale(${radii})" r="1"/>`,
    `<path d="M${join(x + rx, y)}A${radii} 0 0 0 ${join(x - rx, y)}A${radii} 0 1 0 ${join(x + rx, y)}Z"/>`,
    `<path d="M${join(x, y - ry)}${quarter(rx, ry)}${quarter(-rx, ry)}${quarter(-rx, -ry)}${quarter(rx, -ry)}"/>`,
  ];
}

export function rectWays(x: number, y: number, width: number, height: number): Ways {
  const corners = [x, y, x + width, y, x + width, y + height, x, y + height];
  return [
    `<rect x="${n(x)}" y="${n(y)}" width="${n(width)}" height="${n(height)}"/>`,
    `<path d="M${join(x, y)}H${n(x + width)}V${n(y + height)}H${n(x)}Z"/>`,
    `<path d="m${join(x, y)}h${n(width)}v${n(height)}h${n(-width)}z"/>`,
    ...polygonWays(corners),
  ];
}

/** Straight sides may be written as curves as well. */
export function polygonWays(points: readonly number[]): Ways {
  const corners = Array.from({ length: points.length / 2 }, (_, i) => [points[2 * i]!, points[2 * i + 1]!] as const);
  const rest = corners.slice(1);
  const from = (i: number) => corners[i]!;
  const [startX, startY] = from(0);
  const relative = rest.map(([x, y], i) => `l${join(x - from(i)[0], y - from(i)[1])}`).join('');
  const curved = rest
    .map(([x, y], i) => {
      const [fromX, fromY] = from(i);
      const at = (t: number) => join(fromX + t * (x - fromX), fromY + t * (y - fromY));
      return i % 2 === 0 ? `C${at(0.3)} ${at(0.6)} ${at(1)}` : `Q${at(0.5)} ${at(1)}`;
    })
    .join('');
  return [
    `<polygon points="${join(...points)}"/>`,
    `<path d="M${corners.map(([x, y]) => join(x, y)).join(' ')}Z"/>`,
    `<path d="m${join(startX, startY)}${relative}z"/>`,
    `<path d="M${join(startX, startY)}${curved}Z"/>`,
  ];
}

export interface Pose {
  /** Degrees. */
  readonly turn: number;
  readonly mirrored: boolean;
  /** mm from the sheet's centre. */
  readonly shift: readonly [number, number];
  readonly unit: Unit;
  /** mm of a user unit at the root. */
  readonly scale: number;
  readonly nesting: 'none' | 'groups' | 'use' | 'symbol' | 'svg';
  /** Picks notations. */
  readonly way: number;
}

/** CSS Values and Units 3, section 6.2: how many of each are a millimetre. */
const UNITS = { mm: 1, cm: 0.1, in: 1 / 25.4, pt: 72 / 25.4, pc: 6 / 25.4, Q: 4, px: 96 / 25.4 } as const;
type Unit = keyof typeof UNITS;

const shift = fc.double({ min: -15, max: 15, noNaN: true });

export const poses: fc.Arbitrary<Pose> = fc.record({
  turn: fc.double({ min: 0, max: 360, noNaN: true }),
  mirrored: fc.boolean(),
  shift: fc.tuple(shift, shift),
  unit: fc.constantFrom<Unit>('mm', 'cm', 'in', 'pt', 'pc', 'Q', 'px'),
  scale: fc.double({ min: 0.05, max: 20, noNaN: true }),
  nesting: fc.constantFrom<Pose['nesting']>('none', 'groups', 'use', 'symbol', 'svg'),
  way: fc.nat(59),
});

export const AS_IT_IS: Pose = {
  turn: 0,
  mirrored: false,
  shift: [0, 0],
  unit: 'mm',
  scale: 1,
  nesting: 'none',
  way: 0,
};

/** A square sheet of `side` mm, the shapes' origin at its centre before it is shifted. */
export function posed(shapes: readonly Ways[], pose: Pose, side: number, attributes = ''): string {
  const body = shapes.map((ways, i) => ways[(pose.way + i) % ways.length]).join('\n');
  const { turn, mirrored, scale, unit } = pose;
  const [x, y] = [side / 2 + pose.shift[0], side / 2 + pose.shift[1]];
  const [outer, inner] = [
    `scale(${n(1 / scale)})`,
    `translate(${join(x, y)}) rotate(${n(turn)}) scale(${mirrored ? -1 : 1} 1)`,
  ];
  const size = `${n(side * UNITS[unit])}${unit}`;
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" width="${size}" height="${size}" ` +
    `viewBox="0 0 ${join(side / scale, side / scale)}" ` +
    `data-tombolo-reading="openings" ${attributes}>${nested(body, outer, inner, pose.nesting, side)}</svg>`
  );
}

function nested(body: string, outer: string, inner: string, nesting: Pose['nesting'], side: number): string {
  switch (nesting) {
    case 'none':
      return `<g transform="${outer} ${inner}">${body}</g>`;
    case 'groups':
      return `<g transform="${outer}"><g transform="scale(2)"><g transform="scale(.5) ${inner}">${body}</g></g></g>`;
    case 'use':
      return `<defs><g id="a" transform="${inner}">${body}</g></defs><use href="#a" transform="${outer}"/>`;
    case 'symbol':
      return (
        `<symbol id="a" overflow="visible"><g transform="${inner}">${body}</g></symbol>` +
        `<g transform="${outer}"><use href="#a"/></g>`
      );
    case 'svg':
      return (
        `<g transform="${outer}">` +
        `<svg width="${n(side)}" height="${n(side)}" viewBox="0 0 ${join(side / 4, side / 4)}" ` +
        `overflow="visible"><g transform="scale(.25) ${inner}">${body}</g></svg></g>`
      );
  }
}
