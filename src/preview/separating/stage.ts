/** The picture and the print, one over the other with a wipe between them, and what is too fine, hatched. */
import type { LeftOutBox } from '../../config/types';
import type { ShownPicture, ShownSeparation } from '../../protocol/separating';
import { html, setAttributes, setText, svg, syncChildren } from '../dom/dom';
import { drawPicture, maskOf } from './pixels';
import { Pointer, type Pointing, place } from './pointing';
import { Wipe } from './wipe';

const ZOOMS = [1, 1.5, 2, 3, 4, 6, 8] as const;

export class Stage {
  private readonly picture = html('canvas', { class: 'picture', role: 'img', 'aria-label': 'The picture' });
  private readonly ground = svg('rect', { class: 'ground' });
  private readonly layers = svg('g');
  private readonly print = svg(
    'svg',
    { class: 'print', role: 'img', 'aria-label': 'The print', preserveAspectRatio: 'none' },
    [this.ground, this.layers],
  );
  private readonly hatch = html('div', { class: 'hatch', 'aria-hidden': 'true' });
  private readonly boxes = html('div', { class: 'boxes', 'aria-hidden': 'true' });
  private readonly frame = html('div', { class: 'frame' });
  private readonly hint = html('p', { class: 'hint', role: 'status' });
  private readonly pointer = new Pointer((text) => setText(this.hint, text));
  private readonly scroll = html('div', { class: 'scroll' }, [this.frame]);
  private readonly zoomOut = iconButton('zoom-out', 'Zoom out', () => this.zoomBy(-1));
  private readonly zoomIn = iconButton('zoom-in', 'Zoom in', () => this.zoomBy(1));
  private zoom = 0;
  private ratio = 1;

  readonly element = html('section', { class: 'stage', 'aria-label': 'Picture and print' }, [
    this.scroll,
    html('div', { class: 'stage-bar' }, [
      html('span', { 'aria-hidden': 'true' }, ['Picture']),
      this.hint,
      this.zoomOut,
      this.zoomIn,
      html('span', { 'aria-hidden': 'true' }, ['Print']),
    ]),
  ]);

  constructor() {
    const wipe = new Wipe(this.frame);
    this.frame.append(this.print, this.hatch, this.picture, this.boxes, wipe.element, this.pointer.element);
    new ResizeObserver(() => this.fit()).observe(this.scroll);
    this.scroll.addEventListener(
      'wheel',
      (event) => {
        if (!event.ctrlKey && !event.metaKey) return;
        event.preventDefault();
        this.zoomBy(event.deltaY < 0 ? 1 : -1);
      },
      { passive: false },
    );
    this.zoomBy(0);
  }

  showPicture(picture: ShownPicture): void {
    drawPicture(this.picture, picture);
    this.ratio = picture.width / picture.height;
    this.fit();
  }

  /** @param ground what is painted on, where that is known */
  showPrint({ width, height, layers, fine }: ShownSeparation, ground: string | undefined): void {
    setAttributes(this.print, { viewBox: `0 0 ${width} ${height}` });
    setAttributes(this.ground, { width, height, fill: ground ?? '#ffffff' });
    syncChildren(
      this.layers,
      layers,
      () => svg('path', { 'fill-rule': 'evenodd' }),
      (path, { outline, paint }) => setAttributes(path, { d: outline, fill: paint }),
    );
    const mask = maskOf(fine);
    this.hatch.hidden = mask === '';
    this.hatch.style.setProperty('mask-image', mask === '' ? 'none' : `url(${mask})`);
  }

  showHatch(shown: boolean): void {
    this.frame.classList.toggle('without-hatch', !shown);
  }

  /** @param width and `height` of the print, mm */
  showBoxes(boxes: readonly LeftOutBox[], width: number, height: number): void {
    syncChildren(
      this.boxes,
      boxes,
      () => html('span'),
      (element, [x, y, w, h]) =>
        place(element, { left: x / width, top: y / height, width: w / width, height: h / height }),
    );
  }

  point(pointing: Pointing): void {
    this.pointer.start(pointing);
  }

  private zoomBy(steps: number): void {
    this.zoom = Math.max(0, Math.min(ZOOMS.length - 1, this.zoom + steps));
    this.zoomOut.disabled = this.zoom === 0;
    this.zoomIn.disabled = this.zoom === ZOOMS.length - 1;
    this.fit();
  }

  private fit(): void {
    const { clientWidth, clientHeight } = this.scroll;
    const width = Math.max(40, Math.min(clientWidth - 24, (clientHeight - 24) * this.ratio)) * (ZOOMS[this.zoom] ?? 1);
    this.frame.style.setProperty('width', `${width}px`);
    this.frame.style.setProperty('height', `${width / this.ratio}px`);
  }
}

export function iconButton(icon: string, name: string, run: () => void): HTMLButtonElement {
  const button = html('button', { type: 'button', class: 'tool icon-tool', 'aria-label': name, title: name }, [
    html('span', { class: `codicon codicon-${icon}`, 'aria-hidden': 'true' }),
  ]);
  button.addEventListener('click', run);
  return button;
}
