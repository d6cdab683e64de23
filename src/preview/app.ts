/** The whole page: keeps what is chosen, and shows each new stack without losing the place. */

import type { LayerId } from '../engine/index';
import { COLOURS, type Scene, type ViewMode } from '../picture/scene';
import type { PreviewStack } from '../protocol/index';
import { Canvas } from './canvas/canvas';
import { html, setText } from './dom/dom';
import { Calibration, MM_PER_INCH } from './panels/calibration';
import { FindingList } from './panels/finding-list';
import { LayerList } from './panels/layer-list';
import { heldKey, SlipPanel } from './panels/slip-panel';
import { Toolbar } from './panels/toolbar';
import { ViewOptions } from './panels/view-options';
import { Measures } from './state/measures';
import type { BenchRequests } from './state/requests';
import { IN_REGISTER, roundedSlip, type Slip } from './state/slip';
import {
  type BenchState,
  carryOver,
  FIRST_STATE,
  isFindingShown,
  isLayerShown,
  layerKeys,
  restoredState,
} from './state/state';
import { benchScene, groundOf } from './state/view-model';
import type { Viewport } from './state/viewport';
import { followSlips } from './tools/slip-gestures';
import { ToolButtons } from './tools/tool-bar';
import type { ToolHost } from './tools/tool-context';
import { ToolController } from './tools/tool-controller';

/** What is kept when the panel is hidden or the editor starts anew. */
export interface SavedPage {
  readonly uri: string | undefined;
  readonly state: BenchState;
  readonly view: Viewport | undefined;
  /** Whether the panel stays with its file. */
  readonly pinned?: boolean;
}

export interface PageHost {
  readonly requests: BenchRequests;
  saveState(kept: SavedPage): void;
  reveal(uri: string, from: number, to: number): void;
  begin(uri: string): void;
  pin(pinned: boolean): void;
  saveAs(): void;
  /** Keeps how many CSS pixels the screen has to the inch. */
  screen(pixelsPerInch: number): void;
  /** Give a layer another place in the painting order. */
  reorder(stack: PreviewStack, layer: number, to: number): void;
}

export class BenchPage {
  readonly element: HTMLElement;
  private stack: PreviewStack | undefined;
  private state: BenchState;
  private uri: string | undefined;
  private readonly canvas: Canvas;
  private readonly toolController: ToolController;
  private readonly toolButtons: ToolButtons;
  private readonly toolbar: Toolbar;
  private readonly options: ViewOptions;
  private readonly slips: SlipPanel;
  private readonly measures: Measures;
  private pinned: boolean;
  private chosen: Viewport | undefined;
  private readonly layers = new LayerList({
    use: (index) => this.layerUsed(index),
    move: (index, to) => this.stack && this.host.reorder(this.stack, index, to),
  });
  private readonly findings = new FindingList((index) => this.choose(index));
  private readonly heading = html('h2');
  private readonly notice: HTMLElement;

  private readonly host: PageHost;

  constructor(host: PageHost, kept: SavedPage | undefined) {
    this.host = host;

    this.state = restoredState(kept?.state);
    this.uri = kept?.uri;
    this.pinned = kept?.pinned === true;
    this.measures = new Measures(host.requests, () => this.draw());
    this.options = new ViewOptions({ change: (change) => this.change(change) });
    this.slips = new SlipPanel({
      change: (change) => this.change(change),
      slip: (slip) => this.slip(slip),
      sweep: () => void this.measures.sweep(),
    });
    this.toolController = new ToolController(this.toolHost());
    this.canvas = new Canvas(
      (index) => this.choose(index),
      this.toolController,
      (view, chosen) => this.moved(view, chosen),
    );
    this.canvas.setViewport(kept?.view);
    this.toolbar = new Toolbar({
      mode: (mode) => this.showMode(mode),
      zoom: (factor) => this.canvas.zoom(factor),
      fit: () => this.canvas.setViewport(undefined),
      trueSize: () => this.canvas.trueSize(),
      pin: () => this.pin(!this.pinned),
      saveAs: () => host.saveAs(),
    });
    this.toolbar.drawPin(this.pinned);
    this.toolButtons = this.makeTools();
    this.toolbar.element.append(this.toolButtons.element);
    this.followSlips();
    this.notice = this.makeNotice();
    this.element = html('main', { class: 'bench' }, [
      this.toolbar.element,
      this.options.element,
      this.notice,
      this.canvas.element,
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

  show(stack: PreviewStack): void {
    // The files of a project make one print: to go from one to the other changes nothing of what is looked at.
    const another = !stack.documents.some(({ uri }) => uri === this.uri);
    this.uri = stack.uri;
    this.state = another ? firstStateLike(this.state) : carryOver(this.state, this.stack, stack);
    this.stack = stack;
    if (another) this.canvas.setViewport(undefined);
    this.draw();
  }

  /** @param pixelsPerInch CSS pixels */
  setScreen(pixelsPerInch: number): void {
    this.canvas.setScreen(pixelsPerInch);
  }

  /** Marks what the text at the caret draws. */
  mark(outline: string): void {
    this.canvas.mark(outline);
  }

  private draw(): void {
    const { stack, state } = this;
    if (!stack) return;
    this.notice.hidden = stack.stencil;
    this.toolButtons.draw(stack.bed);
    this.measures.update(stack, state);
    this.canvas.draw(stack, state, this.look(stack));
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
  get picture(): { readonly scene: Scene; readonly names: readonly string[] } | undefined {
    return this.stack && { scene: this.look(this.stack), names: this.stack.layers.map(({ name }) => name) };
  }

  private look(stack: PreviewStack): Scene {
    return benchScene(stack, this.state, {
      necks: this.measures.necks(this.state),
      bare: this.measures.bareOutline,
      aspect: this.canvas.aspect ?? 1.5,
    });
  }

  private change(change: Partial<BenchState>): void {
    this.state = { ...this.state, ...change };
    this.draw();
  }

  /** Sheets that are laid out take another room than one place: then the whole picture is shown. */
  private showMode(mode: ViewMode): void {
    const elsewhere = (mode === 'sheets') !== (this.state.mode === 'sheets');
    this.change({ mode });
    if (elsewhere) this.canvas.setViewport(undefined);
  }

  private pin(pinned: boolean): void {
    this.pinned = pinned;
    this.toolbar.drawPin(pinned);
    this.host.pin(pinned);
    this.saveState();
  }

  private slip(slip: Slip): void {
    const held = this.stack && heldKey(this.stack, this.state);
    if (held !== undefined) this.change({ slips: { ...this.state.slips, [held]: roundedSlip(slip) } });
  }

  private followSlips(): void {
    followSlips(this.canvas.canvas, {
      printed: () => this.state.mode === 'print',
      slipping: () => this.state.slipping && this.state.mode === 'print',
      scale: () => this.canvas.view.scale,
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
    this.canvas.bringIntoView(index);
    if (finding.island) void this.toolController.plan(finding.id);
    this.host.reveal(finding.uri, finding.from, finding.to);
  }

  private moved(view: Viewport, chosen: Viewport | undefined): void {
    this.toolbar.draw(this.state.mode, view, this.canvas.trueScale);
    this.chosen = chosen;
    this.saveState();
  }

  private toolHost(): ToolHost {
    const { requests: questions } = this.host;
    return {
      partAt: (places, reach, sheets) => questions.ask({ kind: 'partAt', places, reach, sheets }),
      part: (layer, number) => questions.ask({ kind: 'part', layer, number }),
      bridgeAt: (layer, point) => questions.ask({ kind: 'bridgeAt', layer, point, version: this.versionOf(layer) }),
      bridgePlan: (finding) => questions.ask({ kind: 'bridgePlan', finding }),
      putIn: async () => (await questions.ask({ kind: 'putIn' })) ?? false,
      reveal: ({ uri, from, to }) => this.host.reveal(uri, from, to),
      bringIntoView: (point) => this.canvas.bringPointIntoView(point),
      slipping: () => this.state.slipping && this.state.mode === 'print',
    };
  }

  /** Of the document that a layer is cut from. */
  private versionOf(layer: LayerId): number {
    const uri = this.stack?.layers.find(({ id }) => id === layer)?.uri;
    return this.stack?.documents.find((document) => document.uri === uri)?.version ?? 0;
  }

  private makeTools(): ToolButtons {
    const calibration = new Calibration((pixelsPerInch) => {
      this.setScreen(pixelsPerInch);
      this.host.screen(pixelsPerInch);
    });
    return new ToolButtons(this.toolController.choice.element, calibration, {
      calibrate: () => calibration.open(this.canvas.trueScale * MM_PER_INCH),
      bed: (shown) => this.canvas.showBed(shown),
    });
  }

  private saveState(): void {
    this.host.saveState({ uri: this.uri, state: this.state, view: this.chosen, pinned: this.pinned });
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
