import { count, formatArea } from '../../config/values';
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
    for (const sheet of stencil.sheets) yield* describe(stencil, sheet);
  },
};

function* describe(stencil: Stencil, sheet: Sheet): Iterable<FindingDraft> {
  const { openings, islands } = specksOf(sheet);
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
    span: rings.length === 1 ? contourSpan(stencil, sheet, first.outer) : layerSpan(stencil, sheet),
    ...inLayer(sheet),
    at: { x: first.outer[0] ?? 0, y: first.outer[1] ?? 0 },
    measure: { value: area, limit: SPECK, unit: 'mm²' },
    related: rings.slice(0, SHOWN).map((polygon) => ({
      message: openings.includes(polygon) ? 'An opening' : 'An island',
      span: contourSpan(stencil, sheet, polygon.outer),
      at: { x: polygon.outer[0] ?? 0, y: polygon.outer[1] ?? 0 },
    })),
    subject: { kind: 'specks', sheet },
  };
}

/** As many places as lists have room for. */
const SHOWN = 50;
