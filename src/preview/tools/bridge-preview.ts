/** Bridges that are not in the text yet, drawn on the picture with their measures. */

import { formatSides } from '../../config/values';
import type { LayerId } from '../../engine/index';
import type { Matrix } from '../../geometry/base/curve-types';
import { apply } from '../../geometry/base/matrix';
import type { BridgePreviewData, CutPreviewData } from '../../protocol/index';
import { makeMeasure, makeRing, SMALL, writeMeasure } from '../canvas/ghost-marks';
import { setAttributes, svg, syncChildren } from '../dom/dom';
import { matrixText } from '../dom/matrix-text';
import { toWindow, type Viewport } from '../state/viewport';

/** Pixels from a strip to its measure. */
const OFF = 24;

export class BridgePreviewOverlay {
  /** The strips, in mm of the picture. */
  readonly strips = svg('g', { class: 'ghost', 'aria-hidden': 'true' });
  /** Their measures, in window pixels. */
  readonly measures = svg('g', { class: 'ghost-measures', 'aria-hidden': 'true' });
  private bridges: readonly BridgePreviewData[] = [];
  private cuts: readonly CutPreviewData[] = [];

  /** @param cuts islands that go instead */
  show(bridges: readonly BridgePreviewData[], cuts: readonly CutPreviewData[] = []): void {
    this.bridges = bridges;
    this.cuts = cuts;
  }

  /** Those of what is shown, each as often as it is there. */
  get layers(): readonly LayerId[] {
    return [...this.bridges, ...this.cuts].map(({ layer }) => layer);
  }

  draw(placeOf: (layer: LayerId) => Matrix | undefined, view: Viewport): void {
    const shown = this.bridges.flatMap((bridge) => {
      const place = placeOf(bridge.layer);
      return place ? [{ bridge, place }] : [];
    });
    this.drawOutlines(placeOf);
    const drawn = shown.map(({ bridge, place }) => {
      const middle = { x: (bridge.from.x + bridge.to.x) / 2, y: (bridge.from.y + bridge.to.y) / 2 };
      return { bridge, at: toWindow(view, apply(place, middle)) };
    });
    const centre = drawn.reduce((sum, { at }) => sum + at.y, 0) / drawn.length;
    syncChildren(this.measures, drawn, makeMark, (mark, { bridge, at }) => {
      const [ring, measure] = mark.children as unknown as [SVGGElement, SVGGElement];
      const visibility = bridge.length * view.scale < SMALL ? 'inherit' : 'hidden';
      setAttributes(ring, { transform: `translate(${at.x} ${at.y})`, visibility });
      // Away from the others: what they hold between them stays in sight.
      const y = at.y + (at.y > centre ? OFF : -OFF);
      writeMeasure(measure, formatSides(bridge.width, bridge.length, 2), { x: at.x, y });
    });
  }

  private drawOutlines(placeOf: (layer: LayerId) => Matrix | undefined): void {
    const outlines = [
      ...this.bridges.map((each) => ({ ...each, look: 'ghost-strip' })),
      ...this.cuts.map((each) => ({ ...each, look: 'ghost-cut' })),
    ].flatMap(({ layer, outline, look }) => {
      const place = placeOf(layer);
      return place ? [{ outline, look, place }] : [];
    });
    syncChildren(
      this.strips,
      outlines,
      () => svg('path', {}),
      (path, { outline, look, place }) => {
        setAttributes(path, { class: look, d: outline, transform: matrixText(place) });
      },
    );
  }
}

const makeMark = (): SVGGElement => svg('g', {}, [makeRing(), makeMeasure()]);
