import { describe, expect, it } from 'vitest';
import { findingsOf, sheetOf } from '../stencils';

const broken = (svg: string) => findingsOf('unreadable-markup', svg);

describe('unreadable-markup', () => {
  it.each([
    ['a missing end tag', sheetOf('<g><rect x="20" y="20" width="9" height="9"/>'), 'g'],
    ['a missing quote', sheetOf('<rect x="20/><rect x="20" y="20" width="9" height="9"/>'), undefined],
    ['an unknown entity', sheetOf('<title>reeds &amp; &heron;</title>'), '&heron;'],
  ])('reports %s', (_, svg, text) => {
    const found = broken(svg);
    expect(found.length).toBeGreaterThan(0);
    expect(found[0]?.severity).toBe('error');
    if (text !== undefined) expect(found.map((each) => each.text)).toContain(text);
  });

  it('reports a file that is no SVG', () => {
    expect(
      broken('{"not": "xml"}')
        .map(({ message }) => message)
        .join(' '),
    ).toMatch(/No svg element here/);
  });

  it.each(['', ' \n'])('says once that a file is empty: %j', (text) => {
    expect(broken(text).map(({ message }) => message)).toEqual([expect.stringMatching(/^The file is empty/)]);
  });

  it('has nothing to say of a sound file', () => {
    expect(broken(`<?xml version="1.0"?>\n<!-- post 8 -->\n${sheetOf('<title>🦩 &amp; co</title>')}\n`)).toEqual([]);
  });
});
