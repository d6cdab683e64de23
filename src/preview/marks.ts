/** The findings on the picture: a dot or a gauge at the place, and a numbered label beside it. */
import type { Point } from '../geometry/curve';
import type { Severity } from '../sheet/check-id';
import type { StackFinding } from '../server/protocol';
import { setAttributes, setText, svg, syncChildren } from './dom';
import { placeLabels } from './place-labels';
import { toWindow, type View } from './view';

export interface Mark {
  readonly finding: StackFinding;
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

export class Marks {
  /** Everything in window pixels. */
  readonly element = svg('g');

  /** @param choose is called with the index of the finding whose mark was clicked */
  constructor(choose: (index: number) => void) {
    this.element.addEventListener('click', ({ target }) => {
      const mark = target instanceof Element ? target.closest('[data-index]') : null;
      if (mark) choose(Number(mark.getAttribute('data-index')));
    });
  }

  draw(marks: readonly Mark[], view: View): void {
    const placed = marks.flatMap(({ finding, index, selected }) => (
      finding.at ? [{ finding, index, selected, at: toWindow(view, finding.at) }] : []
    ));
    const labels = placeLabels(placed.map(({ at }) => at));
    syncChildren(this.element, placed, makeMark, (mark, { finding, index, selected, at }, order) => {
      setAttributes(mark, {
        class: `mark ${finding.severity}${selected ? ' selected' : ''}`, 'data-index': index,
      });
      drawMark(mark, { at, label: labels[order] ?? at, gauge: finding.chord?.map((point) => toWindow(view, point)) });
      const [, , , , number] = mark.children;
      if (number) setText(number, String(index + 1));
      setAttributes(badgeOf(mark), { d: badges[finding.severity] });
    });
  }
}

function makeMark(): SVGGElement {
  return svg('g', {}, [
    svg('path', { class: 'halo' }), svg('path', { class: 'gauge' }), svg('circle', { class: 'ring', r: 15 }),
    svg('path', { class: 'badge' }), svg('text', { class: 'number' }),
  ]);
}

const badgeOf = (mark: Element): Element => mark.children[3] ?? mark;

interface Placement {
  readonly at: Point;
  readonly label: Point;
  /** The two facing points of a thin place. */
  readonly gauge: readonly Point[] | undefined;
}

function drawMark(mark: SVGGElement, { at, label, gauge }: Placement): void {
  const [halo, line, ring, badge, number] = mark.children;
  const path = `M${at.x} ${at.y}L${label.x} ${label.y}${gauge ? gaugePath(gauge) : dotPath(at)}`;
  if (halo) setAttributes(halo, { d: path });
  if (line) setAttributes(line, { d: path });
  if (ring) setAttributes(ring, { cx: label.x, cy: label.y });
  if (badge) setAttributes(badge, { transform: `translate(${label.x} ${label.y})` });
  if (number) setAttributes(number, { x: label.x, y: label.y });
}

function dotPath({ x, y }: Point): string {
  const [left, right] = [`${x - 2.5} ${y}`, `${x + 2.5} ${y}`];
  return `M${left}A2.5 2.5 0 1 1 ${right}A2.5 2.5 0 1 1 ${left}Z`;
}

/** A line from side to side with a short bar across each end, as on a drawing's dimension. */
function gaugePath([from, to]: readonly Point[]): string {
  if (!from || !to) return '';
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const across = length > 0
    ? { x: (-(to.y - from.y) / length) * 5, y: ((to.x - from.x) / length) * 5 }
    : { x: 0, y: 5 };
  const bar = ({ x, y }: Point) => `M${x - across.x} ${y - across.y}L${x + across.x} ${y + across.y}`;
  return `M${from.x} ${from.y}L${to.x} ${to.y}${bar(from)}${bar(to)}`;
}
