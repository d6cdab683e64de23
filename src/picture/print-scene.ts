/** The print: the layers painted in order on the ground. */
import type { Matrix } from '../geometry/base/curve-types';
import { IDENTITY } from '../geometry/base/matrix';
import {
  COLOURS,
  colourOr,
  cutLineParts,
  looseInPlace,
  type PictureLayer,
  type PictureStack,
  rectangle,
  type Scene,
  type SceneLayer,
  type ScenePart,
} from './scene';

export interface PrintOptions {
  /** The wall, post or board that is painted on, `#rrggbb`. */
  readonly ground?: string | undefined;
  /** Of each coat of paint, 0..1. */
  readonly opacity?: number;
  readonly isShown?: (layer: number) => boolean;
  /** Where a layer lands; in register where nothing is given. */
  readonly placeOf?: (layer: number) => Matrix | undefined;
  /** Path data of ground that a slip has laid bare. */
  readonly bare?: string;
  /** Whether islands are marked, which fall out and let paint through. */
  readonly marksIslands?: boolean;
  /** Whether the ground lies on something: with an edge and a shadow. */
  readonly framed?: boolean;
}

export function printScene({ sheet, layers }: PictureStack, options: PrintOptions = {}): Scene {
  const outline = rectangle(sheet);
  const ground: ScenePart = { role: 'ground', outline, fill: colourOr(options.ground, COLOURS.ground), opacity: 1 };
  const shadow: ScenePart = { role: 'shadow', outline, fill: COLOURS.shadow, opacity: 0.22 };
  const edge: ScenePart = { role: 'frame', outline, fill: COLOURS.frame, opacity: 1 };
  const painted = layers.flatMap((layer, index): SceneLayer[] =>
    options.isShown?.(index) === false
      ? []
      : [
          {
            layer: index,
            place: options.placeOf?.(index) ?? IDENTITY,
            annotations: [],
            // A layer's islands lie right over its paint, so that later layers cover them as they will on the wall.
            parts: [
              coat(layer, options.opacity ?? 1),
              ...cutLineParts(layer),
              ...(options.marksIslands ? layer.islands.map((island) => looseInPlace(island, sheet)) : []),
            ],
          },
        ],
  );
  const bare: ScenePart[] = options.bare
    ? [{ role: 'bare', outline: options.bare, fill: COLOURS.bare, opacity: 1 }]
    : [];
  return {
    kind: 'print',
    box: sheet,
    sceneLayers: [
      fixed(options.framed ? [shadow, ground] : [ground]),
      ...painted,
      ...(bare.length > 0 ? [fixed(bare)] : []),
      ...(options.framed ? [fixed([edge])] : []),
    ],
  };
}

function fixed(parts: readonly ScenePart[]): SceneLayer {
  return { layer: undefined, place: IDENTITY, parts, annotations: [] };
}

function coat({ openings, sprayed = openings, paint }: PictureLayer, opacity: number): ScenePart {
  return { role: 'paint', outline: sprayed, fill: colourOr(paint, '#000000'), opacity };
}
