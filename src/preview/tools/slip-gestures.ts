/** Shifts sheets by hand: a drag that begins on a layer's paint, and the keys of the picture. */
import type { Point } from '../../geometry/base/curve-types';
import type { Slip } from '../state/slip';

export interface SlipTarget {
  /** Whether drags and arrow keys shift sheets; a drag with Alt does it at any time where the print is shown. */
  slipping(): boolean;
  printed(): boolean;
  /** CSS pixels to the mm. */
  scale(): number;
  /** The slip of the layer that is held; first takes hold of that layer, where one is given. */
  hold(layer: number | undefined): Slip | undefined;
  slip(slip: Slip): void;
}

/** mm and degrees for one press of a key; with Shift ten times as much. */
const STEP = 0.05;

const steps: Readonly<Record<string, Slip>> = {
  ArrowLeft: { x: -STEP, y: 0, turn: 0 },
  ArrowRight: { x: STEP, y: 0, turn: 0 },
  ArrowUp: { x: 0, y: -STEP, turn: 0 },
  ArrowDown: { x: 0, y: STEP, turn: 0 },
  ',': { x: 0, y: 0, turn: -STEP },
  '.': { x: 0, y: 0, turn: STEP },
  '<': { x: 0, y: 0, turn: -STEP },
  '>': { x: 0, y: 0, turn: STEP },
};

/** Listens before the gestures that move the view, and keeps from them what it takes. */
export function followSlips(canvas: SVGSVGElement, target: SlipTarget): void {
  canvas.addEventListener(
    'keydown',
    (event) => {
      const step = steps[event.key];
      if (!step || !target.slipping() || event.ctrlKey || event.metaKey || event.altKey) return;
      event.preventDefault();
      event.stopImmediatePropagation();
      const slip = target.hold(undefined);
      const times = event.shiftKey ? 10 : 1;
      if (!slip) return;
      const [x, y, turn] = [slip.x + times * step.x, slip.y + times * step.y, slip.turn + times * step.turn];
      target.slip({ x, y, turn });
    },
    { capture: true },
  );
  followDrag(canvas, target);
}

function followDrag(canvas: SVGSVGElement, target: SlipTarget): void {
  let held: { readonly from: Point; readonly slip: Slip } | undefined;
  canvas.addEventListener(
    'pointerdown',
    (event) => {
      if (event.button !== 0 || !target.printed() || !(target.slipping() || event.altKey)) return;
      const layer = event.target instanceof Element ? layerOf(event.target) : undefined;
      if (layer === undefined) return;
      const slip = target.hold(layer);
      if (!slip) return;
      event.stopImmediatePropagation();
      held = { from: { x: event.clientX, y: event.clientY }, slip };
      canvas.setPointerCapture(event.pointerId);
      canvas.classList.add('held');
    },
    { capture: true },
  );
  canvas.addEventListener('pointermove', ({ clientX, clientY }) => {
    if (!held) return;
    const { from, slip } = held;
    const scale = target.scale();
    target.slip({ ...slip, x: slip.x + (clientX - from.x) / scale, y: slip.y + (clientY - from.y) / scale });
  });
  for (const end of ['pointerup', 'pointercancel'] as const) {
    canvas.addEventListener(end, () => {
      held = undefined;
      canvas.classList.remove('held');
    });
  }
}

/** The layer whose paint is there; undefined on bare ground and on what lies over the picture. */
function layerOf(element: Element): number | undefined {
  const layer = element.closest('[data-layer]')?.getAttribute('data-layer');
  return layer ? Number(layer) : undefined;
}
