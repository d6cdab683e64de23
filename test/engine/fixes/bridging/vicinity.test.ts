/** The part of a drawing that lies round one island. */
import { describe, expect, it } from 'vitest';
import { defined } from '../../../../src/base/defined';
import { vicinityOf } from '../../../../src/engine/fixes/bridging/vicinity';
import { check } from '../../../../src/engine/index';

const ring = (x: number, y = 5): string =>
  `<path fill-rule="evenodd" d="M${x} ${y}h10v10h-10zM${x + 4} ${y + 4}v2h2v-2z"/>`;

const drawing = (inner: string): string =>
  '<svg xmlns="http://www.w3.org/2000/svg" width="200mm" height="20mm" viewBox="0 0 200 20" data-tombolo-reading="openings">' +
  `${inner}</svg>`;

function vicinityIn(text: string) {
  const report = check(text);
  const sheet = defined(report.sheets[0]);
  const island = defined(sheet.pieces.find((piece) => piece.island && piece.label.x < 20));
  return { island, vicinity: vicinityOf(report, sheet, island) };
}

describe('the vicinity of an island', () => {
  it('has the island as it was, and nothing of what is far from it', () => {
    const { island, vicinity } = vicinityIn(drawing([5, 60, 100, 140].map((x) => ring(x)).join('')));
    expect(vicinity?.report.text).toBe(drawing(ring(5)));
    expect(vicinity?.island.area).toBeCloseTo(island.area, 3);
  });

  it('has all that is near', () => {
    const { vicinity } = vicinityIn(drawing([5, 17, 100, 140, 160].map((x) => ring(x)).join('')));
    expect(vicinity?.report.text).toBe(drawing(ring(5) + ring(17)));
  });

  it('is not told apart where most of the drawing is near', () => {
    expect(vicinityIn(drawing(ring(5) + ring(17) + ring(100))).vicinity).toBeUndefined();
  });

  it('keeps elements that are drawn again elsewhere', () => {
    const copied = ring(100).replace('<path', '<path id="far"');
    const inner = [5, 60, 140, 160].map((x) => ring(x)).join('') + copied + '<use href="#far" x="-85"/>';
    expect(vicinityIn(drawing(inner)).vicinity?.report.text).toContain('id="far"');
  });

  it('is not told apart where the island would be another one', () => {
    // Without the first path the near one is the second, which the style leaves unpainted.
    const styled = `<style>path:nth-of-type(2) { fill: none }</style>${[60, 100, 5, 140, 160].map((x) => ring(x)).join('')}`;
    const report = check(drawing(styled));
    const sheet = defined(report.sheets[0]);
    const island = defined(sheet.pieces.find((piece) => piece.island && piece.label.x < 20));
    expect(vicinityOf(report, sheet, island)).toBeUndefined();
  });
});
