/** Hatches whose lines are as far apart and as wide on the screen at every zoom. */
import type { PaintStyle } from './paint-job';

/** CSS pixels between the lines of a hatch. */
const GAP = 7;

interface HatchKind {
  /** Degrees. */
  readonly slant: number;
  readonly style: PaintStyle;
  /** Device pixels to the CSS pixel. */
  readonly ratio: number;
}

export class Hatches {
  private readonly tiles = new Map<string, OffscreenCanvas>();

  /** A pattern to fill with while the context has its present transform. */
  pattern(context: OffscreenCanvasRenderingContext2D, kind: HatchKind): CanvasPattern | string {
    const { slant, style, ratio } = kind;
    const made = context.createPattern(this.tile(style, ratio), 'repeat');
    if (!made) return style.stroke ?? 'transparent';
    // The tile is in device pixels, whatever the sheet's own scale is.
    made.setTransform(context.getTransform().inverse().rotate(slant));
    return made;
  }

  private tile({ stroke = 'transparent', strokeWidth }: PaintStyle, ratio: number): OffscreenCanvas {
    const key = `${stroke} ${strokeWidth} ${ratio}`;
    const known = this.tiles.get(key);
    if (known) return known;
    const size = Math.max(2, Math.round(GAP * ratio));
    const tile = new OffscreenCanvas(size, size);
    const context = tile.getContext('2d');
    if (context) {
      context.fillStyle = stroke;
      // Half of a line that lies on the tile's edge.
      context.fillRect(0, 0, (strokeWidth / 2) * ratio, size);
    }
    this.tiles.set(key, tile);
    return tile;
  }
}
