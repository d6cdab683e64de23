/** The little picture of a finding's place, drawn by an independent renderer. */
import { Resvg } from '@resvg/resvg-js';
import { expect, test } from 'vitest';
import { check } from '../../src/engine/index';
import { placeSvg } from '../../src/picture/place-svg';

const PAINT = '#225588';
const CARD = [0xd8, 0xc3, 0x9b];

/** A sheet of 200 mm; at 100, 100 a square opening of 24 mm whose middle of 12 mm falls out. */
const ring = (more = '') => `<svg xmlns="http://www.w3.org/2000/svg" width="200mm" height="200mm" viewBox="0 0 200 200">
  <path fill="${PAINT}" fill-rule="evenodd" d="M88 88h24v24h-24z m6 6h12v12h-12z${more}"/></svg>`;

function pictureOf(text: string): string | undefined {
  const report = check(text, {});
  const island = report.findings.find((finding) => finding.check === 'floating-island');
  if (!island) throw new Error('There is no island.');
  return placeSvg(report, island);
}

test('shows the sheet, what is cut out in its paint, and where the finding is', () => {
  const svg = pictureOf(ring()) ?? '';
  const [x = 0, , width = 0] = (/viewBox="([^"]*)"/.exec(svg)?.[1] ?? '').split(' ').map(Number);
  const image = new Resvg(svg).render();
  const at = (mm: number) => {
    const column = Math.round(((mm - x) / width) * image.width);
    const row = Math.round(image.height / 2);
    return [...image.pixels.subarray((row * image.width + column) * 4, (row * image.width + column) * 4 + 3)];
  };
  expect([image.width, image.height]).toEqual([160, 96]);
  expect(at(91)).toEqual([0x22, 0x55, 0x88]);
  expect(at(84)).toEqual(CARD);
  expect(at(100)).toEqual(CARD);
});

test('draws nothing that lies elsewhere', () => {
  const far = Array.from({ length: 500 }, (_, i) => `M${(i % 50) * 4 + 1} ${Math.floor(i / 50) * 2 + 1}h2v1h-2z`).join(
    '',
  );
  expect(pictureOf(ring(far))).toBe(pictureOf(ring()));
});

test('is left out where there is too much to draw, and where a finding has no place', () => {
  const teeth = Array.from({ length: 2400 }, (_, i) => `l.005 ${i % 2 === 0 ? '.4' : '-.4'}`).join('');
  const report = check(ring(`M90 86${teeth}v-1h-12z`), {});
  const island = report.findings.find((finding) => finding.check === 'floating-island');
  expect(island && placeSvg(report, island) === undefined).toBe(true);
  const unstated = check('<svg xmlns="http://www.w3.org/2000/svg"><rect x="5" y="5" width="9" height="9"/></svg>', {});
  const [size] = unstated.findings;
  expect(size && placeSvg(unstated, size)).toBeUndefined();
});
