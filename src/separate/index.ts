/**
 * A picture, separated into the layers of a stencil. The steps can be asked one by one, or all at once; each can be
 * stopped (`src/base/checkpoint.ts`).
 */
import { defined } from '../base/defined';
import { areasOf, darkestOf, groundLabel, mendedAreas } from './areas';
import { onGround } from './clean/beyond-frame';
import { clearedSheets } from './clean/sheets';
import { labOf } from './colour/difference';
import { hexOf, rgbOf } from './colour/hex';
import type { Dials, Step } from './dials';
import { paintingOrder } from './layers/order';
import { type DrawnLayer, drawLayers } from './outlines';
import { prepare } from './prepare';
import type { Picture, Rgb } from './raster';
import type { SeparatedLayer, Separation } from './separation';
import { PictureSource } from './source';
import { colourNames } from './write/names';

export { type Areas, areasOf } from './areas';
export { type Dials, NothingToSeparate, type Step } from './dials';
export { layersFromMasks, type Mask } from './masks';
export { type Prepared, prepare } from './prepare';
export type { Picture } from './raster';
export type { SeparatedLayer, Separation } from './separation';
export { PictureSource } from './source';
export { type LayersText, layersAsSvg, outlineOf } from './write/svg';

/**
 * @param told hears what is being done
 * @param across how many pixels are enough, for an answer that is rough and soon there
 * @throws NothingToSeparate where the picture gives nothing to spray
 */
export function separate(
  picture: Picture | PictureSource,
  dials: Dials,
  { told, across }: { readonly told?: (step: Step) => void; readonly across?: number } = {},
): Separation {
  told?.('palette');
  const source = picture instanceof PictureSource ? picture : new PictureSource(picture);
  const prepared = prepare(source, dials, across);
  told?.('areas');
  const { soft: areas, unpainted, fine } = areasOf(prepared, dials);
  told?.('order');
  const { pitch, palette, follow } = prepared;
  const hexes = palette.colours.map(hexOf);
  const lightness = palette.colours.map((colour) => labOf(colour)[0]);
  const last = dials.outline ? darkestOf(lightness, unpainted) : undefined;
  const chosen = dials.order?.map((paint) => hexes.indexOf(hexOf(rgbOf(paint)))).filter((label) => label >= 0);
  const { order, alone, ordered } = paintingOrder(areas, palette.colours, { unpainted, last, order: chosen });
  const rule = { width: prepared.clear / pitch, keepsCorners: palette.isDrawing };
  const cleared = onGround(areas, groundLabel(prepared), rule.width, (map) => clearedSheets(map, order, rule));
  const soft = cleared === areas ? areas : mendedAreas(areas, cleared, rule.width);
  const tooFine = fine.slice();
  let changed = 0;
  for (let at = 0; at < tooFine.length; at += 1) {
    if (soft.labels[at] !== areas.labels[at]) tooFine[at] = 1;
    changed += defined(tooFine[at]);
  }
  told?.('outlines');
  const { bridge, opening, slip } = dials;
  const { layers, nodes } = drawLayers(soft, order, {
    pitch,
    tolerance: follow,
    slip,
    bridge,
    opening,
    isDrawing: palette.isDrawing,
  });
  return {
    width: dials.width,
    height: soft.height * pitch,
    layers: named(layers, palette.colours),
    unpainted: hexes.filter((_, label) => unpainted.has(label)),
    difference: palette.difference,
    isDrawing: palette.isDrawing,
    nodes,
    follow,
    detail: prepared.detail,
    tooFine: changed / tooFine.length,
    pixels: { width: soft.width, height: soft.height, fine: tooFine, labels: soft.labels },
    islands: { alone, ordered },
  };
}

function named(layers: readonly DrawnLayer[], colours: readonly Rgb[]): SeparatedLayer[] {
  const names = colourNames(layers.map(({ label }) => defined(colours[label])));
  return layers.map((layer, i) => ({
    ...layer,
    name: defined(names[i]),
    paint: hexOf(defined(colours[layer.label])),
  }));
}
