import { describe, expect, it } from 'vitest';
import { FindingNumbers } from '../../../src/worker/bench/finding-numbers';
import { CheckedDocument } from '../../../src/worker/documents/checked-document';

/** Rings whose middles fall out, from left to right. */
const rings = (...places: readonly number[]) =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="200mm" height="40mm" viewBox="0 0 200 40" data-tombolo-reading="openings">
<g id="reeds">${places.map(ring).join('\n')}</g></svg>`;
const ring = (x: number) => `<path fill-rule="evenodd" d="M${x} 10h20v20h-20ZM${x + 5} 15h10v10h-10Z"/>`;

let version = 0;
const checked = (text: string) => {
  version += 1;
  return CheckedDocument.check({ uri: 'file:///reeds.svg', version, open: true, text }, undefined);
};

/** Numbers of the islands, from left to right. */
function numbersOf(numbers: FindingNumbers, text: string): number[] {
  const document = checked(text);
  const given = numbers.number([document]);
  return document.report.findings
    .filter(({ check }) => check === 'floating-island')
    .sort((a, b) => (a.at?.x ?? 0) - (b.at?.x ?? 0))
    .map((finding) => given.get(finding) ?? 0);
}

describe('the number of a finding', () => {
  it('counts from one, and is the same while nothing changes', () => {
    const numbers = new FindingNumbers();
    expect(numbersOf(numbers, rings(10, 50, 90))).toEqual([1, 2, 3]);
    expect(numbersOf(numbers, rings(10, 50, 90))).toEqual([1, 2, 3]);
  });

  it('stays when another is mended; no other gets it', () => {
    const numbers = new FindingNumbers();
    numbersOf(numbers, rings(10, 50, 90));
    expect(numbersOf(numbers, rings(10, 90))).toEqual([1, 3]);
    expect(numbersOf(numbers, rings(10, 90, 130))).toEqual([1, 3, 4]);
  });

  it('comes back when the finding comes back', () => {
    const numbers = new FindingNumbers();
    numbersOf(numbers, rings(10, 50, 90));
    numbersOf(numbers, rings(10, 90));
    expect(numbersOf(numbers, rings(10, 50, 90))).toEqual([1, 2, 3]);
  });

  it('goes with the shape, however far that is moved, and whatever text comes before it', () => {
    const numbers = new FindingNumbers();
    numbersOf(numbers, rings(10, 50, 90));
    expect(numbersOf(numbers, rings(10, 50, 90).replace('<g id', '<!-- the bank --><g id'))).toEqual([1, 2, 3]);
    const moved = rings(10, 50, 90).replace(
      '<path fill-rule="evenodd" d="M90',
      '<path fill-rule="evenodd" transform="translate(80 0)" d="M90',
    );
    expect(numbersOf(numbers, moved)).toEqual([1, 2, 3]);
  });

  it('goes with the place where the text of a finding is another', () => {
    const numbers = new FindingNumbers();
    numbersOf(numbers, rings(10, 50));
    expect(numbersOf(numbers, rings(11, 51).replaceAll('path fill-rule', 'path  fill-rule'))).toEqual([1, 2]);
  });
});
