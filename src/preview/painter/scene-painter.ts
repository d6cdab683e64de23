/** Paints pictures of the stack into a canvas. Keeps what does not change from one painting to the next. */
import type { Matrix } from '../../geometry/base/curve-types';
import { multiply, scaling, translation } from '../../geometry/base/matrix';
import { outerRing } from '../../picture/scene';
import { Hatches } from './hatches';
import type { PaintedPart, PaintedSheet, Painting, PaintJob, PaintStyle, PaintStyles, PaintView } from './paint-job';

/** CSS pixels from a sheet to its shadow. */
const SHADOW = { x: 2, y: 3 };

const PLAIN: PaintStyle = { strokeWidth: 0, strokeOpacity: 1, filter: 'none' };

interface KnownPart extends PaintedPart {
  readonly path: Path2D;
  /** Of a part that is hatched along its edge only: that edge. */
  readonly edge: Path2D;
}

interface KnownSheet {
  readonly place: Matrix;
  readonly parts: readonly KnownPart[];
}

export class ScenePainter {
  private readonly canvas = new OffscreenCanvas(1, 1);
  private readonly hatches = new Hatches();
  private sheets: readonly KnownSheet[] = [];
  private styles: PaintStyles = {};

  paint({ sheets, styles, view }: PaintJob): Painting {
    if (sheets) this.sheets = sheets.map((sheet, order) => this.known(sheet, order));
    if (styles) this.styles = styles;
    const { size, margin, ratio } = view;
    this.canvas.width = Math.max(1, Math.round((size.width + 2 * margin) * ratio));
    this.canvas.height = Math.max(1, Math.round((size.height + 2 * margin) * ratio));
    const context = this.canvas.getContext('2d');
    if (context) this.paintSheets(context, view);
    return { bitmap: this.canvas.transferToImageBitmap(), view };
  }

  private known({ place, parts }: PaintedSheet, order: number): KnownSheet {
    const before = this.sheets[order]?.parts ?? [];
    const pathsOf = ({ outline, rim }: PaintedPart, index: number) => {
      const { path = new Path2D(), edge = path } = before[index] ?? {};
      if (outline === undefined) return { path, edge };
      const whole = new Path2D(outline);
      return { path: whole, edge: rim === undefined ? whole : new Path2D(outerRing(outline)) };
    };
    return { place, parts: parts.map((part, index) => ({ ...part, ...pathsOf(part, index) })) };
  }

  private paintSheets(context: OffscreenCanvasRenderingContext2D, view: PaintView): void {
    const { viewport, margin, ratio } = view;
    const onScreen = multiply(
      scaling(ratio),
      multiply(translation(viewport.x + margin, viewport.y + margin), scaling(viewport.scale)),
    );
    for (const { place, parts } of this.sheets) {
      const lies = multiply(onScreen, place);
      for (const part of parts) this.paintPart(context, part, lies, view);
    }
  }

  private paintPart(
    context: OffscreenCanvasRenderingContext2D,
    part: KnownPart,
    lies: Matrix,
    { viewport, ratio, fallen }: PaintView,
  ): void {
    const { role, fall, edge } = part;
    const style = this.styles[role] ?? PLAIN;
    const shift = role === 'shadow' ? translation(SHADOW.x * ratio, SHADOW.y * ratio) : undefined;
    const fell = fall ? multiply(lies, translation(fall.x * fallen, fall.y * fallen)) : lies;
    const { a, b, c, d, e, f } = shift ? multiply(shift, fell) : fell;
    context.setTransform(a, b, c, d, e, f);
    context.filter = style.filter;
    this.fill(context, part, style, ratio);
    context.filter = 'none';
    if (style.stroke === undefined || style.strokeWidth === 0) return;
    context.globalAlpha = style.strokeOpacity;
    context.strokeStyle = style.stroke;
    context.lineWidth = style.strokeWidth / viewport.scale;
    context.lineJoin = 'round';
    context.stroke(edge);
  }

  private fill(context: OffscreenCanvasRenderingContext2D, part: KnownPart, style: PaintStyle, ratio: number): void {
    const { fill, opacity, hatch, rim, path, edge } = part;
    const colour = style.fill ?? fill;
    if (colour !== 'none') {
      context.globalAlpha = opacity;
      context.fillStyle = colour;
      context.fill(path, 'evenodd');
    }
    const lines = this.styles['hatch-line'];
    if (hatch === undefined || !lines) return;
    context.globalAlpha = 1;
    const pattern = this.hatches.pattern(context, { slant: hatch, style: lines, ratio });
    if (rim === undefined) {
      context.fillStyle = pattern;
      context.fill(path, 'evenodd');
    } else {
      // Of a line twice as wide as the rim, the half that lies inside.
      context.save();
      context.clip(path, 'evenodd');
      context.strokeStyle = pattern;
      context.lineWidth = 2 * rim;
      context.stroke(edge);
      context.restore();
    }
  }
}
