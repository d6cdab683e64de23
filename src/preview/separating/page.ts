/** The page that shows a picture becoming sheets. It keeps the dials; what comes of them is asked for. */

import type { LeftOutBox } from '../../config/types';
import { count } from '../../config/values';
import type {
  FromPicturePage,
  PictureDials,
  ShownPicture,
  ShownSeparation,
  ToPicturePage,
} from '../../protocol/separating';
import { html, setText } from '../dom/dom';
import { checkbox, DialPanel } from './dial-panel';
import { Figures } from './figures';
import { History } from './history';
import { LeftOutList } from './left-out';
import { PaintList } from './paint-list';
import { withAdded } from './palette';
import { colourAt } from './pixels';
import { Stage } from './stage';
import { WriteBar } from './write-bar';

export class PicturePage {
  private readonly post: (message: FromPicturePage) => void;
  private readonly keep: (dials: PictureDials) => void;
  private readonly history = new History<PictureDials>();
  private readonly stage = new Stage();
  private readonly paints = new PaintList(this);
  private readonly dialPanel = new DialPanel((change) => this.change(change(this.dials)));
  private readonly leftOut = new LeftOutList((change) => this.change(change(this.dials)));
  private readonly figures = new Figures();
  private readonly state = html('p', { class: 'state', role: 'status' });
  private readonly fine = checkbox('Hatch what is too fine', (on) => this.stage.showHatch(on));
  private readonly writeBar: WriteBar;
  private readonly bestOrder = textButton('Best order', 'The order with the fewest islands', () =>
    this.change({ ...this.dials, order: [] }),
  );
  private kept: PictureDials | undefined;
  private picture: ShownPicture | undefined;
  private asked = 0;
  dials: PictureDials = NOTHING;
  shown: ShownSeparation | undefined;
  readonly element: HTMLElement;

  /** @param kept the dials as they were when the page was left; those of the extension where there are none */
  constructor(
    post: (message: FromPicturePage) => void,
    keep: (dials: PictureDials) => void,
    kept: PictureDials | undefined,
  ) {
    this.post = post;
    this.keep = keep;
    this.kept = kept;
    this.fine.input.checked = true;
    this.writeBar = new WriteBar({
      write: () => this.post({ type: 'write', id: this.next(), dials: this.dials }),
      stop: () => this.post({ type: 'stop' }),
      chooseFolder: () => this.post({ type: 'chooseFolder' }),
      bridges: (bridges) => this.change({ ...this.dials, bridges }),
    });
    this.element = html('main', { class: 'separating', 'aria-label': 'Picture to sheets' }, [
      html('h1', { class: 'unseen' }, ['Picture to sheets']),
      this.stage.element,
      html('div', { class: 'dials' }, [...this.sections(), this.writeBar.element]),
    ]);
    document.addEventListener('keydown', (event) => this.onKey(event));
  }

  hear(message: ToPicturePage): void {
    if (message.type === 'picture') this.open(message.picture, this.kept ?? message.dials, message.folder);
    else if (message.type === 'answer') this.answer(message.id, message.isRough, message.separation);
    else if (message.type === 'refused') this.refuse(message.id, message.message);
    else if (message.type === 'writing') this.writeBar.showWriting(message.isWriting, message.said);
    else this.writeBar.showFolder(message.folder);
  }

  change(dials: PictureDials): void {
    this.history.push(this.dials);
    this.set(dials);
  }

  pick(done: (colour: string) => void): void {
    const hint = 'Click a place in the picture, or move the cross with the arrow keys and press Enter.';
    this.stage.point({
      hint,
      isPart: false,
      done: (_, { x, y }) => {
        if (this.picture) done(colourAt(this.picture, x, y));
      },
    });
  }

  private sections(): HTMLElement[] {
    return [
      section('Size and paints', [
        ...this.dialPanel.first,
        this.paints.element,
        html('div', { class: 'button-row' }, [
          textButton('Add a paint…', 'Pick its colour from the picture', () =>
            this.pick((colour) => this.change(withAdded(this.dials, colour))),
          ),
          textButton('Ground…', 'Pick the colour that is painted on: it is left unpainted', () =>
            this.pick((ground) => this.change({ ...this.dials, ground })),
          ),
          textButton('Leave a part out…', 'Mark a part of the picture that is left unpainted', () =>
            this.leaveOutPart(),
          ),
          this.bestOrder,
        ]),
        this.leftOut.element,
      ]),
      section('Shapes', [...this.dialPanel.others, this.fine.element]),
      section('What comes of it', [this.figures.element, this.state]),
    ];
  }

  private leaveOutPart(): void {
    const hint = 'Drag over the part to leave out. By keys: Enter at one corner, Enter at the other.';
    this.stage.point({
      hint,
      isPart: true,
      done: (from, to) => {
        const { width = this.dials.width, height = this.dials.width } = this.shown ?? {};
        const sides = [
          Math.min(from.x, to.x) * width,
          Math.min(from.y, to.y) * height,
          Math.abs(from.x - to.x) * width,
          Math.abs(from.y - to.y) * height,
        ].map((side) => Number(side.toFixed(1))) as unknown as LeftOutBox;
        if (sides[2] > 0 && sides[3] > 0) this.change({ ...this.dials, leaveOut: [...this.dials.leaveOut, sides] });
      },
    });
  }

  private open(picture: ShownPicture, dials: PictureDials, folder: string): void {
    this.picture = picture;
    this.stage.showPicture(picture);
    this.writeBar.showFolder(folder);
    this.set(dials);
  }

  private set(dials: PictureDials): void {
    this.dials = dials;
    this.kept = dials;
    this.keep(dials);
    this.show();
    setText(this.state, 'Working…');
    this.post({ type: 'separate', id: this.next(), dials });
  }

  private next(): number {
    this.asked += 1;
    return this.asked;
  }

  private answer(id: number, isRough: boolean, separation: ShownSeparation): void {
    // A rough answer to what was asked before is better than none while the hand moves.
    if (!isRough && id !== this.asked) return;
    this.shown = separation;
    this.stage.showPrint(separation, this.dials.ground ?? separation.unpainted[0]);
    this.figures.show(separation);
    setText(this.state, isRough ? 'A first sketch; the sheets are being drawn…' : sheetsSaid(separation));
    this.show();
  }

  private refuse(id: number, message: string): void {
    if (id !== this.asked && id !== 0) return;
    setText(this.state, `This picture ${message}.`);
  }

  private show(): void {
    const { dials, shown } = this;
    this.dialPanel.show(dials, shown);
    this.leftOut.show(dials);
    this.paints.show(shown?.layers ?? []);
    this.bestOrder.disabled = dials.order.length === 0;
    this.writeBar.show(dials.bridges, shown?.islands.ordered ?? 0);
    const boxes = dials.leaveOut.filter((each) => typeof each !== 'string');
    if (shown) this.stage.showBoxes(boxes, shown.width, shown.height);
  }

  private onKey(event: KeyboardEvent): void {
    if (!(event.ctrlKey || event.metaKey) || event.altKey || event.key.toLowerCase() !== 'z') return;
    event.preventDefault();
    const dials = event.shiftKey ? this.history.redo(this.dials) : this.history.undo(this.dials);
    if (dials) this.set(dials);
  }
}

/** Before a picture is there. */
const NOTHING: PictureDials = {
  width: 148,
  colours: 4,
  paints: [],
  leaveOut: [],
  outline: false,
  merged: [],
  order: [],
  bridges: true,
};

function sheetsSaid({ layers, islands }: ShownSeparation): string {
  return `${count(layers.length, 'sheet')}, ${count(islands.ordered, 'island')}.`;
}

function section(name: string, children: readonly HTMLElement[]): HTMLElement {
  return html('section', {}, [html('h2', {}, [name]), ...children]);
}

function textButton(name: string, hint: string, run: () => void): HTMLButtonElement {
  const button = html('button', { type: 'button', class: 'tool', title: hint }, [name]);
  button.addEventListener('click', run);
  return button;
}
