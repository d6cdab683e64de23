/** What the page shows as the bytes of a picture, from the same drawing as the command line's. */
import type { Scene } from '../picture/scene';
import { sceneSvg } from '../picture/scene-svg';
import type { PictureFormat } from '../protocol/webview';

/** Pixels to the mm, and at most on the longer side. */
const SCALE = 10;
const MAX_SIDE = 6000;

export interface Drawn {
  readonly picture: { readonly scene: Scene; readonly names: readonly string[] } | undefined;
}

/** @returns undefined where there is nothing to draw, or the browser cannot */
export async function drawPicture({ picture }: Drawn, format: PictureFormat): Promise<Uint8Array | undefined> {
  if (!picture) return undefined;
  const text = sceneSvg(picture.scene, { names: picture.names });
  if (format === 'svg') return new TextEncoder().encode(text);
  try {
    return await rasterise(text, picture.scene);
  } catch {
    return undefined;
  }
}

async function rasterise(text: string, { box }: Scene): Promise<Uint8Array | undefined> {
  const [width, height] = [box.maxX - box.minX, box.maxY - box.minY];
  const scale = Math.min(SCALE, MAX_SIDE / Math.max(width, height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(Math.round(width * scale), 1);
  canvas.height = Math.max(Math.round(height * scale), 1);
  const image = new Image();
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(text)}`;
  await image.decode();
  canvas.getContext('2d')?.drawImage(image, 0, 0, canvas.width, canvas.height);
  const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/png'));
  return blob ? new Uint8Array(await blob.arrayBuffer()) : undefined;
}
