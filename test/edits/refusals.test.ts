import { describe, expect, it } from 'vitest';
import { cutStrips, stripsFor } from '../../src/edits/bridge/cut';
import { planBridges } from '../../src/edits/plan/index';
import type { Sheet } from '../../src/sheet/types';
import { sheetsOf } from './bridging';
import { svg } from './drawings';

function outcome(inside: string): ReturnType<typeof cutStrips> {
  const sheet = sheetsOf(svg(inside))[0] as Sheet;
  const { bridges } = planBridges(
    sheet,
    sheet.pieces.filter((piece) => piece.island),
    { width: 0.8 },
  );
  expect(bridges.length).toBeGreaterThan(0);
  return cutStrips(sheet, stripsFor(sheet, bridges));
}

describe('what cannot be done is refused in a sentence', () => {
  const cases: Record<string, [string, RegExp]> = {
    'dashes that a rule insists on': [
      '<style>.a { stroke-dasharray: 200 1 !important }</style><circle class="a" ' +
        'cx="30" cy="30" r="16" fill="none" stroke="#000" stroke-width="5"/>',
      /would dash the line anew/,
    ],
    'a rule for paths alone': [
      '<style>path { stroke: red }</style><circle cx="30" cy="30" r="16" fill="none" ' +
        'stroke="#000" stroke-width="5"/>',
      /style rule for path/,
    ],
  };
  it.each(Object.keys(cases))('%s', (what) => {
    const [inside, sentence] = cases[what] ?? ['', /never/];
    const result = outcome(inside);
    expect('refusal' in result ? result.refusal : 'done').toMatch(sentence);
    expect('refusal' in result ? result.refusal : '').toMatch(/^[A-Z].*\.$/);
  });
  it('a shape that is only near does not stand in the way', () => {
    const near =
      '<style>rect { fill: #222 }</style><path fill-rule="evenodd" d="M10 10H50V50H10zM20 20H40V40H20z"/>' +
      '<rect x="2" y="2" width="4" height="56"/><path fill="none" stroke="#222" stroke-dasharray="2 1" d="M54 ' +
      '4 57 57"/>';
    expect(outcome(near)).toHaveProperty('edits');
  });
});
