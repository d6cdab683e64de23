/** Where the window's points lie on the sheets of a look, and back. */
import type { Matrix, Point } from '../../geometry/base/curve-types';
import { apply, invert } from '../../geometry/base/matrix';
import { toSheet, type Viewport } from './viewport';

/** As much of a look as is needed: its plates, the lowest first. Those without a layer cannot be pointed at. */
export interface SceneLayers {
  readonly sceneLayers: readonly { readonly layer: number | undefined; readonly place: Matrix }[];
}

/** A point on the sheet of a layer, by the layer's index in the stack. */
export interface ScenePlace {
  readonly layer: number;
  /** mm of that sheet */
  readonly point: Point;
}

/** The point on each sheet that lies under a point of the window, the uppermost first. */
export function placesAtPoint({ sceneLayers: plates }: SceneLayers, view: Viewport, at: Point): ScenePlace[] {
  const point = toSheet(view, at);
  return plates
    .flatMap(({ layer, place }) => {
      const back = layer === undefined ? undefined : invert(place);
      return layer !== undefined && back ? [{ layer, point: apply(back, point) }] : [];
    })
    .reverse();
}

/** From a layer's own mm to those of the picture; undefined where the layer does not show. */
export function placeOfLayer({ sceneLayers: plates }: SceneLayers, layer: number): Matrix | undefined {
  return plates.find((plate) => plate.layer === layer)?.place;
}

/** The layers that show, in painting order. */
export function layersOf({ sceneLayers: plates }: SceneLayers): number[] {
  return plates.flatMap(({ layer }) => (layer === undefined ? [] : [layer]));
}
