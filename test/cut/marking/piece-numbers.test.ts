import { expect, it as test } from 'vitest';
import { loosePieces } from '../../../src/cut/loose-pieces';
import { type CutSheet, check, cutStack } from '../../../src/engine/index';

/** Two loose pieces that are kept: one with room for its number, one without. */
const text =
  '<svg xmlns="http://www.w3.org/2000/svg" width="80mm" height="60mm" viewBox="0 0 80 60">' +
  '<!-- tombolo accept floating-island: laid by hand -->' +
  '<path fill-rule="evenodd" d="M10 10H40V40H10ZM15 15V35H35V15Z"/>' +
  '<!-- tombolo accept floating-island: laid by hand -->' +
  '<path fill-rule="evenodd" d="M50 20H60V30H50ZM54.2 24.2V25.8H55.8V24.2Z"/></svg>';
const report = check(text);
const lines = ({ pen }: CutSheet, within: readonly [number, number, number, number]) =>
  pen.filter((line) => line.every(({ x, y }) => x > within[0] && x < within[2] && y > within[1] && y < within[3]));

test('loose pieces that are kept are counted sheet by sheet', () => {
  expect(loosePieces(report).kept.map(({ label }) => label)).toEqual(['1.1', '1.2']);
  expect(loosePieces(check(text.replaceAll('accept floating', 'except floating')))).toEqual({ kept: [], others: 2 });
});

test('a number stands on its piece; where it has no room, beside it with a line to it', () => {
  const [plain, labelled] = [cutStack(report)[0]!, cutStack(report, { labels: true })[0]!];
  expect(plain.pen).toEqual([]);
  expect(labelled.notes).toEqual([]);
  // 1, a full stop, 1: of two lines, one and two.
  expect(lines(labelled, [15, 15, 35, 35])).toHaveLength(5);
  const leaders = labelled.pen.filter(
    (line) => line.length === 2 && Math.hypot(line[1]!.x - 55, line[1]!.y - 25) < 0.2,
  );
  expect(leaders).toHaveLength(1);
  const [{ x, y }] = leaders[0]! as unknown as [{ x: number; y: number }];
  expect(x < 50 || x > 60 || y < 20 || y > 30).toBe(true);
});

test('is said where there is none', () => {
  const narrow = check(
    text.replace('width="80mm" height="60mm" viewBox="0 0 80 60"', 'width="12mm" height="12mm" viewBox="49 19 12 12"'),
  );
  const notes = cutStack(narrow, { labels: true }).flatMap((sheet) => sheet.notes);
  expect(notes).toContain('no room for the number 1.1');
});
