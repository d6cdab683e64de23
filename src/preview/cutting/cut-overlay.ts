/** The cuts of a sheet on the picture: those that are done, the ways between them, the tool, and which come first. */
import type { Matrix, Point } from '../../geometry/base/curve-types';
import { apply } from '../../geometry/base/matrix';
import { placeLabels } from '../canvas/place-labels';
import { setAttributes, setText, svg, syncChildren } from '../dom/dom';
import { matrixText } from '../dom/matrix-text';
import { toWindow, type Viewport } from '../state/viewport';
import type { CutCourse } from './cut-course';

export interface CutDrawing {
  readonly course: CutCourse;
  /** mm that the tool has come. */
  readonly way: number;
  /** From the layer's own mm to those of the picture. */
  readonly place: Matrix;
}

/** So many cuts are numbered: where they begin is where a sheet that slips spoils the rest. */
const NUMBERED = 5;

/** Pixels: the radius of a number's disc, of the place that it tells of, and of the tool. */
const [DISC, PLACE, TOOL] = [9, 2.5, 5] as const;

export class CutOverlay {
  /** In mm of the picture. */
  readonly lines = svg('g', { class: 'cut-lines', 'aria-hidden': 'true' });
  /** In window pixels. */
  readonly marks = svg('g', { class: 'cut-marks', 'aria-hidden': 'true' });
  private readonly group = svg('g');
  private readonly paths = ['cut-way-halo', 'cut-way', 'cut-ahead', 'cut-halo', 'cut-done'].map((name) =>
    svg('path', { class: name }),
  );
  private readonly numbers = svg('g');
  private readonly tool = svg('circle', { class: 'cut-tool', r: TOOL });
  private drawing: CutDrawing | undefined;
  private drawnCourse: CutCourse | undefined;
  private drawnDone = -1;
  private doneLines = '';

  constructor() {
    this.group.append(...this.paths);
    this.lines.append(this.group);
    this.marks.append(this.numbers, this.tool);
  }

  /** @param drawing undefined where nothing is shown */
  draw(drawing: CutDrawing | undefined): void {
    this.drawing = drawing;
    for (const element of [this.lines, this.marks]) element.toggleAttribute('hidden', !drawing);
    if (!drawing) return;
    const { course, way, place } = drawing;
    const { done, begun } = course.at(way);
    if (course !== this.drawnCourse) this.drawCourse(course);
    if (done !== this.drawnDone) {
      this.drawnDone = done;
      this.doneLines = course.cuts
        .slice(0, done)
        .map(({ line }) => line)
        .join('');
    }
    setAttributes(this.group, { transform: matrixText(place) });
    const lines = this.doneLines + lineThrough(begun);
    for (const path of this.paths.slice(3)) setAttributes(path, { d: lines });
  }

  place(view: Viewport): void {
    const { x, y, scale } = view;
    setAttributes(this.lines, { transform: `matrix(${scale} 0 0 ${scale} ${x} ${y})` });
    if (!this.drawing) return;
    const { course, way, place } = this.drawing;
    const inWindow = (point: Point): Point => toWindow(view, apply(place, point));
    const tool = inWindow(course.at(way).tool);
    setAttributes(this.tool, { cx: tool.x, cy: tool.y });
    const starts = course.cuts.slice(0, NUMBERED).map(({ from }) => inWindow(from));
    const labels = placeLabels(starts);
    const numbered = starts.map((at, i) => ({ number: i + 1, at, label: labels[i] ?? at }));
    syncChildren(this.numbers, numbered, makeNumber, drawNumber);
  }

  private drawCourse(course: CutCourse): void {
    this.drawnCourse = course;
    this.drawnDone = -1;
    const ways = course.travel();
    const all = course.cuts.map(({ line }) => line).join('');
    this.paths.slice(0, 3).forEach((path, i) => {
      setAttributes(path, { d: i < 2 ? ways : all });
    });
  }
}

interface Numbered {
  readonly number: number;
  /** Where the cut begins, and the middle of its number beside it. */
  readonly at: Point;
  readonly label: Point;
}

function lineThrough(points: readonly Point[]): string {
  return points.length < 2 ? '' : `M${points.map(({ x, y }) => `${x} ${y}`).join('L')}`;
}

function makeNumber(): SVGGElement {
  return svg('g', {}, [
    svg('path', { class: 'cut-stem-halo' }),
    svg('path', { class: 'cut-stem' }),
    svg('circle', { class: 'cut-start', r: PLACE }),
    svg('circle', { class: 'cut-disc', r: DISC }),
    svg('text', { class: 'cut-number' }),
  ]);
}

function drawNumber(group: SVGGElement, { number, at, label }: Numbered): void {
  const [halo, stem, start, disc, text] = group.children as unknown as [Element, Element, Element, Element, Element];
  const line = `M${at.x} ${at.y}L${label.x} ${label.y}`;
  for (const each of [halo, stem]) setAttributes(each, { d: line });
  setAttributes(start, { cx: at.x, cy: at.y });
  setAttributes(disc, { cx: label.x, cy: label.y });
  setAttributes(text, { x: label.x, y: label.y });
  setText(text, String(number));
}
