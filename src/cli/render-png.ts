/** Pixels from our own pictures. */
import { Failure } from './failure';

/** What a picture may have at most: 256 MB as RGBA. */
const MAX_PIXELS = 64e6;
const DEFAULT_SCALE = 10;
/** Pixels of the longer side, where no scale is asked for. */
const DEFAULT_SIDE = 6000;

export interface PictureSize {
  /** mm */
  readonly width: number;
  /** mm */
  readonly height: number;
  /** Pixels per mm; undefined leaves it to us. */
  readonly scale: number | undefined;
}

/**
 * @param lettered whether there is writing in it, for which the fonts of this machine are taken
 * @throws Failure when the picture would be empty or too large, or the renderer is not installed
 */
export async function renderPng(svg: string, size: PictureSize, lettered = false): Promise<Buffer> {
  const width = pixelWidth(size);
  const { Resvg } = await import('@resvg/resvg-js').catch((error: unknown) => {
    throw new Failure(
      'PNG pictures need the package @resvg/resvg-js, which is not installed here; ' + 'write an .svg instead',
      { cause: error },
    );
  });
  const options = { fitTo: { mode: 'width', value: width } as const, font: { loadSystemFonts: lettered } };
  return new Resvg(svg, options).render().asPng();
}

/** How many pixels across the picture is. */
export function pixelWidth({ width, height, scale }: PictureSize): number {
  const perMm = scale ?? Math.min(DEFAULT_SCALE, DEFAULT_SIDE / Math.max(width, height));
  const [across, down] = [Math.round(width * perMm), Math.round(height * perMm)];
  if (!(across >= 1 && down >= 1)) throw new Failure('the picture would have no pixels; give a larger --scale');
  if (across * down > MAX_PIXELS) {
    throw new Failure(`the picture would have ${across} × ${down} pixels, too many to draw; give a smaller --scale`);
  }
  return across;
}
