import { describe, expect, it } from 'vitest';
import { findingsOf, sheetOf } from '../stencils';

const buried = (svg: string) => findingsOf('buried-opening', svg);

describe('buried-opening', () => {
  it('tells what later layers paint over, and nothing else', () => {
    const svg = sheetOf(
      '<g id="a"><circle cx="20" cy="50" r="9"/><circle cx="50" cy="50" r="9"/></g>' +
        '<g id="b"><circle cx="50" cy="50" r="12"/></g>',
    );
    const [hint, ...others] = buried(svg);
    expect(others).toEqual([]);
    expect(hint).toMatchObject({ severity: 'hint', layer: 'a', text: '<circle cx="50" cy="50" r="9"/>' });
    expect(hint?.message).toMatch(/^Opening completely covered by later colours/);
  });

  it('takes later layers together', () => {
    const half = (id: string, x: number) => `<g id="${id}"><path d="M${x} 30h20v40h-20z"/></g>`;
    expect(
      buried(sheetOf(`<g id="a"><circle cx="50" cy="50" r="9"/></g>${half('b', 31)}${half('c', 50)}`)),
    ).toHaveLength(1);
    expect(buried(sheetOf(`<g id="a"><circle cx="50" cy="50" r="9"/></g>${half('b', 31)}${half('c', 51.1)}`))).toEqual(
      [],
    );
  });

  it('counts the same outline twice as covered, however it is written', () => {
    const arcs = '<path d="M41 50a9 9 0 0 1 18 0a9 9 0 0 1-18 0z"/>';
    expect(buried(sheetOf(`<g id="a"><circle cx="50" cy="50" r="9"/></g><g id="b">${arcs}</g>`))).toHaveLength(1);
  });

  it('does not look at what was painted before, or at an opening that shows in part', () => {
    const [large, small] = ['<circle cx="50" cy="50" r="12"/>', '<circle cx="50" cy="50" r="9"/>'];
    expect(buried(sheetOf(`<g id="a">${large}</g><g id="b">${small}</g>`))).toEqual([]);
    expect(buried(sheetOf(`<g id="a">${large}</g><g id="b"><circle cx="51" cy="50" r="12"/></g>`))).toEqual([]);
    const ring = '<path fill-rule="evenodd" d="M30 30h40v40h-40zM48 48h4v4h-4z"/>';
    expect(buried(sheetOf(`<g id="a">${small}</g><g id="b">${ring}</g>`))).toEqual([]);
  });

  it('leaves register marks alone: they are cut in every sheet', () => {
    const mark = '<path data-tombolo-register="1" d="M3 3h4v1h-4z"/>';
    expect(
      buried(sheetOf(`<g id="a">${mark}<path d="M20 20h9v9h-9z"/></g><g id="b">${mark}<path d="M50 20h9v9h-9z"/></g>`)),
    ).toEqual([]);
  });

  it('is silent about what the drawing shows, where no order of its paints prints it', () => {
    const square = (fill: string, at: number, size: number) =>
      `<path fill="${fill}" d="M${at} ${at}h${size}v${size}h-${size}z"/>`;
    const drawn = square('#c33', 5, 30) + square('#36c', 15, 50) + square('#c33', 40, 8);
    expect(buried(sheetOf(drawn).replace('<svg ', '<svg data-tombolo-layers="by-paint" '))).toEqual([]);
  });
});
