/** The part of the bench that one looks at: picture, marks and scale, moved and scaled by mouse and keyboard. */
import type { Point } from '../../geometry/base/curve-types';
import type { Box } from '../../geometry/base/polygon-types';
import { joinBoxes } from '../../geometry/base/ring';
import type { Scene } from '../../picture/scene';
import type { PreviewFinding, PreviewStack } from '../../protocol/index';
import { type CutDrawing, CutOverlay } from '../cutting/cut-overlay';
import { html, setAttributes, setText, svg } from '../dom/dom';
import { MM_PER_INCH } from '../panels/calibration';
import { PlanFirst } from '../plan/plan-first';
import type { BenchState } from '../state/state';
import {
  bringIntoView,
  centreOn,
  fit,
  insetFor,
  type Size,
  TRUE_SIZE,
  toSheet,
  type Viewport,
  zoomAt,
} from '../state/viewport';
import { followPointer } from '../tools/pointer-events';
import type { ToolController } from '../tools/tool-controller';
import { Annotations } from './annotations';
import { CuttingArea } from './cutting-area';
import { FindingMarkers } from './finding-markers';
import { followPanZoom } from './pan-zoom';
import { type CaretShape, Picture } from './picture';
import { type FindingMarker, placedFindings, placeOnPicture } from './placed-findings';
import { ScaleBar } from './scale-bar';

/** Pixels that stay free round the members of a cluster that is opened; mm within which they cannot come apart. */
const CLUSTER_RIM = 70;
const ONE_PLACE = 0.05;

/** How much larger the picture becomes at most, so that one still knows where one is. */
const CLOSER = 4;

/** Pixels from the edges of the window within which a place that is brought into sight may not stay. */
const MARGIN = 48;

export class Canvas {
  readonly element = html('div', { class: 'surface' });
  /** Undefined while the whole sheet is shown, however large the window is. */
  private chosen: Viewport | undefined;
  /** How the whole sheet was shown when it was to stay in its place. */
  private held: { readonly view: Viewport; readonly room: string } | undefined;
  private stack: PreviewStack | undefined;
  private shown: Scene | undefined;
  readonly canvas = svg('svg', {
    tabindex: 0,
    role: 'application',
    class: 'canvas',
    'aria-describedby': 'canvas-description',
  });
  private readonly description = html('p', { id: 'canvas-description', hidden: '' });
  /** CSS pixels to the mm at true size. */
  trueScale = TRUE_SIZE;
  private readonly area = new CuttingArea();
  private readonly picture = new Picture();
  private readonly annotations = new Annotations();
  private readonly scaleBar = new ScaleBar();
  private readonly cuts = new CutOverlay();
  private readonly markers: FindingMarkers;

  private readonly hand: ToolController;
  private readonly moved: (viewport: Viewport, chosen: Viewport | undefined) => void;

  /**
   * @param choose is called with the number of a finding whose mark was clicked
   * @param hand what clicks and keys do on the picture itself
   * @param moved is called with each new view; `chosen` is undefined where the whole sheet is shown
   */
  constructor(
    choose: (number: number) => void,
    hand: ToolController,
    moved: (viewport: Viewport, chosen: Viewport | undefined) => void,
  ) {
    this.hand = hand;
    this.moved = moved;

    this.markers = new FindingMarkers({ choose, open: (members) => this.openCluster(members, choose) });
    this.canvas.append(
      this.area.element,
      this.picture.targets.element,
      hand.inPicture,
      this.annotations.element,
      this.cuts.lines,
      this.markers.element,
      this.cuts.marks,
      hand.overPicture,
      this.scaleBar.element,
    );
    this.element.append(
      this.picture.element,
      this.canvas,
      this.description,
      hand.card.element,
      hand.bridgeBar.element,
      hand.status,
    );
    hand.measureAt = (at) => this.annotations.measureAt(at);
    followPointer(this.element, this.canvas, new PlanFirst(hand.planner, hand));
    followPanZoom(this.canvas, {
      view: () => this.view,
      move: (view) => this.setViewport(view),
      fit: () => this.setViewport(undefined),
    });
    new ResizeObserver(() => this.redraw()).observe(this.element);
  }

  get view(): Viewport {
    return (
      this.chosen ??
      this.held?.view ??
      (this.shown ? fit(this.size, this.whole(this.shown), insetFor(this.size)) : { scale: 1, x: 0, y: 0 })
    );
  }

  /**
   * The whole sheet stays as it is shown now until it is let go, whatever bars come and go below it; only where all of the
   * room is another, it is fitted anew.
   */
  holdView(held: boolean): void {
    this.held = undefined;
    if (held) this.held = { view: this.view, room: this.room };
    this.redraw();
  }

  /** Picture and lists have their shares of the room. */
  arranged(): void {
    if (this.held && this.held.room !== this.room) this.holdView(true);
  }

  /** The size of all of the room. */
  private get room(): string {
    const { clientWidth, clientHeight } = this.element.parentElement?.parentElement ?? this.element;
    return `${clientWidth} × ${clientHeight}`;
  }

  private whole({ box }: Scene): Box {
    return this.area.box ? joinBoxes([box, this.area.box]) : box;
  }

  /** @param view undefined for the whole sheet */
  setViewport(view: Viewport | undefined): void {
    this.chosen = view;
    if (this.held && !view) this.holdView(true);
    else this.redraw();
  }

  zoom(factor: number): void {
    this.setViewport(zoomAt(this.view, { x: this.size.width / 2, y: this.size.height / 2 }, factor));
  }

  trueSize(): void {
    const { width, height } = this.size;
    this.setViewport(centreOn(this.size, toSheet(this.view, { x: width / 2, y: height / 2 }), this.trueScale));
  }

  /** @param pixelsPerInch CSS pixels to the inch of the screen */
  setScreen(pixelsPerInch: number): void {
    this.trueScale = pixelsPerInch / MM_PER_INCH;
    this.redraw();
  }

  /** Whether the cutting area is drawn round the sheet. */
  get cuttingAreaShown(): boolean {
    return this.area.shown;
  }

  showCuttingArea(shown: boolean): void {
    this.area.show(shown);
    this.redraw();
  }

  /** Width over height of the window; undefined while it has none. */
  get aspect(): number | undefined {
    const { width, height } = this.size;
    return width > 0 && height > 0 ? width / height : undefined;
  }

  draw(stack: PreviewStack, state: BenchState, look: Scene): void {
    this.stack = stack;
    this.shown = look;
    this.picture.draw(look, stack.layers);
    this.annotations.draw(look);
    this.area.draw(stack, look);
    this.hand.draw(stack, look);
    this.markers.draw(placedFindings(stack, state, look));
    setAttributes(this.canvas, { 'aria-label': nameOf(stack) });
    setText(this.description, descriptionOf(stack));
    this.redraw();
  }

  /** @param drawing undefined where no cuts are shown */
  showCuts(drawing: CutDrawing | undefined): void {
    this.cuts.draw(drawing);
    this.cuts.place(this.view);
  }

  mark(shape: CaretShape): void {
    this.picture.mark(shape);
  }

  /** Shifts the picture only where the finding's place does not show. */
  bringIntoView(finding: PreviewFinding): void {
    const at = this.shown && placeOnPicture(finding, this.shown);
    if (at) this.bringPointIntoView(at);
  }

  /** Zooms in until a mark that stands for several comes apart; if they lie in one place, chooses one after the other. */
  private openCluster(members: readonly FindingMarker[], choose: (number: number) => void): void {
    const places = members.flatMap(({ finding: { at } }) => at ?? []);
    const box = joinBoxes(places.map(({ x, y }) => ({ minX: x, minY: y, maxX: x, maxY: y })));
    const { view, size } = this;
    const { scale } = fit(size, box, { side: CLUSTER_RIM, top: CLUSTER_RIM, bottom: CLUSTER_RIM });
    const [first] = members;
    const middle = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
    if (scale > view.scale && Math.max(box.maxX - box.minX, box.maxY - box.minY) > ONE_PLACE)
      this.setViewport(centreOn(size, middle, Math.min(scale, CLOSER * view.scale)));
    else if (first) choose(first.finding.number);
  }

  /** @param point in mm of the picture */
  bringPointIntoView(point: Point): void {
    const shifted = bringIntoView(this.view, point, this.size, MARGIN);
    if (shifted.x !== this.view.x || shifted.y !== this.view.y) this.setViewport(shifted);
  }

  private get size(): Size {
    return { width: this.element.clientWidth, height: this.element.clientHeight };
  }

  private redraw(): void {
    const { stack, view, size } = this;
    if (!stack || size.width === 0 || size.height === 0) return;
    this.picture.place(view, size);
    this.area.place(view);
    this.hand.place(view, size);
    this.annotations.place(view);
    this.cuts.place(view);
    this.scaleBar.draw(view, size);
    this.markers.place(view, size);
    this.moved(view, this.chosen);
  }
}

/** Its name is short, since it is spoken each time; what can be done there is its description. */
function nameOf({ width, height }: PreviewStack): string {
  return `Stencil, ${Math.round(width * 10) / 10} by ${Math.round(height * 10) / 10} mm`;
}

function descriptionOf({ layers, findings }: PreviewStack): string {
  return (
    `Layers: ${layers.length}, findings: ${findings.length}. ` +
    'Arrow keys move it, plus and minus zoom, zero fits it to the window. Full stop and comma go from part to part, ' +
    'Shift with arrow keys moves the crosshair, Enter uses it. H hides the marks, L plans the bridges of a layer.'
  );
}
