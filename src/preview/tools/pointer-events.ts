/** Clicks, rests of the pointer and keys on the picture, for the hand. Drags and plain arrows are for the view. */
import type { Point } from '../../geometry/base/curve-types';
import type { Hand } from './hand';

/** Milliseconds that the pointer rests, and pixels that it may move while it clicks. */
const REST = 60;
const STILL = 4;

/** @param surface what holds the canvas; its listeners hear first */
export function followPointer(surface: HTMLElement, canvas: Element, hand: Hand): void {
  hand.focusesOn(() => canvas instanceof SVGElement && canvas.focus());
  followGrips(surface, canvas, hand);
  followClicks(surface, canvas, hand);
  followHover(surface, canvas, hand);
  surface.addEventListener(
    'keydown',
    (event) => {
      if (event.ctrlKey || event.metaKey) return;
      const ours = event.target === canvas ? hand.key(event) : event.key === 'Escape' && hand.escape();
      if (!ours) return;
      event.preventDefault();
      event.stopPropagation();
      if (canvas instanceof SVGElement) canvas.focus();
    },
    { capture: true },
  );
}

/** Drags of what can be taken hold of: they come before those that move the view. */
function followGrips(surface: HTMLElement, canvas: Element, hand: Hand): void {
  let from: Point | undefined;
  let dragged = false;
  surface.addEventListener(
    'pointerdown',
    (event) => {
      if (event.button !== 0 || !isOnPicture(event, canvas)) return;
      const at = within(surface, event);
      if (!hand.grip(at, event.altKey)) return;
      [from, dragged] = [at, false];
      event.stopImmediatePropagation();
      // The focus would come by itself with the click that is ours now.
      if (canvas instanceof SVGElement) canvas.focus();
      surface.setPointerCapture(event.pointerId);
    },
    { capture: true },
  );
  surface.addEventListener('pointermove', (event) => {
    const at = within(surface, event);
    if (from) {
      dragged ||= Math.hypot(at.x - from.x, at.y - from.y) >= STILL;
      if (dragged) hand.drag(at, event.altKey);
    } else if (event.buttons === 0) {
      surface.dataset.over = (isOnPicture(event, canvas) && hand.over(at)) || '';
    }
  });
  for (const turn of ['keydown', 'keyup'] as const) {
    surface.addEventListener(turn, (event) => {
      if (!from || event.key !== 'Alt') return;
      // Else the editor's menu would take the focus.
      event.preventDefault();
      event.stopPropagation();
      hand.hold(turn === 'keydown');
    });
  }
  for (const end of ['pointerup', 'pointercancel'] as const) {
    surface.addEventListener(end, () => {
      if (from) hand.letGo();
      from = undefined;
    });
  }
}

function followClicks(surface: HTMLElement, canvas: Element, hand: Hand): void {
  let pressed: Point | undefined;
  surface.addEventListener(
    'pointerdown',
    (event) => {
      pressed = event.button === 0 && isOnPicture(event, canvas) ? within(surface, event) : undefined;
    },
    { capture: true },
  );
  surface.addEventListener(
    'pointerup',
    (event) => {
      const at = within(surface, event);
      if (pressed && Math.hypot(at.x - pressed.x, at.y - pressed.y) < STILL) void hand.use(at);
      pressed = undefined;
    },
    { capture: true },
  );
}

function followHover(surface: HTMLElement, canvas: Element, hand: Hand): void {
  let resting: ReturnType<typeof setTimeout> | undefined;
  surface.addEventListener(
    'pointermove',
    (event) => {
      clearTimeout(resting);
      if (event.buttons !== 0 || !isOnPicture(event, canvas)) return;
      const at = within(surface, event);
      resting = setTimeout(() => void hand.hover(at), REST);
    },
    { capture: true },
  );
  surface.addEventListener('pointerleave', () => {
    clearTimeout(resting);
    hand.leave();
  });
}

/** Marks have clicks of their own; the card can be pointed at without going away. */
function isOnPicture({ target }: Event, canvas: Element): boolean {
  return target instanceof Element && canvas.contains(target) && !target.closest('.mark');
}

function within(surface: Element, { clientX, clientY }: MouseEvent): Point {
  const { left, top } = surface.getBoundingClientRect();
  return { x: clientX - left, y: clientY - top };
}
