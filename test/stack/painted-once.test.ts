import { expect, test } from 'vitest';
import { check } from '../../src/engine/index';
import { areaOf } from '../../src/geometry/boolean/index';
import { stackScene } from '../../src/picture/picture';
import { sprayedThrough } from '../../src/stack/painted-once';

const MARK = '<path data-tombolo-register="cross-hair" d="M4 2H6V4H8V6H6V8H4V6H2V4H4Z"/>';
const text = (second: string) =>
  '<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="40mm" viewBox="0 0 60 40">' +
  `<g id="sun" fill="#ffb300">${MARK}<rect x="20" y="10" width="20" height="20"/></g>` +
  `<g id="again" ${second}>${MARK}<rect x="22" y="12" width="16" height="16"/></g></svg>`;

test('the register marks of a second sheet get no second coat of the same paint', () => {
  const report = check(text('data-tombolo-with="sun" fill="#ffb300"'));
  const sheets = report.stack.layers.map(({ sheet }) => sheet);
  expect(sprayedThrough(sheets).map(areaOf)).toEqual([400 + 20, 256]);
  // The sheet itself has them: it is cut with its marks, and laid by them.
  expect(areaOf(sheets[1]!.openings)).toBeCloseTo(256 + 20, 9);
  const coats = stackScene(report).sceneLayers.flatMap(({ parts }) => parts.filter(({ role }) => role === 'paint'));
  expect(coats.map(({ outline }) => outline.match(/M/g)!.length)).toEqual([2, 1]);
  const sheet = stackScene(report, { look: 'sheet', layer: 'again' }).sceneLayers.flatMap(({ parts }) => parts);
  expect(sheet.find(({ role }) => role === 'card')!.outline.match(/M/g)!.length).toBe(3);
});

test('marks of another paint, and of a first sheet without any, are sprayed', () => {
  const other = check(text('fill="#2f4654"')).stack.layers.map(({ sheet }) => sheet);
  expect(sprayedThrough(other).map(areaOf)).toEqual([420, 276]);
  const bare = check(text('data-tombolo-with="sun" fill="#ffb300"').replace(MARK, '')).stack.layers;
  expect(sprayedThrough(bare.map(({ sheet }) => sheet)).map(areaOf)).toEqual([400, 276]);
});
