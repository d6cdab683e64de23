import { describe, expect, it } from 'vitest';
import { findingsOf, sheetOf } from '../stencils';

const crossed = (body: string, attributes = '') => findingsOf('crossed-outline', sheetOf(body, attributes));

/** A five-pointed star in one go, its corners on a circle of 40 mm. */
const corner = (i: number) => [50 - 40 * Math.sin((i * 4 * Math.PI) / 5), 50 - 40 * Math.cos((i * 4 * Math.PI) / 5)];
const star = `M${[0, 1, 2, 3, 4].map((i) => corner(i).join(' ')).join('L')}Z`;

describe('crossed-outline', () => {
  it('finds the star whose middle stays behind, with the area of the pentagon', () => {
    const found = crossed(`<path fill-rule="evenodd" d="${star}"/>`);
    // The pentagon's corners lie on a circle of R·sin 18° / sin 54°; its area is 5/2·r²·sin 72°.
    const radius = (40 * Math.sin(Math.PI / 10)) / Math.sin((3 * Math.PI) / 10);
    const area = 2.5 * radius ** 2 * Math.sin((2 * Math.PI) / 5);
    expect(found).toMatchObject([{ severity: 'warning', measure: `${area.toFixed(2)} mm²` }]);
    expect(found[0]?.message).toMatch(
      /^Outline crosses itself: 555\.03 mm² of what it encloses will stay in the sheet/,
    );
    expect(found[0]?.related).toHaveLength(1);
    expect(found[0]?.related[0]).not.toBe(found[0]?.text);
  });

  it('finds it among cut lines too, where nesting decides', () => {
    expect(crossed(`<path fill="none" stroke="#f00" stroke-width="0.1" d="${star}"/>`)).toHaveLength(1);
  });

  it('finds a hole with a twist in it, which comes out half filled', () => {
    const found = crossed('<path d="M10 10H90V90H10Z M20 20L80 80V30L20 60Z"/>');
    // Its lobes are triangles of 533.33 and 833.33 mm²; the smaller one turns the wrong way.
    expect(found).toMatchObject([{ text: 'L80 80', measure: '533.33 mm²', related: ['L20 60'] }]);
    expect(found[0]?.message).toContain('be cut out, though the rest is not');
  });

  it('takes filled area of a silhouette for what stays', () => {
    const twisted = '<path d="M0 0H100V100H0Z M20 20L80 80V30L20 60Z"/>';
    expect(crossed(twisted, 'data-tombolo-reading="sheet"')[0]?.message).toContain('stay in the sheet');
  });

  it('lets crossings be that change nothing', () => {
    expect(crossed(`<path d="${star}"/>`)).toEqual([]);
    expect(crossed('<path d="M20 20L80 80V20L20 80Z"/>')).toEqual([]);
    expect(crossed('<path fill-rule="evenodd" d="M20 20L80 80V20L20 80Z"/>')).toEqual([]);
  });

  it('lets small loops at corners be, slits, and outlines that cross others', () => {
    expect(crossed('<path fill-rule="evenodd" d="M10 10H40.05V40H40V9.95V10Z"/>')).toEqual([]);
    expect(crossed('<path fill-rule="evenodd" d="M10 50V10H90V90H10V50H40V60H60V40H40V50Z"/>')).toEqual([]);
    expect(crossed('<path fill-rule="evenodd" d="M10 10H60V60H10Z M40 40H90V90H40Z"/>')).toEqual([]);
    expect(crossed(`<rect x="10" y="10" width="40" height="40"/><path d="${star}"/>`)).toEqual([]);
  });

  it('is a hint where what changes hands is too small to see', () => {
    // Of the twisted square one half comes out.
    const twisted = (side: number) =>
      crossed(`<path fill-rule="nonzero" d="M10 10H90V90H10Z M30 30h${side}l${-side} ${side}h${side}Z"/>`);
    expect(twisted(0.9)).toMatchObject([{ severity: 'hint' }]);
    expect(twisted(1.1)).toMatchObject([{ severity: 'warning' }]);
  });
});
