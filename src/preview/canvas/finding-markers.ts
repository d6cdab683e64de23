/**
 * The findings on the picture: a dot or a gauge at the place, and a numbered label beside it. Where labels would lie over
 * each other, one stands for all, with their count; nearer, they come apart.
 */

import type { Severity } from '../../config/check-id';
import type { Point } from '../../geometry/base/curve-types';
import type { Box } from '../../geometry/base/polygon-types';
import { boxContainsBox } from '../../geometry/base/ring';
import { setAttributes, setText, svg, syncChildren } from '../dom/dom';
import { type Size, toWindow, type Viewport } from '../state/viewport';
import { clustersOf, middleOf } from './clusters';
import { placeLabels } from './place-labels';
import type { FindingMarker } from './placed-findings';

/** A shape for each severity, 9 pixels in radius, so that none is told by colour alone. */
const badges: Record<Severity, string> = {
  error: 'M0-9.5A9.5 9.5 0 1 1 0 9.5A9.5 9.5 0 1 1 0-9.5Z',
  warning: 'M-9.5 0L0-10.5L9.5 0L0 10.5Z',
  info: 'M-8.5-8.5H8.5V8.5H-8.5Z',
  hint: 'M-10.5 0L-5.5-9H5.5L10.5 0L5.5 9H-5.5Z',
};

/** For several in one place. */
const CLUSTER = 'M-6-10H6A10 10 0 0 1 6 10H-6A10 10 0 0 1-6-10Z';

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

export interface MarkerActions {
  /** A mark was clicked: the number of its finding. */
  choose(number: number): void;
  /** A mark that stands for several was clicked. */
  open(members: readonly FindingMarker[]): void;
}

export class FindingMarkers {
  /** Everything in window pixels. */
  readonly element = svg('g', { class: 'marks', 'aria-hidden': 'true' });
  private markers: readonly FindingMarker[] = [];
  private clusters: readonly (readonly PlacedFindingMarker[])[] = [];
  private layout: Layout | undefined;

  constructor({ choose, open }: MarkerActions) {
    this.element.addEventListener('click', ({ target }) => {
      const mark = target instanceof Element ? target.closest('.mark') : null;
      const members = mark ? this.clusters[[...this.element.children].indexOf(mark)] : undefined;
      const [first, ...others] = members ?? [];
      if (first && others.length === 0) choose(first.finding.number);
      else if (members) open(members);
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
    this.clusters = clustersOf(placed);
    const labels = placeLabels(this.clusters.map((members) => middleOf(members)));
    syncChildren(this.element, this.clusters, makeMarker, (mark, members, order) => {
      const [first] = members;
      if (!first) return;
      if (members.length > 1) drawCluster(mark, members, first.finding.severity);
      else drawSingle(mark, first, labels[order] ?? first.at, view);
    });
  }
}

function drawSingle(
  mark: SVGGElement,
  { finding, selected, at }: PlacedFindingMarker,
  label: Point,
  view: Viewport,
): void {
  setAttributes(mark, {
    class: `mark ${finding.severity}${selected ? ' selected' : ''}`,
    'data-finding': finding.number,
    transform: `translate(${rounded(at.x)} ${rounded(at.y)})`,
  });
  drawMarker(mark, {
    label: relative(label, at),
    gauge: finding.chord?.map((point) => relative(toWindow(view, point), at)),
  });
  write(mark, badges[finding.severity], String(finding.number), '');
}

/** @param severity of its most serious member */
function drawCluster(mark: SVGGElement, members: readonly PlacedFindingMarker[], severity: Severity): void {
  const { x, y } = middleOf(members);
  setAttributes(mark, {
    class: `mark cluster ${severity}`,
    transform: `translate(${rounded(x)} ${rounded(y)})`,
  });
  mark.removeAttribute('data-finding');
  for (const line of [...mark.children].slice(0, 2)) setAttributes(line, { d: '' });
  for (const each of [...mark.children].slice(2))
    for (const name of ['cx', 'cy', 'x', 'y', 'transform']) each.removeAttribute(name);
  write(mark, CLUSTER, `×${members.length}`, `${members.length} findings: click to zoom in`);
}

function write(mark: SVGGElement, shape: string, text: string, title: string): void {
  const [, , , badge, number, tooltip] = mark.children;
  if (badge) setAttributes(badge, { d: shape });
  if (number) setText(number, text);
  if (tooltip) setText(tooltip, title);
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
    svg('title'),
  ]);
}

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
