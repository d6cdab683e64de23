import { count, formatArea, formatMillimetres } from '../../config/values';
import type { Polygon } from '../../geometry/base/polygon-types';
import { areaOf } from '../../geometry/boolean/index';
import type { Sheet } from '../../sheet/types';
import { quoted } from '../../text/wording';
import type { Check, Stencil } from '../check';
import type { FindingDraft } from '../finding';
import { contourSpan, inLayer, layerSpan } from '../places';
import { SPECK, specksOf } from '../specks';

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
  const rings = [...openings, ...islands.map(({ polygon }) => polygon)];
  const first = rings[0];
  if (!first) return;
  const area = rings.reduce((sum, polygon) => sum + areaOf(polygon), 0);
  const [name] = quoted([sheet.layer.name]);
  const what = [
    openings.length > 0 && count(openings.length, 'opening'),
    islands.length > 0 && count(islands.length, 'island'),
  ];
  yield {
    message:
      `${count(rings.length, 'speck')}, ${formatArea(area)} in all, each under ${SPECK} mm² in ${name}: too small to see.` +
      (sheet.layer.reading === 'openings' ? ' Remove them all.' : ''),
    detail:
      `Here ${what.filter(Boolean).join(' and ')}: what a tracing leaves over, or shapes that nearly meet. Each is cut and weeded ` +
      'for nothing. Remove the openings and close the islands, or leave them: the print looks the same.',
    measure: { value: area, limit: SPECK, unit: 'mm²' },
    ...placesOf(stencil, sheet, first, rings, (polygon) => (openings.includes(polygon) ? 'An opening' : 'An island')),
    subject: { kind: 'specks', sheet, of: 'speck' },
  };
}

function* describeHairlines(stencil: Stencil, sheet: Sheet): Iterable<FindingDraft> {
  const { openings } = specksOf(sheet, 'hairline');
  const first = openings[0];
  if (!first) return;
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
    ...placesOf(stencil, sheet, first, openings, () => 'A hairline'),
    subject: { kind: 'specks', sheet, of: 'hairline' },
  };
}

function placesOf(
  stencil: Stencil,
  sheet: Sheet,
  first: Polygon,
  all: readonly Polygon[],
  nameOf: (polygon: Polygon) => string,
): Pick<FindingDraft, 'span' | 'layer' | 'layerId' | 'at' | 'related'> {
  return {
    span: all.length === 1 ? contourSpan(stencil, sheet, first.outer) : layerSpan(stencil, sheet),
    ...inLayer(sheet),
    at: { x: first.outer[0] ?? 0, y: first.outer[1] ?? 0 },
    related: all.slice(0, SHOWN).map((polygon) => ({
      message: nameOf(polygon),
      span: contourSpan(stencil, sheet, polygon.outer),
      at: { x: polygon.outer[0] ?? 0, y: polygon.outer[1] ?? 0 },
    })),
  };
}

/** As many places as lists have room for. */
const SHOWN = 50;
