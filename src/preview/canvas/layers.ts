/** Paints a look into the page: its plates and parts as SVG elements, made once and then kept up to date. */
import { multiply, translation } from '../../geometry/base/matrix';
import type { Scene, SceneLayer, ScenePart } from '../../picture/scene';
import { setAttributes, svg, syncChildren } from '../dom/dom';
import { matrixText } from '../dom/matrix-text';
import { type Size, type Viewport, viewportBox } from '../state/viewport';
import { OutlinePath } from './outline-path';

/** Pixels between the lines of a hatch. */
const HATCH = 7;

export class Picture {
  /** Everything in sheet mm. */
  readonly element = svg('g');
  readonly definitions = svg('defs');
  private readonly hatches = new Map<string, { readonly pattern: SVGPatternElement; readonly slant: number }>();
  private readonly plates = svg('g');
  /** What the text at the caret draws: a dark line over a wider light one, seen on any paint. */
  private readonly caret = ['caret-halo', 'caret'].map((name) => new OutlinePath({ class: name }));
  private readonly outlines = new WeakMap<Element, OutlinePath>();
  private scene: Scene | undefined;
  private viewport: Viewport = { scale: 1, x: 0, y: 0 };
  private size: Size = { width: 0, height: 0 };
  private moving = false;
  /** The sheet whose islands have fallen already. */
  private fallen: string | undefined;

  constructor() {
    this.element.append(this.plates, ...this.caret.map(({ element }) => element));
  }

  draw(look: Scene): void {
    this.scene = look;
    syncChildren(
      this.plates,
      look.sceneLayers,
      () => svg('g'),
      (group, plate) => this.drawSceneLayer(group, plate),
    );
    const sheet = look.kind === 'sheet' ? String(look.sceneLayers[0]?.layer) : undefined;
    if (sheet !== undefined && sheet !== this.fallen) this.letFall(look);
    this.fallen = sheet;
    // The caret's shape lies in register, where the sheets of this look do not.
    const visibility = look.kind === 'sheets' ? 'hidden' : 'visible';
    for (const { element } of this.caret) setAttributes(element, { visibility });
    this.place(this.viewport, this.size);
  }

  mark(outline: string): void {
    for (const line of this.caret) line.set(outline);
    this.place(this.viewport, this.size);
  }

  place(view: Viewport, size: Size): void {
    [this.viewport, this.size] = [view, size];
    setAttributes(this.element, { transform: `matrix(${view.scale} 0 0 ${view.scale} ${view.x} ${view.y})` });
    const shift = `translate(${2 / view.scale} ${3 / view.scale})`;
    for (const shadow of this.plates.querySelectorAll('.shadow')) setAttributes(shadow, { transform: shift });
    for (const { pattern, slant } of this.hatches.values()) {
      setAttributes(pattern, { patternTransform: `scale(${1 / view.scale}) rotate(${slant})` });
    }
    this.showOutlines();
  }

  /**
   * A movement goes on: what is drawn may be one level of detail off.
   * @param shifted only to the side: then the picture is a layer of its own, and what is painted is shifted as it is
   */
  move(shifted: boolean): void {
    this.moving = true;
    this.element.classList.toggle('gliding', shifted);
    this.element.classList.toggle('scaled', !shifted);
  }

  rest(): void {
    this.moving = false;
    this.element.classList.remove('gliding', 'scaled');
    this.place(this.viewport, this.size);
  }

  /** Of each outline only what can be seen is in the page, with as many points as can be told apart. */
  private showOutlines(): void {
    const { viewport: view, size } = this;
    const slack = this.moving ? 1 : 0;
    for (const line of this.caret) line.show(viewportBox(view, size), view.scale, slack);
    this.scene?.sceneLayers.forEach(({ place, parts }, order) =>
      parts.forEach(({ fall }, index) => {
        const path = this.plates.children[order]?.children[index];
        const lies = fall ? multiply(place, translation(fall.x, fall.y)) : place;
        if (path) this.outlines.get(path)?.show(viewportBox(view, size, lies), view.scale, slack);
      }),
    );
  }

  private makeOutline(): SVGPathElement {
    const outline = new OutlinePath();
    this.outlines.set(outline.element, outline);
    return outline.element;
  }

  private drawSceneLayer(group: SVGGElement, { layer, place, parts }: SceneLayer): void {
    setAttributes(group, { transform: matrixText(place), 'data-layer': layer ?? '' });
    syncChildren(
      group,
      parts,
      () => this.makeOutline(),
      (path, part) => this.drawPart(path, part),
    );
  }

  private drawPart(path: SVGPathElement, part: ScenePart): void {
    const { role, outline, fill, opacity, hatch, fall } = part;
    this.outlines.get(path)?.set(outline);
    setAttributes(path, {
      class: role,
      fill: hatch === undefined ? fill : `url(#${this.hatchFor(part, hatch)})`,
      'fill-opacity': hatch === undefined ? opacity : 1,
      transform: fall ? `translate(${fall.x} ${fall.y})` : '',
    });
  }

  private hatchFor({ role, fill, opacity }: ScenePart, slant: number): string {
    const name = `hatch-${role}-${String(slant).replace('.', '_')}`;
    if (!this.hatches.has(name)) {
      const pattern = svg('pattern', { id: name, width: HATCH, height: HATCH, patternUnits: 'userSpaceOnUse' }, [
        svg('rect', { width: HATCH, height: HATCH, fill, 'fill-opacity': opacity }),
        svg('path', { class: 'hatch-line', d: `M0 0V${HATCH}` }),
      ]);
      this.hatches.set(name, { pattern, slant });
      this.definitions.append(pattern);
    }
    return name;
  }

  /** What hangs on nothing drops out of the sheet as one looks at it; at once where motion is not wanted. */
  private letFall({ sceneLayers: plates }: Scene): void {
    // The elements are those of the sheet that was looked at before; what falls there falls no more.
    for (const animation of this.plates.getAnimations({ subtree: true })) animation.cancel();
    if (prefersReducedMotion()) return;
    plates.forEach(({ parts }, order) =>
      parts.forEach(({ fall }, index) => {
        const path = this.plates.children[order]?.children[index];
        if (!fall || !path) return;
        const start = { translate: `${-fall.x}px ${-fall.y}px` };
        path.animate([start, { translate: '0 0' }], {
          duration: 450,
          delay: 150,
          fill: 'backwards',
          easing: 'ease-in',
        });
      }),
    );
  }
}

function prefersReducedMotion(): boolean {
  return (
    document.body.classList.contains('vscode-reduce-motion') || matchMedia('(prefers-reduced-motion: reduce)').matches
  );
}
