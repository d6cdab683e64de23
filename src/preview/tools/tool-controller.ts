/** What is done on the picture itself, by mouse and keyboard: parts picked, distances measured, bridges put in. */

import type { FindingId, LayerId } from '../../engine/index';
import type { Point } from '../../geometry/base/curve-types';
import { apply } from '../../geometry/base/matrix';
import type { PreviewStack } from '../../protocol/index';
import type { PickedPart, PlaceAnswer } from '../../protocol/parts';
import { setAttributes, svg } from '../dom/dom';
import { LayerPlanner } from '../plan/layer-planner';
import { layersOf } from '../state/scene-places';
import { type Size, toSheet, toWindow, type Viewport } from '../state/viewport';
import { BridgeBar } from './bridge-bar';
import type { KeyPress } from './bridge-gestures';
import { BridgeMover } from './bridge-mover';
import { BridgeTool } from './bridge-tool';
import { Crosshair } from './crosshair';
import type { Hand } from './hand';
import { MeasureTool } from './measure-tool';
import { PickTool } from './pick-tool';
import { stackChange } from './stack-change';
import { GREETINGS, type PreviewTool, ToolChoice, toolForKey } from './tool-bar';
import { ToolContext, type ToolHost, type ToolScene } from './tool-context';
import type { PartCard } from './tooltip';

/** Pixels: how near is near enough to an edge or a narrow place, and to an outline point when measuring. */
const REACH = 6;
const SNAP_REACH = 10;

export class ToolController implements Hand {
  /** In mm of the picture. */
  readonly inPicture = svg('g');
  /** In window pixels. */
  readonly overPicture = svg('g');
  readonly choice: ToolChoice;
  readonly card: PartCard;
  readonly status: HTMLElement;
  readonly bridgeBar: BridgeBar;
  /** Bridges of a whole layer; while it is active, it has the picture for itself. */
  readonly planner: LayerPlanner;
  /** The place, in the window, whose measure is written at a point of the window. */
  measureAt: (at: Point) => Point | undefined = () => undefined;
  private readonly context: ToolContext;
  private readonly pickTool: PickTool;
  private readonly measureTool = new MeasureTool();
  private readonly bridgeTool: BridgeTool;
  private readonly mover: BridgeMover;
  private readonly crosshair = new Crosshair();
  private tool: PreviewTool = 'pick';
  /** The layers that show, as one word. */
  private shownLayers = '';

  private readonly host: ToolHost;

  /** @param changed is called when another tool is in hand */
  constructor(host: ToolHost, changed: () => void) {
    this.host = host;
    this.choice = new ToolChoice((tool) => this.take(tool), changed);
    this.context = new ToolContext(host, () => this.redraw());
    this.pickTool = new PickTool(this.context);
    this.bridgeBar = new BridgeBar(
      (sentence) => this.context.say(sentence),
      () => this.context.focusPicture(),
    );
    this.bridgeTool = new BridgeTool(this.context, this.bridgeBar, () => this.pickTool.show(undefined));
    this.mover = new BridgeMover(this.context, this.bridgeBar);
    this.planner = new LayerPlanner(this.context, this.bridgeBar);
    this.card = this.pickTool.card;
    this.status = this.context.status;

    const { strips, measures } = this.bridgeTool.preview;
    const { overlay } = this.planner;
    this.inPicture.append(...this.pickTool.outline.map(({ element }) => element), strips, overlay.strips);
    this.overPicture.append(this.measureTool.element, this.crosshair.element, measures, this.mover.handles.element);
    this.overPicture.append(overlay.marks);
  }

  /** Takes what is shown now. What has changed has other parts, and no bridge that was planned before. */
  draw(stack: PreviewStack, look: ToolScene): void {
    const { context } = this;
    const { isOther, isChanged } = stackChange(context.stack, stack);
    if (isChanged) this.forget();
    if (look.kind !== context.scene.kind) this.measureTool.clear();
    [context.stack, context.scene] = [stack, look];
    if (isOther) this.mover.forget();
    else if (isChanged) void this.mover.renew();
    if (isChanged) this.planner.renew(isOther);
    this.dropUnseen();
  }

  /** What is asked about a layer that does not show any more is not asked. */
  private dropUnseen(): void {
    const shown = layersOf(this.context.scene).join(' ');
    const isSame = shown === this.shownLayers;
    this.shownLayers = shown;
    if (isSame) return;
    this.mover.dropUnseen();
    this.planner.dropUnseen();
    if (this.bridgeBar.asks && !this.bridgeTool.shows && !this.mover.active) this.bridgeTool.drop();
  }

  place(view: Viewport, size: Size): void {
    [this.context.viewport, this.context.size] = [view, size];
    this.redraw();
  }

  /** A click on the picture, or Enter at the crosshair. While it is answered, a moving pointer asks nothing. */
  async use(at: Point): Promise<void> {
    await this.context.whileBusy(() => this.useAt(at));
  }

  private async useAt(at: Point): Promise<void> {
    this.bridgeBar.dropNotice();
    if (await this.pickBridge(at)) return;
    const point = toSheet(this.context.viewport, at);
    const answer = await this.ask(at);
    if (!answer) return;
    if (this.tool === 'measure') this.measure(this.context.snapped(answer) ?? point);
    else if (this.tool === 'bridge') await this.bridgeTool.use(answer.part, point);
    else {
      this.pickTool.show(answer.part, at);
      if (answer.part) this.host.reveal(answer.part);
    }
  }

  /** Selects the bridge that stands there, or whose measure is written there; else the one that was selected is not. */
  private async pickBridge(at: Point): Promise<boolean> {
    if (!this.bridgesCount) return false;
    await this.mover.list.load();
    const bridge = this.mover.list.near(this.measureAt(at) ?? at);
    if (bridge || this.mover.active) this.mover.select(bridge);
    if (!bridge) return false;
    this.pickTool.show(undefined);
    if (this.tool === 'pick') this.host.reveal(bridge);
    return true;
  }

  /** Whether bridges can be taken hold of: not while distances are measured or sheets slip. */
  private get bridgesCount(): boolean {
    return this.tool !== 'measure' && !this.host.slipping();
  }

  /** Takes hold of a handle or a bridge. @returns whether the drag is for it */
  grip(at: Point, alt: boolean): boolean {
    return !alt && this.bridgesCount && this.mover.press(at, this.tool === 'bridge');
  }

  hold(): void {}

  drag(at: Point): void {
    this.pickTool.show(undefined);
    this.mover.dragTo(at);
  }

  letGo(): void {
    const clicked = this.mover.release();
    if (clicked && this.tool === 'pick') this.host.reveal(clicked);
  }

  /** What a press there would take hold of. */
  over(at: Point): 'move' | 'stretch' | undefined {
    if (!this.bridgesCount) return undefined;
    this.mover.hover(at);
    return this.mover.over(at);
  }

  /** @param focusPicture gives the focus to the picture */
  focusesOn(focusPicture: () => void): void {
    this.context.focusPicture = focusPicture;
  }

  /** The pointer rests on the picture. */
  async hover(at: Point): Promise<void> {
    if (this.bridgeBar.asks || this.context.busy) return;
    if (this.bridgesCount) await this.mover.list.load();
    if (this.bridgesCount && this.mover.hover(this.measureAt(at) ?? at)) return this.pickTool.show(undefined);
    const answer = await this.ask(at);
    if (!answer) return;
    if (this.tool === 'measure') this.aim(this.context.snapped(answer), toSheet(this.context.viewport, at));
    else this.pickTool.show(answer.part, at);
  }

  /** The pointer has left the picture. */
  leave(): void {
    if (this.context.busy) return;
    this.context.dropQuestions();
    this.crosshair.snapTo(undefined);
    this.pickTool.show(undefined);
    this.mover.hover(undefined);
  }

  /** The bridges that would mend a finding, shown before they are put in. Meanwhile a moving pointer asks nothing. */
  async plan(finding: FindingId): Promise<void> {
    if (this.planner.active) return;
    this.mover.select(undefined);
    await this.bridgeTool.plan(finding);
  }

  /** @returns whether the key was meant for the hand */
  key(press: KeyPress): boolean {
    const { key, shiftKey: shift, altKey } = press;
    const { viewport, middle } = this.context;
    const free = !this.host.slipping();
    if (this.bridgesCount && this.mover.key(press)) return true;
    if (altKey) return false;
    if (free && shift && this.crosshair.step(key, viewport, middle)) void this.crosshairMoved();
    else if (key === 'Enter') void this.enter();
    else if (free && (key === '.' || key === ',')) void this.turnTo(key === '.' ? 1 : -1);
    else if (key === 'Escape') return this.escape();
    else if (this.tool === 'bridge' && toolForKey(key) === 'bridge') void this.turnToBridge(shift ? -1 : 1);
    else if (!shift && toolForKey(key)) this.take(toolForKey(key) ?? 'pick');
    else return false;
    return true;
  }

  /**
   * Takes away, one after the other: the bridge, the measure, the card, the crosshair. What is still asked is dropped.
   */
  escape(): boolean {
    this.context.dropQuestions();
    if (this.mover.escape()) return true;
    if (this.bridgeBar.dropNotice()) return true;
    if (this.bridgeBar.shown) this.bridgeTool.drop();
    else if (this.measureTool.used) this.measureTool.clear();
    else if (this.card.shown) this.pickTool.show(undefined);
    else if (this.crosshair.place(this.context.viewport)) this.crosshair.put(undefined);
    else return false;
    this.redraw();
    return true;
  }

  /** Plans the bridges of a whole layer, whatever was in hand before. */
  planLayer(layer: LayerId): void {
    this.take(this.tool);
    this.pickTool.show(undefined);
    this.planner.open(layer);
  }

  private take(tool: PreviewTool): void {
    this.planner.close();
    this.tool = tool;
    this.choice.draw(tool);
    this.measureTool.clear();
    this.crosshair.snapTo(undefined);
    this.mover.select(undefined);
    this.bridgeTool.drop();
    this.context.say(GREETINGS[tool]);
  }

  private async ask(at: Point): Promise<PlaceAnswer | undefined> {
    const { context } = this;
    const isLast = context.nextQuestion();
    const reach = (this.tool === 'measure' ? SNAP_REACH : REACH) / context.viewport.scale;
    const answer = await this.host.partAt(context.placesAt(at), reach, context.scene.kind !== 'print');
    return isLast() && context.isCurrent(answer) ? answer : undefined;
  }

  private aim(snap: Point | undefined, point: Point): void {
    this.crosshair.snapTo(snap);
    this.measureTool.follow(snap ?? point);
    this.redraw();
  }

  private measure(point: Point): void {
    this.measureTool.put(point);
    this.context.say(this.measureTool.reading ?? 'First point. Measure to the second.');
    this.redraw();
  }

  private async enter(): Promise<void> {
    const { viewport, middle } = this.context;
    const at = this.crosshair.place(viewport);
    if (this.bridgeBar.apply()) return;
    if (!at) {
      this.crosshair.put(toSheet(viewport, middle));
      await this.crosshairMoved();
    } else if (this.tool === 'pick' && this.pickTool.part) this.host.reveal(this.pickTool.part);
    else await this.use(at);
  }

  private async crosshairMoved(): Promise<void> {
    const at = this.crosshair.place(this.context.viewport);
    if (!at) return;
    this.host.bringIntoView(toSheet(this.context.viewport, at));
    this.redraw();
    await this.hover(this.crosshair.place(this.context.viewport) ?? at);
    this.pickTool.say();
  }

  private async turnTo(step: 1 | -1): Promise<void> {
    const part = await this.pickTool.turn(step);
    if (part) this.goTo(part);
  }

  private async turnToBridge(step: 1 | -1): Promise<void> {
    const { list, active } = this.mover;
    await list.load();
    const bridge = list.after(active, step);
    const place = bridge && this.context.placeOf(bridge.layer);
    if (!bridge || !place) return this.context.say('No bridges stand in the layers that are shown.');
    this.host.bringIntoView(apply(place, bridge.centre));
    this.mover.select(bridge);
  }

  private goTo(part: PickedPart): void {
    const place = this.context.placeOf(part.layer);
    if (!place) return;
    const at = apply(place, part.at);
    this.crosshair.put(at);
    this.host.bringIntoView(at);
    this.pickTool.show(part, toWindow(this.context.viewport, at));
    this.pickTool.say();
  }

  /** There is nothing left that could be changed: takes away what was asked and planned. */
  gone(): void {
    this.planner.close();
    this.forget();
    this.redraw();
  }

  private forget(): void {
    this.context.dropQuestions();
    this.bridgeTool.preview.show([]);
    if (this.bridgeBar.asks) this.bridgeBar.show(undefined);
    this.pickTool.forget();
  }

  private redraw(): void {
    const { viewport } = this.context;
    const { scale, x, y } = viewport;
    setAttributes(this.inPicture, { transform: `matrix(${scale} 0 0 ${scale} ${x} ${y})` });
    this.pickTool.draw();
    this.measureTool.draw(viewport);
    this.crosshair.draw(viewport);
    this.bridgeTool.draw();
    this.mover.draw();
    this.planner.draw();
  }
}
