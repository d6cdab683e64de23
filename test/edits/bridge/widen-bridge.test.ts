import { describe, expect, it } from 'vitest';
import { cutIslandAway, removeOpening, widenNeck } from '../../../src/edits/bridge/widen-bridge';
import type { EditResult } from '../../../src/edits/element/result';
import { difference } from '../../../src/geometry/boolean/index';
import type { Sheet } from '../../../src/sheet/types';
import { applyEdits } from '../../../src/text/text';
import { areaBetween, areaOfRegion, islandsOf, sheetsOf } from '../bridging';

const svg = (inside: string): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="60mm" viewBox="0 0 60 60">${inside}</svg>`;

function edited(sheet: Sheet, outcome: EditResult): { text: string; sheet: Sheet } {
  if ('refusal' in outcome) throw new Error(outcome.refusal);
  const text = applyEdits(sheet.drawing.document.text, outcome.edits);
  return { text, sheet: sheetsOf(text)[0] as Sheet };
}

function first(text: string): Sheet {
  return sheetsOf(text, { limits: { bridge: 0.8 } })[0] as Sheet;
}

describe('widening a neck', () => {
  const necks: Record<string, string> = {
    'between two squares': svg('<path d="M10 10H29.8V30H10ZM30.2 10H50V30H30.2Z"/>'),
    'between two circles': svg('<circle cx="20" cy="30" r="9.8"/><circle cx="40" cy="30" r="9.8"/>'),
    'between a slanted pair': svg('<path d="M10 10L29.8 12L27.8 30L10 30zM30.2 12L50 10V30L28.2 30z"/>'),
  };
  it.each(Object.keys(necks))('%s', (what) => {
    const sheet = first(necks[what] ?? '');
    const [part] = sheet.thinMaterial.filter(({ kind }) => kind === 'neck');
    expect(part?.cutWidth).toBeLessThan(0.8);
    if (!part) return;
    const { sheet: after } = edited(sheet, widenNeck(sheet, part, 0.8));
    const narrow = sheetsOf(after.drawing.document.text, { limits: { bridge: 0.8 } })[0]?.thinMaterial ?? [];
    expect(narrow.filter(({ kind }) => kind === 'neck')).toEqual([]);
    expect(areaOfRegion(difference(after.openings, sheet.openings))).toBeLessThan(0.02);
    expect(areaOfRegion(sheet.openings) - areaOfRegion(after.openings)).toBeLessThan(1 * (part.length + 3));
  });
});

describe('cutting an island away', () => {
  it('removes the counter and leaves all else byte for byte', () => {
    const sheet = first(svg('<path d="M10,10 h40 v40 h-40 z  M20,20 v5 h5 v-5 z m20 0 v5 h5 v-5 z" class="a"/>'));
    const [, , island] = sheet.pieces;
    const { text, sheet: after } = edited(sheet, cutIslandAway(sheet, island as Sheet['pieces'][number]));
    expect(islandsOf(after)).toBe(1);
    expect(text).toMatch(/^<svg [^>]*><path d="M10,10 h40 v40 h-40 z {2}[^"]*" class="a"\/><\/svg>$/);
    expect(areaOfRegion(after.openings) - areaOfRegion(sheet.openings)).toBeCloseTo(25, 3);
  });
  it('refuses an island that several shapes surround', () => {
    const sheet = first(
      svg(
        '<rect x="5" y="5" width="50" height="8"/><rect x="5" y="45" width="50" height="8"/>' +
          '<rect x="5" y="5" width="8" height="48"/><rect x="45" y="5" width="8" height="48"/>',
      ),
    );
    const [, island] = sheet.pieces;
    expect(cutIslandAway(sheet, island as Sheet['pieces'][number])).toHaveProperty('refusal');
  });
});

describe('removing an opening', () => {
  it('a pinhole that is an element', () => {
    const text = svg('\n  <path d="M10 10h9v9h-9z"/>\n  <circle cx="40" cy="40" r=".2"/>\n');
    const sheet = first(text);
    const hole = sheet.openings.find((polygon) => areaOfRegion([polygon]) < 1);
    const { text: after } = edited(sheet, removeOpening(sheet, hole as Sheet['openings'][number]));
    expect(after).toBe(svg('\n  <path d="M10 10h9v9h-9z"/>\n'));
  });
  it('a pinhole in a path of many', () => {
    const sheet = first(svg('<path d="m10 10h9v9h-9zm20 0h.3v.3h-.3zm10 0h9v9h-9z"/>'));
    const hole = sheet.openings.find((polygon) => areaOfRegion([polygon]) < 1);
    const { text, sheet: after } = edited(sheet, removeOpening(sheet, hole as Sheet['openings'][number]));
    expect(text).toBe(svg('<path d="m10 10h9v9h-9zm30 0h9v9h-9z"/>'));
    expect(areaBetween(after.openings, sheet.openings)).toBeCloseTo(0.09, 4);
  });
});
