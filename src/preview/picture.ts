/** Paints a look into the page: its plates and parts as SVG elements, made once and then kept up to date. */
import { IDENTITY } from '../geometry/matrix';
import type { Matrix } from '../geometry/curve';
import type { Look, Part, Plate } from '../picture/look';
import { setAttributes, svg, syncChildren } from './dom';
import type { View } from './view';

/** Pixels between the lines of a hatch. */
const HATCH = 7;

export class Picture {
  /** Everything in sheet mm. */
  readonly element = svg('g');
  readonly definitions = svg('defs');
  private readonly hatches = new Map<string, { readonly pattern: SVGPatternElement; readonly slant: number }>();
  private readonly plates = svg('g');
  /** What the text at the caret draws: a dark line over a wider light one, seen on any paint. */
  private readonly caret = ['caret-halo', 'caret'].map((name) => svg('path', { class: name, d: '' }));
  private view: View = { scale: 1, x: 0, y: 0 };
  /** The sheet whose islands have fallen already. */
  private fallen: string | undefined;

  constructor() {
    this.element.append(this.plates, ...this.caret);
  }

  draw(look: Look): void {
    syncChildren(this.plates, look.plates, () => svg('g'), (group, plate) => this.drawPlate(group, plate));
    const sheet = look.kind === 'sheet' ? String(look.plates[0]?.layer) : undefined;
    if (sheet !== undefined && sheet !== this.fallen) this.letFall(look);
    this.fallen = sheet;
    // The caret's shape lies in register, where the sheets of this look do not.
    for (const line of this.caret) setAttributes(line, { visibility: look.kind === 'sheets' ? 'hidden' : 'visible' });
    this.place(this.view);
  }

  mark(outline: string): void {
    for (const line of this.caret) setAttributes(line, { d: outline });
  }

  place(view: View): void {
    this.view = view;
    setAttributes(this.element, { transform: `matrix(${view.scale} 0 0 ${view.scale} ${view.x} ${view.y})` });
    const shift = `translate(${2 / view.scale} ${3 / view.scale})`;
    for (const shadow of this.plates.querySelectorAll('.shadow')) setAttributes(shadow, { transform: shift });
    for (const { pattern, slant } of this.hatches.values()) {
      setAttributes(pattern, { patternTransform: `scale(${1 / view.scale}) rotate(${slant})` });
    }
  }

  private drawPlate(group: SVGGElement, { layer, place, parts }: Plate): void {
    setAttributes(group, { transform: matrixText(place), 'data-layer': layer ?? '' });
    syncChildren(group, parts, () => svg('path', { 'fill-rule': 'evenodd' }), (path, part) => this.drawPart(path, part));
  }

  private drawPart(path: SVGPathElement, part: Part): void {
    const { role, outline, fill, opacity, hatch, fall } = part;
    setAttributes(path, {
      class: role, d: outline,
      fill: hatch === undefined ? fill : `url(#${this.hatchFor(part, hatch)})`,
      'fill-opacity': hatch === undefined ? opacity : 1,
      transform: fall ? `translate(${fall.x} ${fall.y})` : '',
    });
  }

  private hatchFor({ role, fill, opacity }: Part, slant: number): string {
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
  private letFall({ plates }: Look): void {
    if (prefersStillness()) return;
    plates.forEach(({ parts }, order) => parts.forEach(({ fall }, index) => {
      const path = this.plates.children[order]?.children[index];
      if (!fall || !path) return;
      const start = { translate: `${-fall.x}px ${-fall.y}px` };
      path.animate([start, { translate: '0 0' }], { duration: 450, delay: 150, fill: 'backwards', easing: 'ease-in' });
    }));
  }
}

function matrixText({ a, b, c, d, e, f }: Matrix): string {
  return a === IDENTITY.a && b === 0 && c === 0 && d === IDENTITY.d && e === 0 && f === 0
    ? '' : `matrix(${a} ${b} ${c} ${d} ${e} ${f})`;
}

function prefersStillness(): boolean {
  return document.body.classList.contains('vscode-reduce-motion')
    || matchMedia('(prefers-reduced-motion: reduce)').matches;
}
