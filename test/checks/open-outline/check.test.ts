import { describe, expect, it } from 'vitest';
import { findingsOf, sheetOf } from '../stencils';

const STATED = 'data-tombolo-reading="outlines" fill="none" stroke="#f00" stroke-width="0.1"';
const open = (body: string, attributes = STATED) => findingsOf('open-outline', sheetOf(body, attributes));

describe('open-outline', () => {
  it('finds a line that does not close, with the gap between its ends', () => {
    const found = open('<path d="M10 10H40V40H10V12.5"/>');
    expect(found).toMatchObject([{ text: '10H40V40H10V12.5'.slice(2), severity: 'error', measure: '2.50 mm' }]);
    expect(found[0]?.message).toMatch(/^Outline not closed: ends 2\.50 mm apart, so nothing is cut out/);
  });

  it('finds ends that only look as if they met, which are no outline to anybody', () => {
    expect(open('<path d="M10 10H40V40H10L10 10.004"/>')).toMatchObject([{ measure: '0.00 mm' }]);
    expect(open('<path d="M10 10H40V40H10L10 10"/>')).toEqual([]);
  });

  it('puts lines together that meet end to end', () => {
    const sides = '<path d="M10 10H40"/><line x1="40" y1="10" x2="40" y2="40"/><polyline points="10,10 10,40"/>';
    const found = open(sides);
    expect(found).toHaveLength(1);
    expect(found[0]?.message).toMatch(/^3 lines meet but do not close: ends 30\.00 mm apart/);
    const round = open(`${sides}<path d="M40.01 40L10 40.01"/>`);
    expect(round).toMatchObject([{ measure: '0.00 mm' }]);
    expect(round[0]?.message).toMatch(/^4 lines meet end to end but are not joined/);
    expect(round[0]?.related).toHaveLength(3);
  });

  it('tells lines apart that do not meet', () => {
    expect(open('<path d="M10 10H40"/><path d="M10 20H40"/><path d="M40.5 20V40"/>')).toHaveLength(3);
  });

  it('says nothing of closed outlines, register marks, wide lines and other readings', () => {
    expect(open('<path d="M10 10H40V40Z"/><circle cx="70" cy="70" r="9"/>')).toEqual([]);
    expect(open('<g data-tombolo-register=""><path d="M1 2H3"/></g>')).toEqual([]);
    expect(open('<path stroke-width="3" d="M10 10H40V40"/>')).toEqual([]);
    expect(open('<path d="M10 10H40V40"/>', '')).toEqual([]);
  });
});
