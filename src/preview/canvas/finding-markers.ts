/** The findings on the picture: a dot or a gauge at the place, and a numbered label beside it. */

import type { Severity } from '../../config/check-id';
import type { Point } from '../../geometry/base/curve-types';
import type { Box } from '../../geometry/base/polygon-types';
import { boxContainsBox } from '../../geometry/base/ring';
import type { PreviewFinding } from '../../protocol/index';
import { setAttributes, setText, svg, syncChildren } from '../dom/dom';
import { type Size, toWindow, type Viewport } from '../state/viewport';
import { placeLabels } from './place-labels';

export interface FindingMarker {
  readonly finding: PreviewFinding;
  /** Index into the stack's findings; shown counting from one. */
  readonly index: number;
  readonly selected: boolean;
}

/** A shape for each severity, 9 pixels in radius, so that none is told by colour alone. */
const badges: Record<Severity, string> = {
  error: 'M0-9.5A9.5 9.5 0 1 1 0 9.5A9.5 9.5 0 1 1 0-9.5Z',
  warning: 'M-9.5 0L0-10.5L9.5 0L0 10.5Z',
  info: 'M-8.5-8.5H8.5V8.5H-8.5Z',
  hint: 'M-8.5-8.5H8.5V8.5H-8.5Z',
};

/** So many marks have a numbered label at a time; more could be neither read nor told apart. The others are dots. */
const MAX_LABELS = 60;

/** What the marks were last laid out for. */
interface Layout {
  readonly view: Viewport;
  /** The part of the window that was laid out, in its pixels then. */
  readonly area: Box;
}

interface PlacedFindingMarker extends FindingMarker {
  /** In the window. */
  readonly at: Point;
}

export class FindingMarkers {
  /** Everything in window pixels. */
  readonly element = svg('g', { class: 'marks', 'aria-hidden': 'true' });
  private readonly labelled = svg('g');
  private readonly dots = svg('path', { class: 'other-marks' });
  private markers: readonly FindingMarker[] = [];
  private layout: Layout | undefined;

  /** @param choose is called with the index of the finding whose mark was clicked */
  constructor(choose: (index: number) => void) {
    this.element.append(this.dots, this.labelled);
    this.element.addEventListener('click', ({ target }) => {
      const mark = target instanceof Element ? target.closest('[data-index]') : null;
      if (mark) choose(Number(mark.getAttribute('data-index')));
    });
  }

  /** @param marks the most serious first; they show with the next `place` */
  draw(marks: readonly FindingMarker[]): void {
    this.markers = marks;
    this.layout = undefined;
  }

  /** Shifts what is there; lays it out anew when it is scaled or when other places come into sight. */
  place(view: Viewport, { width, height }: Size): void {
    const { layout } = this;
    const [x, y] = layout?.view.scale === view.scale ? [view.x - layout.view.x, view.y - layout.view.y] : [NaN, NaN];
    const seen = { minX: -x, minY: -y, maxX: width - x, maxY: height - y };
    if (layout && boxContainsBox(layout.area, seen)) {
      setAttributes(this.element, { transform: `translate(${x} ${y})` });
      return;
    }
    const area = { minX: -width / 2, minY: -height / 2, maxX: width * 1.5, maxY: height * 1.5 };
    this.layout = { view, area };
    setAttributes(this.element, { transform: '' });
    this.layOut(placedIn(this.markers, view, area), view);
  }

  private layOut(placed: readonly PlacedFindingMarker[], view: Viewport): void {
    const shown = [...placed].sort((a, b) => Number(b.selected) - Number(a.selected)).slice(0, MAX_LABELS);
    const others = placed.length > shown.length ? placed.filter((mark) => !shown.includes(mark)) : [];
    const labels = placeLabels(shown.map(({ at }) => at));
    syncChildren(this.labelled, shown, makeMarker, (mark, { finding, index, selected, at }, order) => {
      setAttributes(mark, {
        class: `mark ${finding.severity}${selected ? ' selected' : ''}`,
        'data-index': index,
        transform: `translate(${rounded(at.x)} ${rounded(at.y)})`,
      });
      drawMarker(mark, {
        label: relative(labels[order] ?? at, at),
        gauge: finding.chord?.map((point) => relative(toWindow(view, point), at)),
      });
      const [, , , , number] = mark.children;
      if (number) setText(number, String(index + 1));
      setAttributes(badgeOf(mark), { d: badges[finding.severity] });
    });
    setAttributes(this.dots, { d: others.map(({ at }) => `M${rounded(at.x - 2)} ${rounded(at.y)}h4`).join('') });
  }
}

function placedIn(
  marks: readonly FindingMarker[],
  view: Viewport,
  { minX, minY, maxX, maxY }: Box,
): PlacedFindingMarker[] {
  return marks.flatMap((mark) => {
    const at = mark.finding.at && toWindow(view, mark.finding.at);
    return at && at.x >= minX && at.x <= maxX && at.y >= minY && at.y <= maxY ? [{ ...mark, at }] : [];
  });
}

/** A tenth of a pixel is fine enough, and what did not move keeps its attributes. */
const rounded = (pixels: number): number => Math.round(pixels * 10) / 10;

const relative = (point: Point, at: Point): Point => ({ x: rounded(point.x - at.x), y: rounded(point.y - at.y) });

function makeMarker(): SVGGElement {
  return svg('g', {}, [
    svg('path', { class: 'halo' }),
    svg('path', { class: 'gauge' }),
    svg('circle', { class: 'ring', r: 15 }),
    svg('path', { class: 'badge' }),
    svg('text', { class: 'number' }),
  ]);
}

const badgeOf = (mark: Element): Element => mark.children[3] ?? mark;

/** As seen from the mark's own place, in pixels. */
interface Placement {
  readonly label: Point;
  /** The two facing points of a thin place. */
  readonly gauge: readonly Point[] | undefined;
}

function drawMarker(mark: SVGGElement, { label, gauge }: Placement): void {
  const [halo, line, ring, badge, number] = mark.children;
  const path = `M0 0L${label.x} ${label.y}${gauge ? gaugePath(gauge) : DOT}`;
  if (halo) setAttributes(halo, { d: path });
  if (line) setAttributes(line, { d: path });
  if (ring) setAttributes(ring, { cx: label.x, cy: label.y });
  if (badge) setAttributes(badge, { transform: `translate(${label.x} ${label.y})` });
  if (number) setAttributes(number, { x: label.x, y: label.y });
}

const DOT = 'M-2.5 0A2.5 2.5 0 1 1 2.5 0A2.5 2.5 0 1 1-2.5 0Z';

/** A line from side to side with a short bar across each end, as on a drawing's dimension. */
function gaugePath([from, to]: readonly Point[]): string {
  if (!from || !to) return '';
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const across =
    length > 0 ? { x: (-(to.y - from.y) / length) * 5, y: ((to.x - from.x) / length) * 5 } : { x: 0, y: 5 };
  const bar = ({ x, y }: Point) => `M${x - across.x} ${y - across.y}L${x + across.x} ${y + across.y}`;
  return `M${from.x} ${from.y}L${to.x} ${to.y}${bar(from)}${bar(to)}`;
}
