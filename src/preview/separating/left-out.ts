/** What is left unpainted, and what is sprayed in the paint of another colour: rows that can be taken back. */
import type { LeftOutBox } from '../../config/types';
import type { PictureDials } from '../../protocol/separating';
import { html, setAttributes, setText, syncChildren } from '../dom/dom';
import { withoutMerged, withPaintedAgain } from './palette';
import { iconButton } from './stage';

/** One thing that is left out. */
interface Row {
  readonly colours: readonly string[];
  readonly text: string;
  readonly back: string;
  undo(dials: PictureDials): PictureDials;
  /** Of a rectangle, its sides in mm and what sets them. */
  readonly box?: LeftOutBox;
  set?(dials: PictureDials, box: LeftOutBox): PictureDials;
}

const SIDES = ['left', 'top', 'width', 'height'] as const;

export class LeftOutList {
  readonly element = html('ul', { class: 'left-out', 'aria-label': 'Left unpainted and merged' });
  private readonly rowShown = new WeakMap<Element, (row: Row) => void>();
  private readonly change: (change: (dials: PictureDials) => PictureDials) => void;

  constructor(change: (change: (dials: PictureDials) => PictureDials) => void) {
    this.change = change;
  }

  show(dials: PictureDials): void {
    const rows = rowsOf(dials);
    this.element.hidden = rows.length === 0;
    syncChildren(
      this.element,
      rows,
      () => this.row(),
      (element, row) => this.rowShown.get(element)?.(row),
    );
  }

  private row(): HTMLLIElement {
    let shown: Row | undefined;
    const swatches = html('span', { class: 'swatches', 'aria-hidden': 'true' });
    const text = html('span', { class: 'told' });
    const sides = SIDES.map((side) =>
      html('input', { type: 'number', min: 0, step: 0.5, class: 'side', 'aria-label': side }),
    );
    const back = iconButton('discard', 'Take back', () => {
      if (shown) this.change(shown.undo);
    });
    for (const side of sides) {
      side.addEventListener('change', () => {
        const box = sides.map((each) => Math.max(0, Number(each.value) || 0)) as unknown as LeftOutBox;
        const { set } = shown ?? {};
        if (set) this.change((dials) => set(dials, box));
      });
    }
    const element = html('li', {}, [swatches, text, html('span', { class: 'sides' }, sides), back]);
    this.rowShown.set(element, (row) => {
      shown = row;
      syncChildren(
        swatches,
        row.colours,
        () => html('span', { class: 'swatch' }),
        (swatch, colour) => swatch.style.setProperty('background-color', colour),
      );
      setText(text, row.text);
      setAttributes(back, { 'aria-label': row.back, title: row.back });
      sides.forEach((side, i) => {
        side.hidden = !row.box;
        setAttributes(side, { 'aria-label': `${row.text}: ${SIDES[i] ?? ''} in mm`, title: `${SIDES[i] ?? ''}, mm` });
        if (document.activeElement !== side) side.value = String(Number((row.box?.[i] ?? 0).toFixed(1)));
      });
    });
    return element;
  }
}

function rowsOf({ ground, leaveOut, merged }: PictureDials): Row[] {
  let parts = 0;
  const left = leaveOut.map((each, at): Row => {
    if (typeof each === 'string') return colourRow(each, 'Unpainted');
    parts += 1;
    return {
      colours: [],
      text: `Part ${parts}`,
      back: `Paint part ${parts} again`,
      undo: (dials) => ({ ...dials, leaveOut: dials.leaveOut.filter((_, other) => other !== at) }),
      box: each,
      set: (dials, box) => ({ ...dials, leaveOut: dials.leaveOut.map((other, i) => (i === at ? box : other)) }),
    };
  });
  return [
    ...(ground === undefined ? [] : [colourRow(ground, 'Ground, unpainted')]),
    ...left,
    ...merged.map(
      ([from, into]): Row => ({
        colours: [from, into],
        text: 'Merged',
        back: `Part ${from} from ${into} again`,
        undo: (dials) => withoutMerged(dials, from),
      }),
    ),
  ];
}

function colourRow(colour: string, text: string): Row {
  return { colours: [colour], text, back: `Paint ${colour} again`, undo: (dials) => withPaintedAgain(dials, colour) };
}
