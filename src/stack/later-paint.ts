/** What the layers of a stack that are sprayed later paint over: looked up place by place. Millimetres, as cut. */
import { checkpoint } from '../base/checkpoint';
import { defined } from '../base/defined';
import type { Box, Polygon, Region, Ring } from '../geometry/base/polygon-types';
import { boxContainsBox, growBox, ringsOf } from '../geometry/base/ring';
import { boxToGrid, fromGrid, toGrid } from '../geometry/boolean/grid';
import { areaOf, boxOfPolygon, difference, regionFromRings } from '../geometry/boolean/index';
import { cutToBox } from '../geometry/boolean/tiles';
import { indexBoxes } from '../geometry/spatial/clusters';
import type { SheetMeasures } from '../sheet/types';
import { isCoveredByLater, withoutHairlines } from './covered-by-later';
import { openingsAsCut } from './openings-as-cut';

/** That later layers paint over a place. Indices of layers are those of the stack. */
export interface Cover {
  /** As few layers as cover it together, the one that covers most of it first. */
  readonly layers: readonly number[];
  /** Whether they leave a rim of it bare that is narrower than the slip. */
  readonly rim: boolean;
}

/** An opening of some layer, as cut. */
interface Patch {
  readonly layer: number;
  readonly polygon: Polygon;
}

/** mm round a box that is looked at: what is cut off at its border must not show within it. */
const MARGIN = 1;

export class LaterPaint {
  private readonly patches: readonly Patch[];
  private readonly index: ReturnType<typeof indexBoxes> | undefined;
  /** Rings on the grid, of patches that were looked at. */
  private readonly rings = new Map<Patch, readonly Ring[]>();
  /** What was asked about, by question and layer: layers that draw the same have their polygons in common. */
  private readonly known = new Map<string, Map<Polygon, unknown>>();

  /** @param sheets in painting order */
  constructor(sheets: readonly Pick<SheetMeasures, 'openings' | 'kerf'>[]) {
    this.patches = sheets.flatMap((sheet, layer) => openingsAsCut(sheet).map((polygon) => ({ layer, polygon })));
    this.index =
      sheets.length > 1 && this.patches.length > 0
        ? indexBoxes(this.patches.map(({ polygon }) => boxOfPolygon(polygon)))
        : undefined;
  }

  /**
   * What layers after this one paint in a box, and at least a millimetre round it.
   * @param only one of them alone
   */
  within(box: Box, layer: number, only?: number): Region {
    return this.unite(this.patchesIn(box, layer, only), box);
  }

  /**
   * What paints over a place, all but a rim narrower than the slip: see `isCoveredByLater`.
   * @param place a piece of the layer's sheet as cut, round which it is painted
   * @param slip mm
   */
  over(place: Polygon, layer: number, slip: number): Cover | undefined {
    return this.once(`over ${layer} ${slip}`, place, () => this.findOver(place, layer, slip));
  }

  private findOver(place: Polygon, layer: number, slip: number): Cover | undefined {
    checkpoint();
    const box = boxOfPolygon(place);
    const patches = this.patchesIn(box, layer);
    if (patches.length === 0) return undefined;
    const paint = this.unite(patches, growBox(box, slip));
    if (!isCoveredByLater([place], paint, slip)) return undefined;
    const bare = withoutHairlines(difference([place], paint));
    const layers = this.fewestOver(place, [...new Set(patches.map((patch) => patch.layer))], areaOf(bare), layer);
    return { layers, rim: bare.length > 0 };
  }

  /** Whether nothing that is painted through an opening as drawn is seen, as long as no sheet slips. */
  hides(opening: Polygon, { kerf }: Pick<SheetMeasures, 'kerf'>, layer: number): boolean {
    return this.once(`hides ${layer} ${kerf}`, opening, () =>
      openingsAsCut({ openings: [opening], kerf }).every((polygon) =>
        isCoveredByLater([polygon], this.within(boxOfPolygon(polygon), layer), 0),
      ),
    );
  }

  private once<Value>(question: string, place: Polygon, answer: () => Value): Value {
    const known = this.known.get(question) ?? new Map<Polygon, unknown>();
    this.known.set(question, known);
    if (!known.has(place)) known.set(place, answer());
    return known.get(place) as Value;
  }

  /** Takes the layer that covers most of what is left, of equals the one that is sprayed last and seen. */
  private fewestOver(place: Polygon, candidates: readonly number[], bare: number, layer: number): number[] {
    const latestFirst = [...candidates].sort((a, b) => b - a);
    const chosen: number[] = [];
    let left: Region = [place];
    while (areaOf(left) > bare + LEFT_OVER * areaOf(place) && latestFirst.length > 0) {
      const rests = latestFirst.map((each) =>
        withoutHairlines(difference(left, this.within(boxOfPolygon(place), layer, each))),
      );
      const areas = rests.map((rest) => areaOf(rest));
      const best = areas.findIndex((area) => area <= Math.min(...areas) + LEFT_OVER * areaOf(place));
      chosen.push(defined(latestFirst[best]));
      left = defined(rests[best]);
      latestFirst.splice(best, 1);
    }
    return chosen;
  }

  private patchesIn({ minX, minY, maxX, maxY }: Box, layer: number, only?: number): Patch[] {
    const found = this.index?.search(minX, minY, maxX, maxY, (i) => {
      const patch = defined(this.patches[i]);
      return only === undefined ? patch.layer > layer : patch.layer === only;
    });
    return (found ?? []).map((i) => defined(this.patches[i]));
  }

  private unite(patches: readonly Patch[], box: Box): Region {
    const around = growBox(box, MARGIN);
    const rings = patches.flatMap((patch) => this.cut(patch, around));
    return rings.length > 0 ? regionFromRings(rings, 'nonzero') : [];
  }

  private cut(patch: Patch, box: Box): readonly Ring[] {
    if (boxContainsBox(box, boxOfPolygon(patch.polygon))) return ringsOf(patch.polygon);
    const rings = this.rings.get(patch) ?? ringsOf(patch.polygon).map((ring) => toGrid(ring));
    this.rings.set(patch, rings);
    return cutToBox(rings, boxToGrid(box)).map((ring) => fromGrid(ring));
  }
}

/** Of a place's area: shares nearer to each other are the same. */
const LEFT_OVER = 0.001;
