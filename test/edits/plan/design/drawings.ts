/** Layers with islands, turned, mirrored, scaled and shifted. */
import { type Design, designOf } from '../../../../src/edits/plan/design/index';
import type { Point } from '../../../../src/geometry/base/curve-types';
import type { Sheet } from '../../../../src/sheet/types';
import { sheetsOf } from '../../bridging';

export interface Pose {
  /** Degrees, clockwise on the screen. */
  readonly turn?: number;
  readonly flip?: boolean;
  readonly scale?: number;
  readonly shift?: readonly [number, number];
}

/** mm */
const SIDE = 200;

/** A layer that is drawn within 120 mm, in the middle of a sheet that has room for it however it is turned. */
export function posed(inside: string, { turn = 0, flip = false, scale = 1, shift = [0, 0] }: Pose = {}): Sheet {
  const [x, y] = shift;
  const transform =
    `translate(${SIDE / 2 + x} ${SIDE / 2 + y}) rotate(${turn}) scale(${flip ? -scale : scale} ${scale}) ` +
    'translate(-60 -60)';
  const text =
    `<svg xmlns="http://www.w3.org/2000/svg" width="${SIDE}mm" height="${SIDE}mm" viewBox="0 0 ${SIDE} ${SIDE}" ` +
    `data-tombolo-reading="openings"><g transform="${transform}">${inside}</g></svg>`;
  return sheetsOf(text)[0] as Sheet;
}

/** Where a point of the drawing comes to lie on the sheet. */
export function placeOf({ x, y }: Point, { turn = 0, flip = false, scale = 1, shift = [0, 0] }: Pose = {}): Point {
  const [cos, sin] = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
  const [u, v] = [(flip ? -scale : scale) * (x - 60), scale * (y - 60)];
  return { x: SIDE / 2 + shift[0] + cos * u - sin * v, y: SIDE / 2 + shift[1] + sin * u + cos * v };
}

export function designed(inside: string, pose?: Pose): Design {
  return designOf(posed(inside, pose));
}

export const circle = (x: number, y: number, r: number) =>
  `M${x - r} ${y}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0z`;
export const box = (x: number, y: number, w: number, h: number) => `M${x} ${y}h${w}v${h}h${-w}z`;
export const path = (data: string) => `<path fill-rule="evenodd" d="${data}"/>`;

/** Every kind of move that may change nothing. */
export const POSES: readonly (readonly [string, Pose])[] = [
  ['as drawn', {}],
  ['turned by 30°', { turn: 30 }],
  ['turned by 211°', { turn: 211 }],
  ['turned over', { flip: true }],
  ['turned over and by 77°', { flip: true, turn: 77 }],
  ['smaller', { scale: 0.4 }],
  ['shifted', { shift: [7.3, -4.1] }],
];
