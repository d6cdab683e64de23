import { count, formatArea, formatMillimetres } from '../../config/values';
import { pointInside } from '../../geometry/base/point-inside';
import type { Polygon } from '../../geometry/base/polygon-types';
import { DRAWN_ALIKE } from '../../geometry/base/tolerances';
import { areaOf, boxOfPolygon } from '../../geometry/boolean/index';
import type { Sheet } from '../../sheet/types';
import { quoted } from '../../text/wording';
import type { Check, Stencil } from '../check';
import type { FindingDraft } from '../finding';
import { contourSpan, inLayer, layerSpan } from '../places';
import { SLIM, SPECK, specksOf } from '../specks';

/** Openings and islands that nobody sees: one hint for all of a layer. */
export const sliver: Check = {
  meta: {
    id: 'sliver',
    summary: 'Openings and islands too small for anybody to see.',
    outcome: 'leave specks too small to see',
    severity: 'hint',
    reads: 'file',
    fixes: ['remove-slivers'],
    cure: ({ layer }) => `Remove the specks in "${layer}"`,
    acceptable: true,
    row: { wrong: 'specks that nobody sees are cut, and fall out', click: 'remove them all' },
  },
  *run(stencil) {
    for (const sheet of stencil.sheets) {
      yield* describeSpecks(stencil, sheet);
      yield* describeHairlines(stencil, sheet);
    }
  },
};

function* describeSpecks(stencil: Stencil, sheet: Sheet): Iterable<FindingDraft> {
  const { openings, islands } = specksOf(sheet, 'speck');
  const all = largestFirst([...openings, ...islands.map(({ polygon }) => polygon)]);
  const [largest] = all;
  if (!largest) return;
  const area = all.reduce((sum, polygon) => sum + areaOf(polygon), 0);
  const [name] = quoted([sheet.layer.name]);
  const isOne = all.length === 1;
  const small = all.some((polygon) => areaOf(polygon) < SPECK) && `${SPECK} mm²`;
  const slim = all.some((polygon) => areaOf(polygon) >= SPECK) && `${formatMillimetres(SLIM)} wide`;
  const limits = `under ${[small, slim].filter(Boolean).join(' or ')}`;
  const what = [
    openings.length > 0 && count(openings.length, 'opening'),
    islands.length > 0 && count(islands.length, 'island'),
  ];
  yield {
    message:
      `${count(all.length, 'speck')}, ${formatArea(area)} ${isOne ? `(${limits})` : `in all, each ${limits}`} in ${name}: too small to see.` +
      (sheet.layer.reading === 'openings' ? ` Remove ${isOne ? 'it' : 'them all'}.` : ''),
    detail:
      `Here ${what.filter(Boolean).join(' and ')}: what a tracing leaves over, or shapes that nearly meet. Each is cut and weeded ` +
      'for nothing. Remove the openings and close the islands, or leave them: the print looks the same.',
    measure: { value: area, limit: SPECK, unit: 'mm²' },
    ...placesOf(stencil, sheet, largest, all, (polygon) => (openings.includes(polygon) ? 'An opening' : 'An island')),
    subject: { kind: 'specks', sheet, of: 'speck' },
  };
}

function* describeHairlines(stencil: Stencil, sheet: Sheet): Iterable<FindingDraft> {
  const { openings } = specksOf(sheet, 'hairline');
  const all = largestFirst(openings);
  const [largest] = all;
  if (!largest) return;
  const widths = sheet.thinOpenings.flatMap(({ polygon, cutWidth }) => {
    const opening = sheet.openings[polygon];
    return opening && openings.includes(opening) ? cutWidth : [];
  });
  const { opening: limit } = stencil.limits;
  const [widest, least] = [Math.max(...widths), limit].map(formatMillimetres);
  const [name] = quoted([sheet.layer.name]);
  const isOne = openings.length === 1;
  yield {
    message:
      `${count(openings.length, 'hairline')} of ${isOne ? '' : 'up to '}${widest} (minimum ${least}) in ${name}: no paint gets through.` +
      (sheet.layer.reading === 'openings' ? ` Remove ${isOne ? 'it' : 'them all'}.` : ''),
    detail:
      'Paint dries across so fine a line before any comes through, and the print looks the same without it. Remove it, or ' +
      `give it a stroke of ${least} or more where it is meant to be seen.`,
    measure: { value: Math.max(...widths), limit, unit: 'mm' },
    ...placesOf(stencil, sheet, largest, all, () => 'A hairline'),
    subject: { kind: 'specks', sheet, of: 'hairline' },
  };
}

/** Of equals the one on the left, then the upper one: not the one that was found first. */
function largestFirst(polygons: readonly Polygon[]): Polygon[] {
  const stepsOf = (polygon: Polygon): number => Math.round(areaOf(polygon) / (DRAWN_ALIKE * DRAWN_ALIKE));
  return [...polygons].sort((a, b) => {
    const [one, other] = [boxOfPolygon(a), boxOfPolygon(b)];
    return stepsOf(b) - stepsOf(a) || one.minX - other.minX || one.minY - other.minY;
  });
}

function placesOf(
  stencil: Stencil,
  sheet: Sheet,
  largest: Polygon,
  all: readonly Polygon[],
  nameOf: (polygon: Polygon) => string,
): Pick<FindingDraft, 'span' | 'layer' | 'layerId' | 'at' | 'related'> {
  return {
    span: all.length === 1 ? contourSpan(stencil, sheet, largest.outer) : layerSpan(stencil, sheet),
    ...inLayer(sheet),
    at: pointInside(largest.outer, largest.holes),
    related: all.slice(0, SHOWN).map((polygon) => ({
      message: nameOf(polygon),
      span: contourSpan(stencil, sheet, polygon.outer),
      at: pointInside(polygon.outer, polygon.holes),
    })),
  };
}

/** As many places as lists have room for. */
const SHOWN = 50;
