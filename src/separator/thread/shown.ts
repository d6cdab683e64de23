/** Pictures and separations as a page shows them. */
import type { ShownPicture, ShownSeparation } from '../../protocol/separating';
import { outlineOf, type PictureSource, type Separation } from '../../separate/index';

/** Pixels across are enough for any window. */
const SHOWN_ACROSS = 1400;

export function shownPicture(source: PictureSource): ShownPicture {
  const { width, height, data } = source
    .over(source.groundOf(undefined))
    .at(Math.min(source.picture.width, SHOWN_ACROSS));
  return { width, height, data: new Uint8Array(data) };
}

export function shownSeparation(separation: Separation): ShownSeparation {
  const { width, height, layers, unpainted, isDrawing, difference, nodes, detail, follow, islands, tooFine } =
    separation;
  const { pixels } = separation;
  const counts = new Float64Array(256);
  for (const label of pixels?.labels ?? []) counts[label] = (counts[label] ?? 0) + 1;
  const all = Math.max(1, pixels?.labels.length ?? 1);
  return {
    width,
    height,
    layers: layers.map((layer) => ({
      name: layer.name,
      paint: layer.paint,
      outline: outlineOf(layer),
      islands: layer.islands,
      share: (counts[layer.label] ?? 0) / all,
    })),
    unpainted,
    isDrawing,
    difference,
    nodes,
    detail,
    follow,
    islands,
    tooFine,
    fine: { width: pixels?.width ?? 0, height: pixels?.height ?? 0, data: pixels?.fine ?? new Uint8Array() },
  };
}
