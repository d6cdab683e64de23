/** The writing on the picture: letters of pieces, measures of necks, names of sheets. As large at every nearness. */
import type { Point } from '../../geometry/base/curve-types';
import { apply } from '../../geometry/base/matrix';
import { measureLines } from '../../picture/lettering';
import type { Annotation, Scene } from '../../picture/scene';
import { setAttributes, setText, svg, syncChildren } from '../dom/dom';
import { toWindow, type Viewport } from '../state/viewport';

/** Pixels: height of letters, and how near each other two measures are written. */
const LETTERS = 12;
const ROOM = 34;
/** Pixels: about how wide a measure is written. */
const LABEL_WIDTH = 34;

export class Annotations {
  /** Everything in window pixels. */
  readonly element = svg('g', { class: 'notes', 'aria-hidden': 'true' });
  private scene: Scene | undefined;
  private written: readonly Annotation[] = [];

  draw(look: Scene): void {
    this.scene = look;
  }

  place(view: Viewport): void {
    const placed = (this.scene?.sceneLayers ?? []).flatMap(({ place, annotations: notes }) => {
      const inWindow = (point: Point) => toWindow(view, apply(place, point));
      return notes.map((note) => moveAnnotation(note, inWindow));
    });
    this.written = withRoom(placed);
    syncChildren(this.element, this.written, makeAnnotation, drawAnnotation);
  }

  /** The middle of the neck whose measure is written at a point of the window, in the window. */
  measureAt({ x, y }: Point): Point | undefined {
    for (const note of this.written) {
      if (note.kind !== 'dimension') continue;
      const { at } = layoutOf(note);
      if (Math.abs(at.x - x) < LABEL_WIDTH / 2 && Math.abs(at.y - y) < LETTERS) {
        return { x: (note.from.x + note.to.x) / 2, y: (note.from.y + note.to.y) / 2 };
      }
    }
    return undefined;
  }
}

function moveAnnotation(note: Annotation, move: (point: Point) => Point): Annotation {
  return note.kind === 'dimension'
    ? { ...note, from: move(note.from), to: move(note.to) }
    : { ...note, at: move(note.at) };
}

/** Of measures that would be written over each other, the smallest stays; nearer, the others come too. */
function withRoom(notes: readonly Annotation[]): Annotation[] {
  const measures = notes.filter((note) => note.kind === 'dimension').sort((a, b) => Number(a.text) - Number(b.text));
  const taken: Point[] = [];
  const kept = measures.filter(({ from }) => {
    if (taken.some(({ x, y }) => Math.hypot(x - from.x, y - from.y) < ROOM)) return false;
    taken.push(from);
    return true;
  });
  return [...notes.filter(({ kind }) => kind !== 'dimension'), ...kept];
}

function makeAnnotation(): SVGGElement {
  return svg('g', {}, [
    svg('path', { class: 'note-halo' }),
    svg('path', { class: 'note-line' }),
    svg('rect', { class: 'note-chip' }),
    svg('text', { class: 'note-text' }),
  ]);
}

function drawAnnotation(group: SVGGElement, note: Annotation): void {
  const [halo, line, chip, text] = group.children as unknown as [Element, Element, Element, Element];
  setAttributes(group, { class: `note ${note.kind}` });
  setText(text, note.text);
  const { lines, at } = layoutOf(note);
  setAttributes(halo, { d: lines });
  setAttributes(line, { d: lines });
  setAttributes(text, at);
  const size = note.kind === 'caption' ? 11 : 0;
  const corner = note.kind === 'caption' ? { x: note.at.x, y: note.at.y - 16, fill: note.paint } : { x: 0, y: 0 };
  setAttributes(chip, { ...corner, width: size, height: size });
}

function layoutOf(note: Annotation): {
  readonly lines: string;
  readonly at: { readonly x: number; readonly y: number };
} {
  if (note.kind === 'letter') return { lines: '', at: note.at };
  if (note.kind === 'caption') return { lines: '', at: { x: note.at.x + 17, y: note.at.y - 10 } };
  const { lines, label } = measureLines(note.from, note.to, LETTERS);
  return { lines, at: label };
}
