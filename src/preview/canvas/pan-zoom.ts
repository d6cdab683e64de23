/** Mouse, touchpad and keyboard on the picture. */
import type { Point } from '../../geometry/base/curve-types';
import { pan, type Viewport, zoomAt } from '../state/viewport';

export interface GestureTarget {
  view(): Viewport;
  move(view: Viewport): void;
  fit(): void;
}

/** Pixels for one press of an arrow key. */
const STEP = 40;

const steps: Readonly<Record<string, Point>> = {
  ArrowLeft: { x: STEP, y: 0 },
  ArrowRight: { x: -STEP, y: 0 },
  ArrowUp: { x: 0, y: STEP },
  ArrowDown: { x: 0, y: -STEP },
};

export function followPanZoom(canvas: SVGSVGElement, target: GestureTarget): void {
  canvas.addEventListener(
    'wheel',
    (event) => {
      event.preventDefault();
      target.move(wheeled(target.view(), event, canvas.getBoundingClientRect()));
    },
    { passive: false },
  );
  canvas.addEventListener('keydown', (event) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    if (!pressed(event.key, canvas, target)) return;
    event.preventDefault();
  });
  followDrags(canvas, target);
}

/** The wheel comes nearer or goes farther; with Shift it shifts to the side. */
function wheeled(view: Viewport, event: WheelEvent, { left, top }: DOMRect): Viewport {
  const pixels = event.deltaY * (event.deltaMode === WheelEvent.DOM_DELTA_LINE ? 16 : 1);
  if (event.shiftKey) return pan(view, -(event.deltaX || pixels), 0);
  return zoomAt(view, { x: event.clientX - left, y: event.clientY - top }, Math.exp(-pixels / 400));
}

function pressed(key: string, canvas: SVGSVGElement, target: GestureTarget): boolean {
  const step = steps[key];
  const middle = { x: canvas.clientWidth / 2, y: canvas.clientHeight / 2 };
  if (step) target.move(pan(target.view(), step.x, step.y));
  else if (key === '+' || key === '=') target.move(zoomAt(target.view(), middle, 1.25));
  else if (key === '-') target.move(zoomAt(target.view(), middle, 1 / 1.25));
  else if (key === '0') target.fit();
  else return false;
  return true;
}

function followDrags(canvas: SVGSVGElement, target: GestureTarget): void {
  let last: Point | undefined;
  canvas.addEventListener('pointerdown', (event) => {
    // A mark is clicked, not dragged.
    if (event.target instanceof Element && event.target.closest('.mark')) return;
    last = { x: event.clientX, y: event.clientY };
    canvas.setPointerCapture(event.pointerId);
    canvas.classList.add('held');
  });
  canvas.addEventListener('pointermove', ({ clientX, clientY }) => {
    if (!last) return;
    target.move(pan(target.view(), clientX - last.x, clientY - last.y));
    last = { x: clientX, y: clientY };
  });
  for (const end of ['pointerup', 'pointercancel'] as const) {
    canvas.addEventListener(end, () => {
      last = undefined;
      canvas.classList.remove('held');
    });
  }
}
