/** Bridges that are not in the text yet, drawn on the picture with their measures. */

import { formatSides } from '../../config/values';
import type { LayerId } from '../../engine/index';
import type { Matrix, Point } from '../../geometry/base/curve-types';
import { apply } from '../../geometry/base/matrix';
import type { BridgePreviewData, CutPreviewData } from '../../protocol/index';
import { setAttributes, setText, svg, syncChildren } from '../dom/dom';
import { matrixText } from '../dom/matrix-text';
import { toWindow, type Viewport } from '../state/viewport';

/** Pixels: a strip shorter than this is ringed, so that it is found; the ring's radius; from a strip to its measure. */
const SMALL = 24;
const RING = 11;
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
    syncChildren(this.measures, drawn, makeMeasure, (group, { bridge, at }) => {
      drawRing(group, at, bridge.length * view.scale < SMALL);
      // Away from the others: what they hold between them stays in sight.
      const y = at.y + (at.y > centre ? OFF : -OFF);
      writeMeasure(group, formatSides(bridge.width, bridge.length, 2), { x: at.x, y });
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

function makeMeasure(): SVGGElement {
  const rings = ['ghost-halo', 'ghost-ring'].map((name) => svg('circle', { class: name, r: RING }));
  const plate = svg('rect', { class: 'plate', height: 18, rx: 4 });
  return svg('g', {}, [...rings, plate, svg('text', { class: 'tape-label' })]);
}

function drawRing(group: SVGGElement, { x, y }: Point, shown: boolean): void {
  const [halo, ring] = group.children;
  for (const circle of [halo, ring]) {
    if (circle) setAttributes(circle, { cx: x, cy: y, visibility: shown ? 'inherit' : 'hidden' });
  }
}

/** @param at the middle of the writing */
function writeMeasure(group: SVGGElement, text: string, { x, y }: Point): void {
  const [, , plate, label] = group.children;
  const width = text.length * 6.6 + 12;
  if (plate) setAttributes(plate, { x: x - width / 2, y: y - 9, width });
  if (!label) return;
  setAttributes(label, { x, y });
  setText(label, text);
}
