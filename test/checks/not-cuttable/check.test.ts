import { describe, expect, it } from 'vitest';
import { findingsOf, sheetOf } from '../stencils';

const PNG = 'data:image/png;base64,iVBORw0KGgo=';

describe('not-cuttable', () => {
  it.each([
    ['text', '<text x="20" y="50">post 8</text>'],
    ['a raster image', `<image x="20" y="20" width="20" height="20" href="${PNG}"/>`],
    [
      'a gradient',
      '<linearGradient id="g"><stop stop-color="red"/><stop offset="1" stop-color="blue"/></linearGradient>' +
        '<rect x="20" y="20" width="20" height="20" fill="url(#g)"/>',
    ],
    [
      'a pattern',
      '<pattern id="p" width="4" height="4"><rect width="2" height="2"/></pattern>' +
        '<rect x="20" y="20" width="20" height="20" fill="url(#p)"/>',
    ],
    ['half-transparent paint', '<rect x="20" y="20" width="20" height="20" opacity="0.5"/>'],
  ])('reports %s', (_, body) => {
    const found = findingsOf('not-cuttable', sheetOf(body));
    expect(found).toHaveLength(1);
    expect(['error', 'warning']).toContain(found[0]?.severity);
    expect(found[0]?.message.length).toBeGreaterThan(30);
  });

  it('lets flat colours go', () => {
    expect(
      findingsOf('not-cuttable', sheetOf('<rect x="20" y="20" width="20" height="20" fill="teal" opacity="1"/>')),
    ).toEqual([]);
  });
});
