/** The whole page: keeps what is chosen, and shows each new stack without losing the place. */

import { COLOURS, type Scene, type ViewMode } from '../picture/scene';
import type { PreviewStack } from '../protocol/index';
import { type BenchControls, benchToolbar, makeNearness } from './bench-commands';
import { Canvas } from './canvas/canvas';
import type { CaretShape } from './canvas/picture';
import { html, setAttributes, setText } from './dom/dom';
import { keepFocus } from './dom/keep-focus';
import type { PageHost, SavedPage } from './page-host';
import { whyNoPlan } from './panels/bridge-layer';
import { Calibration, MM_PER_INCH } from './panels/calibration';
import { RegisterChip } from './panels/register-chip';
import { SidePanels } from './panels/side-panels';
import { heldKey } from './panels/slip-panel';
import type { Toolbar } from './panels/toolbar';
import { ViewOptions } from './panels/view-options';
import { Warnings } from './panels/warnings';
import { arrangementFor } from './state/arrangement';
import { Measures } from './state/measures';
import { placeOfLayer } from './state/scene-places';
import { IN_REGISTER, roundedSlip, type Slip } from './state/slip';
import { type BenchState, carryOver, FIRST_STATE, layerKeys, restoredState } from './state/state';
import { benchScene, groundOf } from './state/view-model';
import type { Viewport } from './state/viewport';
import { toolHost } from './tool-host';
import { followDocumentKeys } from './tools/document-keys';
import { followSlips } from './tools/slip-gestures';
import { ToolController } from './tools/tool-controller';

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
  private readonly measures: Measures;
  private pinned: boolean;
  private chosen: Viewport | undefined;
  private readonly registerChip = new RegisterChip(() => this.backInRegister());
  private readonly title = html('h1', { class: 'unseen' });
  /** What has become of what was done here, for those who do not see it. */
  private readonly live = html('div', { class: 'unseen', 'aria-live': 'polite' });
  private readonly notice: HTMLElement;
  private readonly calibration: Calibration;
  private readonly panels: SidePanels;
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
    this.panels = this.makePanels();
    this.canvas.element.append(this.registerChip.element);
    const { bar } = this.toolController.planner;
    this.room.append(html('div', { class: 'stage' }, [this.canvas.element, bar.element]), this.panels.element);
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
    this.panels.draw(stack, state, this.measures.figures);
    this.drawCuts();
    this.registerChip.draw(stack, state, this.panels.isSlipShown);
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
    this.panels.arrange(arrangement);
    this.canvas.arranged();
  }

  private makePanels(): SidePanels {
    const { host } = this;
    return new SidePanels({
      requests: host.requests,
      change: (change) => this.change(change),
      draw: () => this.draw(),
      useLayer: (index) => this.layerUsed(index),
      moveLayer: (index, to) => this.stack && host.reorder(this.stack, index, to),
      bestOrder: (version) => host.bestOrder(version),
      planLayer: () => this.planLayer(),
      slip: (slip) => this.slip(slip),
      sweep: () => void this.measures.sweep(),
      chooseFinding: (number) => this.choose(number),
      showCutOrder: (shown) => this.showCutOrder(shown),
      drawCuts: () => this.drawCuts(),
      writeCut: () => host.writeCut(),
      writeJob: () => host.writeJob(),
      say: (text) => setText(this.live, text),
    });
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
    if (mode === 'sheet') this.panels.showLayers();
    if (elsewhere) this.canvas.setViewport(undefined);
  }

  /** On the sheet alone, whatever was shown before. */
  private showCutOrder(shown: boolean): void {
    const { mode } = this.state;
    this.change(shown ? { mode: 'sheet' } : {});
    if (shown && mode === 'sheets') this.canvas.setViewport(undefined);
  }

  private drawCuts(): void {
    const { drawnCuts } = this.panels;
    const place = drawnCuts && this.stack && placeOfLayer(this.look(this.stack), drawnCuts.layer);
    this.canvas.showCuts(place && { ...drawnCuts, place });
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
