/** The bridges of a plan on the picture: strips, rings that make small ones be found, and the islands that stay loose. */
import { formatSides } from '../../config/values';
import type { Matrix, Point } from '../../geometry/base/curve-types';
import { apply } from '../../geometry/base/matrix';
import type { BridgeShape } from '../canvas/bridge-handles';
import { makeMeasure, makeRing, SMALL, writeMeasure } from '../canvas/ghost-marks';
import { setAttributes, setText, svg, syncChildren } from '../dom/dom';
import { matrixText } from '../dom/matrix-text';
import { toWindow, type Viewport } from '../state/viewport';
import type { DrawnStrip } from './layer-plan-state';
import type { ToldIsland } from './left-islands';

export interface PlanDrawing {
  /** From the layer's own mm to those of the picture. */
  readonly place: Matrix;
  readonly strips: readonly DrawnStrip[];
  /** The one whose measure is written. */
  readonly active: BridgeShape | undefined;
  readonly left: readonly ToldIsland[];
}

/** Pixels from a strip to its measure; the radius of the letter of an island. */
const OFF = 26;
const LETTER = 10;

export class PlanOverlay {
  /** In mm of the picture. */
  readonly strips = svg('g', { class: 'ghost', 'aria-hidden': 'true' });
  /** In window pixels. */
  readonly marks = svg('g', { class: 'ghost-measures', 'aria-hidden': 'true' });
  private readonly islands = svg('g');
  private readonly bridges = svg('g');
  private readonly rings = svg('g');
  private readonly letters = svg('g');
  private readonly measure = makeMeasure();

  constructor() {
    this.strips.append(this.islands, this.bridges);
    this.marks.append(this.rings, this.letters, this.measure);
  }

  /** @param drawing undefined where there is nothing to show */
  draw(drawing: PlanDrawing | undefined, view: Viewport): void {
    const { place, strips = [], active, left = [] } = drawing ?? {};
    const inWindow = (point: Point): Point => toWindow(view, place ? apply(place, point) : point);
    const transform = place ? matrixText(place) : '';
    syncChildren(this.islands, left, makePath('ghost-left'), (path, { outline }) => {
      setAttributes(path, { d: outline, transform });
    });
    syncChildren(this.bridges, strips, makePath('ghost-strip'), (path, { outline, look }) => {
      setAttributes(path, { d: outline, transform, 'data-look': look });
    });
    const small = strips.filter(({ shape, look }) => look !== 'was' && shape.length * view.scale < SMALL);
    syncChildren(this.rings, small, makeRing, (ring, { shape, look }) => {
      const { x, y } = inWindow(shape.centre);
      setAttributes(ring, { transform: `translate(${x} ${y})`, 'data-look': look });
    });
    syncChildren(this.letters, left, makeLetter, (mark, { at, letter }) => drawLetter(mark, inWindow(at), letter));
    const centre = active && inWindow(active.centre);
    const high = active ? (Math.abs(active.along.y) * active.length * view.scale) / 2 : 0;
    const text = active ? formatSides(active.width, active.length, 2) : '';
    writeMeasure(this.measure, text, centre && { x: centre.x, y: centre.y - OFF - high });
  }
}

const makePath = (look: string) => () => svg('path', { class: look });

function makeLetter(): SVGGElement {
  return svg('g', { class: 'left-mark' }, [svg('circle', { r: LETTER }), svg('text')]);
}

function drawLetter(mark: SVGGElement, { x, y }: Point, letter: string): void {
  const [circle, text] = mark.children;
  if (circle) setAttributes(circle, { cx: x, cy: y });
  if (!text) return;
  setAttributes(text, { x, y });
  setText(text, letter);
}
