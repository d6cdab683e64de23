/**
 * The picture under the marks: its plates and what the text at the caret draws, painted in another thread. Until a
 * painting of a new view is there, the last one is shifted and scaled to it.
 */
import type { LayerId } from '../../engine/index';
import type { Matrix } from '../../geometry/base/curve-types';
import type { Scene, SceneLayer } from '../../picture/scene';
import { html } from '../dom/dom';
import type { PaintedSheet, Painting } from '../painter/paint-job';
import { Painter } from '../painter/painter';
import { startThread } from '../painter/start-thread';
import type { Size, Viewport } from '../state/viewport';
import { animate, prefersReducedMotion } from './motion';
import { RoleStyles } from './role-styles';
import { Targets } from './targets';

/** What is painted beyond the window on every side, as a share of its longer side. */
const MARGIN = 0.15;

/** What the text at the caret draws: a dark line over a wider light one, seen on any paint. */
const CARET_ROLES = ['caret-halo', 'caret'];

/** What the text at the caret draws, in mm, and in which layers. */
export interface CaretShape {
  readonly outline: string;
  readonly layers: readonly LayerId[];
}

export class Picture {
  readonly element = html('canvas', { class: 'painting', 'aria-hidden': 'true' });
  readonly targets = new Targets();
  private readonly styles = new RoleStyles();
  private readonly painter = new Painter((painting) => this.painted(painting), startThread);
  private readonly context = this.element.getContext('bitmaprenderer');
  private scene: Scene | undefined;
  private caret: CaretShape = { outline: '', layers: [] };
  private layers: readonly { readonly id: LayerId }[] = [];
  private viewport: Viewport = { scale: 1, x: 0, y: 0 };
  private size: Size = { width: 0, height: 0 };
  private onCanvas: Painting['view'] | undefined;
  /** The sheet whose islands have fallen already. */
  private fallenSheet: string | undefined;
  private fallen = 1;
  private stopFall = () => {};

  constructor() {
    // Colours follow the theme, which the page's body carries.
    new MutationObserver(() => this.paint()).observe(document.body, { attributes: true });
  }

  /** @param layers of the stack, in painting order */
  draw(look: Scene, layers: readonly { readonly id: LayerId }[]): void {
    [this.scene, this.layers] = [look, layers];
    const sheet = look.kind === 'sheet' ? String(look.sceneLayers[0]?.layer) : undefined;
    if (sheet !== undefined && sheet !== this.fallenSheet) this.letFall();
    this.fallenSheet = sheet;
    this.targets.draw(look);
    this.paint();
  }

  mark(shape: CaretShape): void {
    if (shape.outline === this.caret.outline && String(shape.layers) === String(this.caret.layers)) return;
    this.caret = shape;
    this.paint();
  }

  place(view: Viewport, size: Size): void {
    [this.viewport, this.size] = [view, size];
    this.follow();
    this.targets.place(view, size);
    this.look();
  }

  private paint(): void {
    const { scene } = this;
    if (!scene) return;
    const sheets = scene.sceneLayers.map(sheetOf);
    const painted = [...sheets, ...this.caretSheets(scene)];
    this.painter.show(painted, this.styles.of(painted));
  }

  /** On each sheet that has a part of it, wherever that lies; on the print once, since all lie in one place. */
  private caretSheets({ kind, sceneLayers }: Scene): PaintedSheet[] {
    const { outline, layers } = this.caret;
    if (outline === '') return [];
    const own = sceneLayers.filter(({ layer }) => {
      const id = layer === undefined ? undefined : this.layers[layer]?.id;
      return id !== undefined && layers.includes(id);
    });
    return (kind === 'print' ? own.slice(0, 1) : own).map(({ place }) => caretSheet(outline, place));
  }

  private look(): void {
    const { viewport, size, fallen } = this;
    if (size.width === 0 || size.height === 0) return;
    const margin = Math.round(MARGIN * Math.max(size.width, size.height));
    this.painter.look({ viewport, size, margin, ratio: window.devicePixelRatio, fallen });
  }

  private painted({ bitmap, view }: Painting): void {
    const { width, height } = bitmap;
    if (this.element.width !== width) this.element.width = width;
    if (this.element.height !== height) this.element.height = height;
    this.element.style.width = `${width / view.ratio}px`;
    this.element.style.height = `${height / view.ratio}px`;
    this.context?.transferFromImageBitmap(bitmap);
    this.onCanvas = view;
    this.follow();
  }

  /** Lays what has been painted where it belongs in the present view. */
  private follow(): void {
    if (!this.onCanvas) return;
    const { viewport: old, margin } = this.onCanvas;
    const { viewport: now } = this;
    const scale = now.scale / old.scale;
    const [x, y] = [now.x - (old.x + margin) * scale, now.y - (old.y + margin) * scale];
    this.element.style.transform = `matrix(${scale}, 0, 0, ${scale}, ${x}, ${y})`;
  }

  /** What hangs on nothing drops out of the sheet as one looks at it; at once where motion is not wanted. */
  private letFall(): void {
    this.stopFall();
    this.fallen = 1;
    if (prefersReducedMotion()) return;
    this.stopFall = animate((share) => {
      this.fallen = share;
      this.element.classList.toggle('falling', share < 1);
      this.look();
    });
  }
}

function sheetOf({ place, parts }: SceneLayer): PaintedSheet {
  return { place, parts };
}

function caretSheet(outline: string, place: Matrix): PaintedSheet {
  return { place, parts: CARET_ROLES.map((role) => ({ role, outline, fill: 'none', opacity: 1 })) };
}
