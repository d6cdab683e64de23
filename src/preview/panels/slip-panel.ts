/** Sheets out of register: sliders for the one that is held, what comes bare, and the sweep to every side. */

import { count } from '../../config/values';
import type { PreviewStack } from '../../protocol/index';
import type { BareAfterSlip, SlipSweep } from '../../protocol/views';
import { html, setAttributes, setText, svg, syncChildren } from '../dom/dom';
import { millimetres } from '../dom/scale-steps';
import { IN_REGISTER, isSlipped, MAX_SHIFT, MAX_TURN, type Slip } from '../state/slip';
import { type BenchState, layerKeys } from '../state/state';

export interface SlipPanelActions {
  change(change: Partial<BenchState>): void;
  /** Shift the held layer. */
  slip(slip: Slip): void;
  sweep(): void;
}

export interface SlipFigures {
  readonly bare: BareAfterSlip | undefined;
  readonly sweeps: readonly SlipSweep[];
  readonly sweeping: boolean;
}

type Part = keyof Slip;

const SLIDERS: readonly { part: Part; label: string; name: string; most: number; step: number; unit: string }[] = [
  { part: 'x', label: 'Right', name: 'Shift to the right in mm', most: MAX_SHIFT, step: 0.05, unit: 'mm' },
  { part: 'y', label: 'Down', name: 'Shift down in mm', most: MAX_SHIFT, step: 0.05, unit: 'mm' },
  { part: 'turn', label: 'Turn', name: 'Turn clockwise in degrees', most: MAX_TURN, step: 0.05, unit: '°' },
];

export class SlipPanel {
  readonly element: HTMLDetailsElement;
  private readonly layer = html('select', { 'aria-label': 'Sheet out of register' });
  private readonly byHand = html('input', { type: 'checkbox' });
  private readonly sliders = SLIDERS.map((slider) => ({ ...slider, ...sliderRow(slider) }));
  private readonly told = html('output', { class: 'told', 'aria-live': 'polite' });
  private readonly pairs = html('ul', { class: 'pairs' });
  private readonly sweepButton = html('vscode-button' as 'button', { secondary: '' });
  private readonly sweeps = html('ol', { class: 'sweeps' });
  private slip = IN_REGISTER;

  constructor(actions: SlipPanelActions) {
    this.layer.addEventListener('change', () => actions.change({ held: this.layer.value }));
    this.byHand.addEventListener('change', () => actions.change({ slipping: this.byHand.checked }));
    for (const { part, input } of this.sliders) {
      input.addEventListener('input', () => actions.slip({ ...this.slip, [part]: Number(input.value) }));
    }
    const back = html('button', { type: 'button', class: 'tool' }, ['Reset']);
    back.addEventListener('click', () => actions.change({ slips: {} }));
    this.sweepButton.addEventListener('click', () => actions.sweep());
    this.sweeps.addEventListener('click', ({ target }) => {
      const button = target instanceof Element ? target.closest('button') : null;
      const { key, x, y } = button?.dataset ?? {};
      if (key === undefined) return;
      actions.change({ held: key, slips: { [key]: { x: Number(x), y: Number(y), turn: 0 } } });
    });
    this.element = html('details', { class: 'slip' }, [
      html('summary', {}, [html('h2', {}, ['Misregistration'])]),
      html('div', { class: 'option-row' }, [
        html('label', {}, ['Sheet', this.layer]),
        html('label', {}, [this.byHand, 'Drag a sheet']),
        back,
      ]),
      ...this.sliders.map(({ row }) => row),
      this.told,
      this.pairs,
      this.sweepButton,
      this.sweeps,
    ]);
  }

  /** Whether its sliders are in sight. */
  get shown(): boolean {
    return this.element.open && this.element.offsetParent !== null;
  }

  draw(stack: PreviewStack, state: BenchState, { bare, sweeps, sweeping }: SlipFigures): void {
    this.element.hidden = state.mode !== 'print';
    const keys = layerKeys(stack);
    const held = heldKey(stack, state);
    syncChildren(
      this.layer,
      keys,
      () => html('option'),
      (option, key) => {
        setText(option, key);
        if (option.value !== key) option.value = key;
      },
    );
    if (held !== undefined) this.layer.value = held;
    this.byHand.checked = state.slipping;
    this.slip = state.slips[held ?? ''] ?? IN_REGISTER;
    for (const { part, input, output, unit } of this.sliders) {
      input.value = String(this.slip[part]);
      fillFromZero(input);
      setText(output, `${this.slip[part].toFixed(2)} ${unit}`);
    }
    setText(this.told, toldOf(Object.values(state.slips).some(isSlipped), bare));
    syncChildren(this.pairs, pairsOf(stack), () => html('li'), setText);
    setText(this.sweepButton, sweeping ? 'Testing…' : `Test all directions (${millimetres(stack.slip)} mm)`);
    syncChildren(this.sweeps, sweeps, makeSweep, (row, sweep) => drawSweep(row, sweep, stack));
  }
}

/** The layer that sliders and keys shift: the one that was chosen, else the last, which is sprayed over the others. */
export function heldKey(stack: PreviewStack, { held }: BenchState): string | undefined {
  const keys = layerKeys(stack);
  return held !== undefined && keys.includes(held) ? held : keys.at(-1);
}

/** Its track is filled from zero, which is in the middle, to its value. */
function fillFromZero(input: HTMLInputElement): void {
  const share = (Number(input.value) - Number(input.min)) / (Number(input.max) - Number(input.min));
  input.style.setProperty('--from', String(Math.min(share, 0.5)));
  input.style.setProperty('--to', String(Math.max(share, 0.5)));
}

function sliderRow({ label, name, most, step }: (typeof SLIDERS)[number]) {
  const input = html('input', { type: 'range', min: -most, max: most, step, 'aria-label': name });
  const output = html('output');
  return { input, output, row: html('label', { class: 'slider' }, [html('span', {}, [label]), input, output]) };
}

function toldOf(slipped: boolean, bare: BareAfterSlip | undefined): string {
  if (!slipped) return 'All sheets lie in register.';
  if (!bare) return 'Measuring…';
  const { area, places, whole } = bare;
  const edges = `${area2(whole)} mm² uncovered in all.`;
  if (area === 0) return `No bare ground between colours. ${edges}`;
  return `Bare ground between colours: ${area2(area)} mm² in ${count(places, 'place')}. ${edges}`;
}

/** What the checks have measured of neighbours. */
function pairsOf({ safeSlips, slip, layers }: PreviewStack): string[] {
  if (!safeSlips || layers.length < 2) return [];
  if (safeSlips.length === 0) return [`All neighbours tolerate ${millimetres(slip)} mm in any direction.`];
  return safeSlips.map(
    ({ layers: [a, b], safe }) =>
      `${layers[a]?.name ?? ''} and ${layers[b]?.name ?? ''} tolerate ${safe.toFixed(2)} mm.`,
  );
}

const area2 = (area: number): string => area.toFixed(2);

function makeSweep(): HTMLLIElement {
  return html('li', {}, [
    html('button', { type: 'button', class: 'sweep' }, [makeRose(), html('span', { class: 'sweep-text' })]),
  ]);
}

function drawSweep(item: HTMLLIElement, { layer, areas, slip, safe }: SlipSweep, stack: PreviewStack): void {
  const index = stack.layers.findIndex(({ id }) => id === layer);
  const key = layerKeys(stack)[index] ?? '';
  const most = Math.max(...areas);
  const worst = areas.indexOf(most);
  const angle = (worst / areas.length) * 2 * Math.PI;
  const button = item.firstElementChild as HTMLButtonElement;
  setAttributes(button, {
    'data-key': key,
    'data-x': (slip * Math.cos(angle)).toFixed(2),
    'data-y': (slip * Math.sin(angle)).toFixed(2),
  });
  const [rose, text] = button.children as unknown as [SVGSVGElement, HTMLElement];
  drawRose(rose, areas, stack.layers[index]?.paint ?? '#000000');
  setText(
    text,
    most === 0
      ? `${key}: tolerates ${millimetres(slip)} mm in any direction.`
      : `${key}: tolerates ${safe.toFixed(2)} mm. Moved ${millimetres(slip)} mm ${sideOf(angle)}, ${area2(most)} ` +
          'mm² stay bare.',
  );
}

const SIDES = [
  'to the right',
  'to the lower right',
  'down',
  'to the lower left',
  'to the left',
  'to the upper left',
  'up',
  'to the upper right',
];

function sideOf(angle: number): string {
  return SIDES[Math.round((angle / Math.PI) * 4) % 8] ?? '';
}

/** CSS pixels. */
const ROSE_RADIUS = 20;

/** How much ground comes bare by the side to which a sheet slips: the farther out, the more. */
function makeRose(): SVGSVGElement {
  return svg('svg', { class: 'rose', width: 44, height: 44, viewBox: '-22 -22 44 44', 'aria-hidden': 'true' }, [
    svg('circle', { class: 'rose-ring', r: ROSE_RADIUS }),
    svg('path', { class: 'rose-ring', d: 'M-20 0H20M0-20V20' }),
    svg('path', { class: 'petals' }),
  ]);
}

/** @param areas evenly round, the first to the right, then on clockwise */
function drawRose(rose: SVGSVGElement, areas: readonly number[], paint: string): void {
  const most = Math.max(...areas, Number.MIN_VALUE);
  const points = areas.map((area, index) => {
    const angle = (index / areas.length) * 2 * Math.PI;
    // Areas are told by area: twice as far out would look four times as much.
    const reach = ROSE_RADIUS * Math.sqrt(area / most);
    return `${(reach * Math.cos(angle)).toFixed(2)} ${(reach * Math.sin(angle)).toFixed(2)}`;
  });
  const petals = rose.lastElementChild;
  if (petals) setAttributes(petals, { d: `M${points.join('L')}Z`, fill: paint });
}
