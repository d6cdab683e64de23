/** The whole page: keeps what is chosen, and shows each new stack without losing the place. */

import { COLOURS, type Scene, type ViewMode } from '../picture/scene';
import type { PreviewStack } from '../protocol/index';
import { type BenchControls, benchToolbar, makeNearness } from './bench-commands';
import { Canvas } from './canvas/canvas';
import type { CaretShape } from './canvas/picture';
import { CutPanel } from './cutting/cut-panel';
import { html, setAttributes, setText } from './dom/dom';
import { keepFocus } from './dom/keep-focus';
import { BridgeLayerButton, whyNoPlan } from './panels/bridge-layer';
import { Calibration, MM_PER_INCH } from './panels/calibration';
import { FindingFilterHead } from './panels/finding-filter';
import { FindingList } from './panels/finding-list';
import { LayerList } from './panels/layer-list';
import { Lists } from './panels/lists';
import { OrderPanel } from './panels/order-panel';
import { RegisterChip } from './panels/register-chip';
import { heldKey, SlipPanel } from './panels/slip-panel';
import type { Toolbar } from './panels/toolbar';
import { ViewOptions } from './panels/view-options';
import { Warnings } from './panels/warnings';
import { arrangementFor } from './state/arrangement';
import { Measures } from './state/measures';
import type { BenchRequests } from './state/requests';
import { placeOfLayer } from './state/scene-places';
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
import { toolHost } from './tool-host';
import { followDocumentKeys } from './tools/document-keys';
import { followSlips } from './tools/slip-gestures';
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
  /** Files for the cutter; the page that hangs at the wall. */
  writeCut(): void;
  writeJob(): void;
  /** Takes back the last change of the text, or does it again. */
  undo(again: boolean): void;
  /** Saves the documents that are shown. */
  save(): void;
  /** Keeps how many CSS pixels the screen has to the inch. */
  screen(pixelsPerInch: number): void;
  /** Give a layer another place in the painting order. */
  reorder(stack: PreviewStack, layer: number, to: number): void;
  /** Put the layers into the order with the fewest islands, as it was told for this version of the document. */
  bestOrder(version: number): void;
}

export class BenchPage {
  readonly element: HTMLElement;
  private stack: PreviewStack | undefined;
  private state: BenchState;
  private uri: string | undefined;
  private readonly canvas: Canvas;
  /** What had the focus before the text took it. */
  private focused: Element | null = null;
  private readonly toolController: ToolController;
  private readonly toolbar: Toolbar;
  private readonly nearness = makeNearness();
  private readonly options: ViewOptions;
  private readonly slips: SlipPanel;
  private readonly measures: Measures;
  private pinned: boolean;
  private chosen: Viewport | undefined;
  private readonly layers = new LayerList({
    use: (index) => this.layerUsed(index),
    choose: (sheet) => this.change({ sheet }),
    move: (index, to) => this.stack && this.host.reorder(this.stack, index, to),
    say: (text) => setText(this.live, text),
  });
  private readonly order = new OrderPanel({
    ask: () => this.host.requests.ask({ kind: 'bestOrder' }),
    apply: (version) => this.host.bestOrder(version),
    say: (text) => setText(this.live, text),
  });
  private readonly cutting = new CutPanel({
    figures: () => this.host.requests.ask({ kind: 'cutFigures' }),
    order: (layer) => this.host.requests.ask({ kind: 'cutOrder', layer }),
    choose: (sheet) => this.change({ sheet }),
    show: (shown) => this.showCutOrder(shown),
    moved: () => this.drawCuts(),
    writeCut: () => this.host.writeCut(),
    writeJob: () => this.host.writeJob(),
    say: (text) => setText(this.live, text),
  });
  private readonly bridgeLayer = new BridgeLayerButton(() => this.planLayer());
  private readonly findings = new FindingList((number) => this.choose(number));
  private readonly findingHead = new FindingFilterHead((change) => this.change(change));
  private readonly registerChip = new RegisterChip(() => this.backInRegister());
  private readonly title = html('h1', { class: 'unseen' });
  /** What has become of what was done here, for those who do not see it. */
  private readonly live = html('div', { class: 'unseen', 'aria-live': 'polite' });
  private readonly notice: HTMLElement;
  private readonly calibration: Calibration;
  private readonly lists: Lists;
  private readonly room = html('div', { class: 'room' });
  private readonly warnings = new Warnings();

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
    const tools = toolHost({
      requests: host.requests,
      stack: () => this.stack,
      undo: () => this.takeBack(false),
      reveal: (uri, from, to) => host.reveal(uri, from, to),
      bringIntoView: (point) => this.canvas.bringPointIntoView(point),
      holdView: (held) => this.canvas.holdView(held),
      slipping: () => this.state.slipping && this.state.mode === 'print',
    });
    this.toolController = new ToolController(tools, () => this.toolbar?.draw());
    this.canvas = new Canvas(
      (number) => this.choose(number),
      this.toolController,
      (view, chosen) => this.moved(view, chosen),
    );
    this.canvas.setViewport(kept?.view);
    this.calibration = new Calibration((pixelsPerInch) => {
      this.setScreen(pixelsPerInch);
      this.host.screen(pixelsPerInch);
    });
    const { choice } = this.toolController;
    this.toolbar = benchToolbar(this.controls(), choice.commands, this.nearness, this.options.element);
    this.followSlips();
    this.canvas.canvas.addEventListener('keydown', ({ key, ctrlKey, metaKey, altKey }) => {
      if (ctrlKey || metaKey || altKey) return;
      if (key.toLowerCase() === 'h') this.toggleMarks();
      if (key.toLowerCase() === 'l') this.planLayer();
    });
    this.notice = this.makeNotice();
    this.lists = this.makeLists();
    this.canvas.element.append(this.registerChip.element);
    const { bar } = this.toolController.planner;
    this.room.append(html('div', { class: 'stage' }, [this.canvas.element, bar.element]), this.lists.element);
    for (const { element } of [this.slips, this.cutting]) element.addEventListener('toggle', () => this.draw());
    this.element = html('main', { class: 'bench' }, [
      this.title,
      this.live,
      this.warnings.element,
      this.toolbar.element,
      this.notice,
      this.room,
      this.calibration.element,
    ]);
    followDocumentKeys(this.element, { undo: (again) => this.takeBack(again), save: () => this.host.save() });
    keepFocus(this.element);
    new ResizeObserver(() => this.arrange()).observe(this.room);
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

  /** The file that is shown was deleted. */
  gone(name: string): void {
    this.warnings.gone(name);
    this.toolController.gone();
  }

  /** The editor takes the focus for it; see `focusAgain`. */
  private takeBack(again: boolean): void {
    if (this.toolController.planner.takeBack(again)) return;
    this.focused = document.activeElement;
    this.toolController.bridgeBar.dropNotice();
    this.host.undo(again);
  }

  /** Gives the focus back to what had it; to the picture where that is gone. */
  focusAgain(): void {
    const { focused } = this;
    const isThere = focused instanceof HTMLElement && focused.isConnected && focused.offsetParent !== null;
    (isThere && focused !== document.body ? focused : this.canvas.canvas).focus();
  }

  /** Marks what the text at the caret draws. */
  mark(shape: CaretShape): void {
    this.canvas.mark(shape);
  }

  private draw(): void {
    const { stack, state } = this;
    if (!stack) return;
    this.notice.hidden = stack.stencil;
    this.warnings.draw(stack);
    setText(this.title, `Stencil Preview (Bench): ${decodeURIComponent(stack.uri.split('/').at(-1) ?? '')}`);
    this.toolbar.draw();
    this.arrange();
    this.measures.update(stack, state);
    this.canvas.draw(stack, state, this.look(stack));
    this.options.draw(state, groundOf(stack, state) ?? COLOURS.ground);
    this.slips.draw(stack, state, this.measures.figures);
    const keys = layerKeys(stack);
    const rows = stack.layers.map((layer, index) => ({
      layer,
      key: keys[index] ?? '',
      shown: isLayerShown(state, stack, index),
    }));
    this.layers.draw(rows, state);
    this.bridgeLayer.draw(stack, state);
    this.order.draw(stack);
    this.cutting.draw(stack, state.sheet, state.mode === 'sheet');
    this.drawCuts();
    const shown = stack.findings.flatMap((finding) =>
      isFindingShown(state, stack, finding)
        ? [
            {
              finding,
              selected: finding.number === state.selected,
              layerName: finding.layer === undefined ? undefined : stack.layers[finding.layer]?.name,
            },
          ]
        : [],
    );
    this.findings.draw(shown);
    this.findingHead.draw(stack, state, shown.length);
    this.registerChip.draw(stack, state, this.slips.shown);
    this.lists.count('findings', shown.length);
    this.lists.count('layers', stack.layers.length);
    this.lists.offer('slip', state.mode === 'print');
  }

  /** Gives picture and lists their shares of the room. */
  private arrange(): void {
    const { room, stack } = this;
    const size = { width: room.clientWidth, height: room.clientHeight };
    if (!stack || size.width === 0 || size.height === 0) return;
    const arrangement = arrangementFor(size, stack.width / Math.max(stack.height, Number.MIN_VALUE));
    setAttributes(room, { 'data-arrangement': arrangement.kind });
    room.style.setProperty('--list-width', `${arrangement.listWidth}px`);
    room.style.setProperty('--picture-height', `${arrangement.pictureHeight}px`);
    this.lists.arrange(arrangement);
    this.canvas.arranged();
  }

  private makeLists(): Lists {
    const commands = html('div', { class: 'layer-commands' }, [this.bridgeLayer.element, this.order.element]);
    const layers = [html('h2', {}, ['Layers (spray order)']), this.layers.element, commands];
    return new Lists(
      [
        [
          { id: 'layers', title: 'Layers', element: html('div', {}, layers) },
          { id: 'slip', title: 'Misregistration', short: 'Slip', element: this.slips.element },
          { id: 'cutting', title: 'Cutting', element: this.cutting.element },
        ],
        [
          {
            id: 'findings',
            title: 'Findings',
            element: html('div', {}, [this.findingHead.element, this.findings.element]),
          },
        ],
      ],
      'findings',
      () => this.draw(),
    );
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
    // There the sheet is chosen.
    if (mode === 'sheet') this.lists.choose('layers');
    if (elsewhere) this.canvas.setViewport(undefined);
  }

  /** On the sheet alone, whatever was shown before. */
  private showCutOrder(shown: boolean): void {
    const { mode } = this.state;
    this.change(shown ? { mode: 'sheet' } : {});
    if (shown && mode === 'sheets') this.canvas.setViewport(undefined);
  }

  private drawCuts(): void {
    const { drawing } = this.cutting;
    const place = drawing && this.stack && placeOfLayer(this.look(this.stack), drawing.layer);
    this.canvas.showCuts(place && { ...drawing, place });
  }

  private pin(pinned: boolean): void {
    this.pinned = pinned;
    this.host.pin(pinned);
    this.saveState();
  }

  private toggleMarks(): void {
    this.change({ marks: !this.state.marks });
  }

  /** Plans the bridges of the layer in hand, which is then shown. */
  private planLayer(): void {
    const { stack, state } = this;
    const layer = stack?.layers[state.sheet];
    if (!stack || !layer || whyNoPlan(stack, state.sheet) !== undefined) return;
    const key = layerKeys(stack)[state.sheet];
    this.change({ hidden: state.hidden.filter((other) => other !== key) });
    this.toolController.planLayer(layer.id);
  }

  private controls(): BenchControls {
    return {
      planLayer: () => this.planLayer(),
      state: () => this.state,
      stack: () => this.stack,
      pinned: () => this.pinned,
      areaShown: () => this.canvas.cuttingAreaShown,
      mode: (mode) => this.showMode(mode),
      zoom: (factor) => this.canvas.zoom(factor),
      fit: () => this.canvas.setViewport(undefined),
      trueSize: () => this.canvas.trueSize(),
      marks: () => this.toggleMarks(),
      pin: () => this.pin(!this.pinned),
      saveAs: () => this.host.saveAs(),
      writeCut: () => this.host.writeCut(),
      writeJob: () => this.host.writeJob(),
      showArea: () => this.canvas.showCuttingArea(!this.canvas.cuttingAreaShown),
      calibrate: () => this.calibration.open(this.canvas.trueScale * MM_PER_INCH),
    };
  }

  private slip(slip: Slip): void {
    const held = this.stack && heldKey(this.stack, this.state);
    if (held !== undefined) this.change({ slips: { ...this.state.slips, [held]: roundedSlip(slip) } });
  }

  /** The button that asked for it goes; then the keys are the picture's. */
  private backInRegister(): void {
    this.change({ slips: {} });
    this.canvas.canvas.focus();
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

  /** @param number of the finding */
  private choose(number: number): void {
    const finding = this.stack?.findings.find((each) => each.number === number);
    if (!this.stack || !finding) return;
    this.change({ selected: number });
    this.canvas.bringIntoView(finding);
    if (finding.island) void this.toolController.plan(finding.id);
    this.host.reveal(finding.uri, finding.from, finding.to);
  }

  private moved(view: Viewport, chosen: Viewport | undefined): void {
    setText(this.nearness, `${Math.round((view.scale / this.canvas.trueScale) * 100)} %`);
    this.chosen = chosen;
    this.saveState();
  }

  private saveState(): void {
    this.host.saveState({ uri: this.uri, state: this.state, view: this.chosen, pinned: this.pinned });
  }

  private makeNotice(): HTMLElement {
    const button = html('vscode-button' as 'button', {}, ['Set Up as Stencil…']);
    button.addEventListener('click', () => {
      if (this.uri !== undefined) this.host.begin(this.uri);
    });
    const text = 'Not set up as a stencil yet, so nothing is checked.';
    const notice = html('div', { class: 'notice' }, [html('p', {}, [text]), button]);
    notice.hidden = true;
    return notice;
  }
}

/** Another drawing is looked at in the same way, but with nothing hidden, slipped or chosen. */
function firstStateLike({ mode, opacity, apart, marks }: BenchState): BenchState {
  return { ...FIRST_STATE, mode, opacity, apart, marks };
}
