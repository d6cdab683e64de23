/** What is done on the picture itself, by mouse and keyboard: parts picked, distances measured, bridges put in. */

import type { FindingId, LayerId } from '../../engine/index';
import type { Matrix, Point } from '../../geometry/base/curve-types';
import { apply } from '../../geometry/base/matrix';
import type { BridgeOffer, BridgeRefusal, PreviewLayer, PreviewStack } from '../../protocol/index';
import type { LayerPlace, PickedPart, PlaceAnswer } from '../../protocol/parts';
import { OutlinePath } from '../canvas/outline-path';
import { html, setAttributes, setText, svg } from '../dom/dom';
import { matrixText } from '../dom/matrix-text';
import { layersOf, placeOfLayer, placesAtPoint, type SceneLayers } from '../state/scene-places';
import { type Size, toSheet, toWindow, type Viewport, viewportBox } from '../state/viewport';
import { BridgePreviewOverlay } from './bridge-preview';
import { Crosshair } from './crosshair';
import { MeasureTool } from './measure-tool';
import { type PreviewTool, ToolChoice, toolForKey } from './tool-bar';
import { PartCard, spoken } from './tooltip';

/** Pixels: how near is near enough to an edge or a narrow place, and to an outline point when measuring. */
const REACH = 6;
const SNAP_REACH = 10;

export interface ToolHost {
  partAt(places: readonly LayerPlace[], reach: number, sheets: boolean): Promise<PlaceAnswer | undefined>;
  part(layer: LayerId, number: number): Promise<PlaceAnswer | undefined>;
  bridgeAt(layer: LayerId, point: Point): Promise<BridgeOffer | BridgeRefusal | undefined>;
  bridgePlan(finding: FindingId): Promise<BridgeOffer | BridgeRefusal | undefined>;
  /** Puts the bridges of the last offer into the text; answers false where the text has changed since. */
  putIn(): Promise<boolean>;
  reveal(part: PickedPart): void;
  /** Whether Shift, arrows, full stop and comma are for sheets that slip. */
  slipping(): boolean;
  /** Brings a point of the picture into sight. */
  bringIntoView(point: Point): void;
}

export class ToolController {
  /** In mm of the picture. */
  readonly inPicture = svg('g');
  /** In window pixels. */
  readonly overPicture = svg('g');
  readonly choice = new ToolChoice((tool) => this.take(tool));
  readonly card = new PartCard();
  readonly status = html('div', { class: 'unseen', role: 'status' });
  readonly bridgePreview = new BridgePreviewOverlay({ apply: () => void this.putIn(), drop: () => this.drop() });
  private readonly outline = ['caret-halo', 'picked'].map((name) => new OutlinePath({ class: name }));
  private readonly measureTool = new MeasureTool();
  private readonly crosshair = new Crosshair();
  private tool: PreviewTool = 'pick';
  private stack: PreviewStack | undefined;
  private scene: SceneLayers & { readonly kind: string } = { kind: 'print', sceneLayers: [] };
  private viewport: Viewport = { scale: 1, x: 0, y: 0 };
  private size: Size = { width: 0, height: 0 };
  private part: PickedPart | undefined;
  /** Counts the questions: only the answer to the last one is shown. */
  private turn = 0;
  /** How many clicks wait for their answer. */
  private using = 0;

  private readonly host: ToolHost;

  constructor(host: ToolHost) {
    this.host = host;

    this.inPicture.append(...this.outline.map(({ element }) => element), this.bridgePreview.strips);
    this.overPicture.append(this.measureTool.element, this.crosshair.element, this.bridgePreview.measures);
  }

  /** Takes what is shown now. A changed text has other parts, and no bridge that was planned before. */
  draw(stack: PreviewStack, look: SceneLayers & { readonly kind: string }): void {
    if (stack.uri !== this.stack?.uri || stack.version !== this.stack.version) this.forget();
    if (look.kind !== this.scene.kind) this.measureTool.clear();
    [this.stack, this.scene] = [stack, look];
  }

  place(view: Viewport, size: Size): void {
    [this.viewport, this.size] = [view, size];
    setAttributes(this.inPicture, { transform: `matrix(${view.scale} 0 0 ${view.scale} ${view.x} ${view.y})` });
    const matrix = this.part && this.placeOf(this.part.layer);
    for (const path of this.outline) {
      setAttributes(path.element, { transform: matrix ? matrixText(matrix) : '' });
      path.set(matrix ? (this.part?.outline ?? '') : '');
      path.show(viewportBox(view, size, matrix), view.scale);
    }
    this.measureTool.draw(view);
    this.crosshair.draw(view);
    this.bridgePreview.draw((layer) => this.placeOf(layer), view);
  }

  /** A click on the picture, or Enter at the crosshair. While it is answered, a moving pointer asks nothing. */
  async use(at: Point): Promise<void> {
    this.using += 1;
    await this.useAt(at).finally(() => {
      this.using -= 1;
    });
  }

  private async useAt(at: Point): Promise<void> {
    const point = toSheet(this.viewport, at);
    const answer = await this.ask(at);
    if (!answer) return;
    if (this.tool === 'measure') this.measure(this.snapped(answer) ?? point);
    else if (this.tool === 'bridge') await this.bridge(answer.part, point);
    else {
      this.show(answer.part, at);
      if (answer.part) this.host.reveal(answer.part);
    }
  }

  /** The pointer rests on the picture. */
  async hover(at: Point): Promise<void> {
    if (this.bridgePreview.shown || this.using > 0) return;
    const answer = await this.ask(at);
    if (!answer) return;
    if (this.tool === 'measure') this.aim(this.snapped(answer), toSheet(this.viewport, at));
    else this.show(answer.part, at);
  }

  /** The pointer has left the picture. */
  leave(): void {
    if (this.using > 0) return;
    this.turn += 1;
    this.crosshair.snapTo(undefined);
    this.show(undefined);
  }

  /** The bridges that would mend a finding, shown before they are put in. Meanwhile a moving pointer asks nothing. */
  async plan(finding: FindingId): Promise<void> {
    this.turn += 1;
    const { turn } = this;
    this.using += 1;
    const answer = await this.host.bridgePlan(finding).finally(() => {
      this.using -= 1;
    });
    if (turn === this.turn) this.offer(answer);
  }

  /** @returns whether the key was meant for the hand */
  key(key: string, shift: boolean): boolean {
    const free = !this.host.slipping();
    if (free && shift && this.crosshair.step(key, this.viewport, this.middle)) void this.crosshairMoved();
    else if (key === 'Enter') void this.enter();
    else if (free && (key === '.' || key === ',')) void this.turnTo(key === '.' ? 1 : -1);
    else if (key === 'Escape') return this.escape();
    else if (!shift && toolForKey(key)) this.take(toolForKey(key) ?? 'pick');
    else return false;
    return true;
  }

  /**
   * Takes away, one after the other: the bridge, the measure, the card, the crosshair. What is still asked is dropped.
   */
  escape(): boolean {
    this.turn += 1;
    if (this.bridgePreview.shown) this.drop();
    else if (this.measureTool.used) this.measureTool.clear();
    else if (this.card.shown) this.show(undefined);
    else if (this.crosshair.place(this.viewport)) this.crosshair.put(undefined);
    else return false;
    this.redraw();
    return true;
  }

  private take(tool: PreviewTool): void {
    this.tool = tool;
    this.choice.draw(tool);
    this.measureTool.clear();
    this.crosshair.snapTo(undefined);
    this.drop();
    this.say(tool === 'pick' ? '' : tool === 'measure' ? 'Measure from the first point.' : 'Click a gap to bridge it.');
  }

  private async ask(at: Point): Promise<PlaceAnswer | undefined> {
    this.turn += 1;
    const { turn } = this;
    const reach = (this.tool === 'measure' ? SNAP_REACH : REACH) / this.viewport.scale;
    const answer = await this.host.partAt(this.placesAt(at), reach, this.scene.kind !== 'print');
    return turn === this.turn && answer?.version === this.stack?.version ? answer : undefined;
  }

  private show(part: PickedPart | undefined, at?: Point): void {
    const layer = part && this.layerOf(part);
    const same =
      part !== undefined &&
      part.layer === this.part?.layer &&
      part.outline === this.part.outline &&
      part.kind === this.part.kind;
    this.part = part;
    // While the pointer stays on one part, its card stays where it is, to be read and reached.
    if (!part || !layer || !at) this.card.hide();
    else if (!same || !this.card.shown) this.card.show(part, layer, at, this.size);
    this.redraw();
  }

  private snapped({ snap }: PlaceAnswer): Point | undefined {
    const place = snap && this.placeOf(snap.layer);
    return place && apply(place, snap.point);
  }

  private aim(snap: Point | undefined, point: Point): void {
    this.crosshair.snapTo(snap);
    this.measureTool.follow(snap ?? point);
    this.redraw();
  }

  private measure(point: Point): void {
    this.measureTool.put(point);
    this.say(this.measureTool.reading ?? 'First point. Measure to the second.');
    this.redraw();
  }

  private async bridge(part: PickedPart | undefined, point: Point): Promise<void> {
    const place = part && this.placesAt(toWindow(this.viewport, point)).find(({ layer }) => layer === part.layer);
    if (!place) {
      const refusal = 'There is no gap to bridge here: click on an opening or an island.';
      this.offer({ version: this.stack?.version ?? 0, refusal });
      return;
    }
    this.turn += 1;
    const { turn } = this;
    const answer = await this.host.bridgeAt(place.layer, place.point);
    if (turn === this.turn) this.offer(answer);
  }

  private offer(answer: BridgeOffer | BridgeRefusal | undefined): void {
    this.show(undefined);
    this.bridgePreview.show(answer);
    this.redraw();
  }

  private async putIn(): Promise<void> {
    const done = await this.host.putIn();
    const version = this.stack?.version ?? 0;
    this.bridgePreview.show(
      done ? undefined : { version, refusal: 'The text has changed since: choose the place again.' },
    );
    if (done) this.say('The bridge is in the text.');
    this.redraw();
  }

  private drop(): void {
    this.bridgePreview.show(undefined);
    this.redraw();
  }

  private async enter(): Promise<void> {
    const at = this.crosshair.place(this.viewport);
    if (this.bridgePreview.ready) await this.putIn();
    else if (!at) {
      this.crosshair.put(toSheet(this.viewport, this.middle));
      await this.crosshairMoved();
    } else if (this.tool === 'pick' && this.part) this.host.reveal(this.part);
    else await this.use(at);
  }

  private async crosshairMoved(): Promise<void> {
    const at = this.crosshair.place(this.viewport);
    if (!at) return;
    this.host.bringIntoView(toSheet(this.viewport, at));
    this.redraw();
    await this.hover(this.crosshair.place(this.viewport) ?? at);
    this.sayPart();
  }

  /** The next or last part; after those of one layer come those of the next. */
  private async turnTo(step: 1 | -1): Promise<void> {
    const layers = layersOf(this.scene).flatMap((index) => this.stack?.layers[index]?.id ?? []);
    const { part } = this;
    const layer = part && layers.includes(part.layer) ? part.layer : layers.at(-1);
    if (layer === undefined) return;
    const number = part && part.layer === layer && part.count > 0 ? part.number + step : 0;
    const over = part !== undefined && part.count > 0 && (number < 0 || number >= part.count);
    const other = layers.at((layers.indexOf(layer) + step) % layers.length) ?? layer;
    this.turn += 1;
    const { turn } = this;
    const answer = await this.host.part(over ? other : layer, over ? (step > 0 ? 0 : -1) : number);
    if (turn === this.turn && answer?.part && answer.version === this.stack?.version) this.goTo(answer.part);
  }

  private goTo(part: PickedPart): void {
    const place = this.placeOf(part.layer);
    if (!place) return;
    const at = apply(place, part.at);
    this.crosshair.put(at);
    this.host.bringIntoView(at);
    this.show(part, toWindow(this.viewport, at));
    this.sayPart();
  }

  private sayPart(): void {
    const layer = this.part && this.layerOf(this.part);
    this.say(this.part && layer ? spoken(this.part, layer) : '');
  }

  private layerOf({ layer }: PickedPart): PreviewLayer | undefined {
    return this.stack?.layers.find(({ id }) => id === layer);
  }

  private placeOf(layer: LayerId): Matrix | undefined {
    const index = this.stack?.layers.findIndex(({ id }) => id === layer) ?? -1;
    return index < 0 ? undefined : placeOfLayer(this.scene, index);
  }

  private placesAt(at: Point): LayerPlace[] {
    return placesAtPoint(this.scene, this.viewport, at).flatMap(({ layer, point }) => {
      const id = this.stack?.layers[layer]?.id;
      return id === undefined ? [] : [{ layer: id, point }];
    });
  }

  private say(text: string): void {
    setText(this.status, text);
  }

  private forget(): void {
    this.turn += 1;
    this.bridgePreview.show(undefined);
    this.part = undefined;
    this.card.hide();
  }

  private get middle(): Point {
    return { x: this.size.width / 2, y: this.size.height / 2 };
  }

  private redraw(): void {
    this.place(this.viewport, this.size);
  }
}
