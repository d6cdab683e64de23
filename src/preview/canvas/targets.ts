/**
 * The parts of the picture as elements, which a pointer can take hold of; the painter paints them, and nobody sees them
 * here. Their outlines follow the picture when the page has nothing else to do.
 */
import { multiply, translation } from '../../geometry/base/matrix';
import type { Scene, SceneLayer } from '../../picture/scene';
import { setAttributes, svg, syncChildren } from '../dom/dom';
import { matrixText } from '../dom/matrix-text';
import { type Size, type Viewport, viewportBox } from '../state/viewport';
import { OutlinePath } from './outline-path';

/** Milliseconds after which they follow even if the page has much to do. */
const PATIENCE = 500;

export class Targets {
  /** Everything in sheet mm. */
  readonly element = svg('g', { class: 'targets', 'aria-hidden': 'true' });
  private readonly outlines = new WeakMap<Element, OutlinePath>();
  private sheets: readonly SceneLayer[] = [];
  private viewport: Viewport = { scale: 1, x: 0, y: 0 };
  private size: Size = { width: 0, height: 0 };
  private waiting = 0;

  draw({ sceneLayers }: Scene): void {
    this.sheets = sceneLayers;
    syncChildren(
      this.element,
      sceneLayers,
      () => svg('g'),
      (group, sheet) => this.drawSheet(group, sheet),
    );
    this.follow();
  }

  private drawSheet(group: SVGGElement, { layer, place, parts }: SceneLayer): void {
    setAttributes(group, { transform: matrixText(place), 'data-layer': layer ?? '' });
    syncChildren(
      group,
      parts,
      () => this.makeOutline(),
      (path, { role, fill, opacity, fall }) =>
        setAttributes(path, {
          class: role,
          fill,
          'fill-opacity': opacity,
          transform: fall ? `translate(${fall.x} ${fall.y})` : '',
        }),
    );
  }

  place(view: Viewport, size: Size): void {
    [this.viewport, this.size] = [view, size];
    setAttributes(this.element, { transform: `matrix(${view.scale} 0 0 ${view.scale} ${view.x} ${view.y})` });
    this.follow();
  }

  private follow(): void {
    if (this.waiting) return;
    this.waiting = requestIdleCallback(
      () => {
        this.waiting = 0;
        this.outline();
      },
      { timeout: PATIENCE },
    );
  }

  private outline(): void {
    this.sheets.forEach(({ place, parts }, order) =>
      parts.forEach(({ outline, fall }, index) => {
        const path = this.element.children[order]?.children[index];
        const line = path && this.outlines.get(path);
        const lies = fall ? multiply(place, translation(fall.x, fall.y)) : place;
        line?.set(outline);
        line?.show(viewportBox(this.viewport, this.size, lies), this.viewport.scale, 1);
      }),
    );
  }

  private makeOutline(): SVGPathElement {
    const outline = new OutlinePath();
    this.outlines.set(outline.element, outline);
    return outline.element;
  }
}
