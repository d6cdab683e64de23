/** The whole page: keeps what is chosen, and shows each new stack without losing the place. */
import type { Stack } from '../protocol';
import { COLOURS, type Look, type LookKind } from '../picture/look';
import { benchLook, groundOf } from './state/view-model';
import {
  carryOver,
  FIRST_STATE,
  isFindingShown,
  isLayerShown,
  layerKeys,
  restoredState,
  type BenchState,
} from './state/state';
import { Calibration, MM_PER_INCH } from './panels/calibration';
import { html, setText } from './dom/dom';
import { FindingList } from './panels/finding-list';
import { Hand, type HandHost } from './tools/tool-controller';
import { HandTools } from './tools/tool-bar';
import { LayerList } from './panels/layer-list';
import { LookOptions } from './panels/view-options';
import { Measures } from './state/measures';
import type { Questions } from './state/requests';
import { IN_REGISTER, roundedSlip, type Slip } from './state/slip';
import { followSlips } from './tools/slip-gestures';
import { heldKey, SlipPanel } from './panels/slip-panel';
import { Surface } from './canvas/canvas';
import { Toolbar } from './panels/toolbar';
import type { View } from './state/viewport';

/** What is kept when the panel is hidden or the editor starts anew. */
export interface Kept {
  readonly uri: string | undefined;
  readonly state: BenchState;
  readonly view: View | undefined;
  /** Whether the panel stays with its file. */
  readonly pinned?: boolean;
}

export interface PageHost {
  readonly questions: Questions;
  keep(kept: Kept): void;
  reveal(uri: string, from: number, to: number): void;
  begin(uri: string): void;
  pin(pinned: boolean): void;
  saveAs(): void;
  /** Keeps how many CSS pixels the screen has to the inch. */
  screen(pixelsPerInch: number): void;
  /** Give a layer another place in the painting order. */
  reorder(stack: Stack, layer: number, to: number): void;
}

export class BenchPage {
  readonly element: HTMLElement;
  private stack: Stack | undefined;
  private state: BenchState;
  private uri: string | undefined;
  private readonly surface: Surface;
  private readonly hand: Hand;
  private readonly tools: HandTools;
  private readonly toolbar: Toolbar;
  private readonly options: LookOptions;
  private readonly slips: SlipPanel;
  private readonly measures: Measures;
  private pinned: boolean;
  private chosen: View | undefined;
  private readonly layers = new LayerList({
    use: (index) => this.layerUsed(index),
    move: (index, to) => this.stack && this.host.reorder(this.stack, index, to),
  });
  private readonly findings = new FindingList((index) => this.choose(index));
  private readonly heading = html('h2');
  private readonly notice: HTMLElement;

  constructor(
    private readonly host: PageHost,
    kept: Kept | undefined,
  ) {
    this.state = restoredState(kept?.state);
    this.uri = kept?.uri;
    this.pinned = kept?.pinned === true;
    this.measures = new Measures(host.questions, () => this.draw());
    this.options = new LookOptions({ change: (change) => this.change(change) });
    this.slips = new SlipPanel({
      change: (change) => this.change(change),
      slip: (slip) => this.slip(slip),
      sweep: () => void this.measures.sweep(),
    });
    this.hand = new Hand(this.handHost());
    this.surface = new Surface(
      (index) => this.choose(index),
      this.hand,
      (view, chosen) => this.moved(view, chosen),
    );
    this.surface.look(kept?.view);
    this.toolbar = new Toolbar({
      mode: (mode) => this.lookAs(mode),
      zoom: (factor) => this.surface.zoom(factor),
      fit: () => this.surface.look(undefined),
      trueSize: () => this.surface.trueSize(),
      pin: () => this.pin(!this.pinned),
      saveAs: () => host.saveAs(),
    });
    this.toolbar.drawPin(this.pinned);
    this.tools = this.makeTools();
    this.toolbar.element.append(this.tools.element);
    this.followSlips();
    this.notice = this.makeNotice();
    this.element = html('main', { class: 'bench' }, [
      this.toolbar.element,
      this.options.element,
      this.notice,
      this.surface.element,
      html('div', { class: 'lists' }, [
        html('section', { 'aria-label': 'Layers' }, [
          html('h2', {}, ['Layers, first painted first']),
          this.layers.element,
        ]),
        html('section', { 'aria-label': 'Slip' }, [this.slips.element]),
        html('section', { 'aria-label': 'Findings' }, [this.heading, this.findings.element]),
      ]),
    ]);
  }

  show(stack: Stack): void {
    // The files of a project make one print: to go from one to the other changes nothing of what is looked at.
    const another = !stack.documents.some(({ uri }) => uri === this.uri);
    this.uri = stack.uri;
    this.state = another ? firstStateLike(this.state) : carryOver(this.state, this.stack, stack);
    this.stack = stack;
    if (another) this.surface.look(undefined);
    this.draw();
  }

  /** @param pixelsPerInch CSS pixels */
  setScreen(pixelsPerInch: number): void {
    this.surface.setScreen(pixelsPerInch);
  }

  /** Marks what the text at the caret draws. */
  mark(outline: string): void {
    this.surface.mark(outline);
  }

  private draw(): void {
    const { stack, state } = this;
    if (!stack) return;
    this.notice.hidden = stack.stencil;
    this.tools.draw(stack.bed);
    this.measures.update(stack, state);
    this.surface.draw(stack, state, this.look(stack));
    this.options.draw(state, groundOf(stack, state) ?? COLOURS.ground);
    this.slips.draw(stack, state, this.measures.figures);
    const rows = stack.layers.map((layer, index) => ({ layer, shown: isLayerShown(state, stack, index) }));
    this.layers.draw(rows, state.mode);
    const shown = stack.findings.flatMap((finding, index) =>
      isFindingShown(state, stack, finding)
        ? [
            {
              finding,
              index,
              selected: index === state.selected,
              layerName: finding.layer === undefined ? undefined : stack.layers[finding.layer]?.name,
            },
          ]
        : [],
    );
    this.findings.draw(shown);
    setText(this.heading, headingFor(shown.length, stack.findings.length));
  }

  /** What is shown now, for whoever saves it. */
  get picture(): { readonly look: Look; readonly names: readonly string[] } | undefined {
    return this.stack && { look: this.look(this.stack), names: this.stack.layers.map(({ name }) => name) };
  }

  private look(stack: Stack): Look {
    return benchLook(stack, this.state, {
      necks: this.measures.necks(this.state),
      bare: this.measures.bareOutline,
      aspect: this.surface.aspect ?? 1.5,
    });
  }

  private change(change: Partial<BenchState>): void {
    this.state = { ...this.state, ...change };
    this.draw();
  }

  /** Sheets that are laid out take another room than one place: then the whole picture is shown. */
  private lookAs(mode: LookKind): void {
    const elsewhere = (mode === 'sheets') !== (this.state.mode === 'sheets');
    this.change({ mode });
    if (elsewhere) this.surface.look(undefined);
  }

  private pin(pinned: boolean): void {
    this.pinned = pinned;
    this.toolbar.drawPin(pinned);
    this.host.pin(pinned);
    this.keep();
  }

  private slip(slip: Slip): void {
    const held = this.stack && heldKey(this.stack, this.state);
    if (held !== undefined) this.change({ slips: { ...this.state.slips, [held]: roundedSlip(slip) } });
  }

  private followSlips(): void {
    followSlips(this.surface.canvas, {
      printed: () => this.state.mode === 'print',
      slipping: () => this.state.slipping && this.state.mode === 'print',
      scale: () => this.surface.view.scale,
      hold: (layer) => {
        if (!this.stack) return undefined;
        const key = layer === undefined ? undefined : layerKeys(this.stack)[layer];
        if (key !== undefined && key !== this.state.held) this.change({ held: key });
        return this.state.slips[heldKey(this.stack, this.state) ?? ''] ?? IN_REGISTER;
      },
      slip: (slip) => this.slip(slip),
    });
  }

  private layerUsed(index: number): void {
    const name = this.stack && layerKeys(this.stack)[index];
    if (name === undefined) return;
    const { mode, hidden } = this.state;
    if (mode === 'sheet') this.change({ sheet: index });
    else this.change({ hidden: hidden.includes(name) ? hidden.filter((other) => other !== name) : [...hidden, name] });
  }

  private choose(index: number): void {
    const finding = this.stack?.findings[index];
    if (!this.stack || !finding) return;
    this.change({ selected: index });
    this.surface.bringIntoView(index);
    if (finding.check === 'floating-island') void this.hand.plan(index);
    this.host.reveal(finding.uri, finding.from, finding.to);
  }

  private moved(view: View, chosen: View | undefined): void {
    this.toolbar.draw(this.state.mode, view, this.surface.trueScale);
    this.chosen = chosen;
    this.keep();
  }

  private handHost(): HandHost {
    const { questions } = this.host;
    return {
      partAt: (places, reach, sheets) => questions.ask({ kind: 'partAt', places, reach, sheets }),
      part: (layer, number) => questions.ask({ kind: 'part', layer, number }),
      bridgeAt: (layer, point) => questions.ask({ kind: 'bridgeAt', layer, point }),
      bridgePlan: (finding) => questions.ask({ kind: 'bridgePlan', version: this.stack?.version ?? 0, finding }),
      putIn: async () => (await questions.ask({ kind: 'putIn' })) ?? false,
      reveal: ({ uri, from, to }) => this.host.reveal(uri, from, to),
      bringIntoView: (point) => this.surface.bringPointIntoView(point),
      slipping: () => this.state.slipping && this.state.mode === 'print',
    };
  }

  private makeTools(): HandTools {
    const calibration = new Calibration((pixelsPerInch) => {
      this.setScreen(pixelsPerInch);
      this.host.screen(pixelsPerInch);
    });
    return new HandTools(this.hand.choice.element, calibration, {
      calibrate: () => calibration.open(this.surface.trueScale * MM_PER_INCH),
      bed: (shown) => this.surface.showBed(shown),
    });
  }

  private keep(): void {
    this.host.keep({ uri: this.uri, state: this.state, view: this.chosen, pinned: this.pinned });
  }

  private makeNotice(): HTMLElement {
    const button = html('vscode-button' as 'button', {}, ['Begin a stencil here']);
    button.addEventListener('click', () => {
      if (this.uri !== undefined) this.host.begin(this.uri);
    });
    const text = 'This drawing has not been called a stencil yet, so nothing is underlined in its text.';
    const notice = html('div', { class: 'notice' }, [html('p', {}, [text]), button]);
    notice.hidden = true;
    return notice;
  }
}

/** Another drawing is looked at in the same way, but with nothing hidden, slipped or chosen. */
function firstStateLike({ mode, opacity, apart }: BenchState): BenchState {
  return { ...FIRST_STATE, mode, opacity, apart };
}

function headingFor(shown: number, all: number): string {
  if (all === 0) return 'Findings: none';
  return shown === all ? `Findings: ${all}` : `Findings: ${shown} of ${all} shown`;
}
