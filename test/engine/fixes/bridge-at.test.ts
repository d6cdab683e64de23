import { describe, expect, it, test } from 'vitest';
import { bridgeAt, bridgeAtCaret, check } from '../../../src/engine/index';
import { distance, interpolate } from '../../../src/geometry/base/vector';
import type { Fix } from '../../../src/report/fix';
import type { Result } from '../../../src/report/refusal';
import { applyEdits } from '../../../src/text/text';
import { proven as offered, reasonOf } from '../results';

const stencil = (body: string) =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="100mm" viewBox="0 0 100 100">${body}</svg>`;
const RING = 'M30 30h40v40h-40zM40 40v20h20v-20z';
const ring = stencil(`<path d="${RING}"/>`);

function bridgeAtPoint(svg: string, x: number, y: number, layer = 0): Result<Fix> {
  const report = check(svg);
  return bridgeAt(report, report.sheets[layer]!, { x, y });
}

const middles = ({ bridges = [] }: Fix) => bridges.map(({ from, to }) => interpolate(from, to, 0.5));
const islands = (svg: string) => check(svg).findings.filter((finding) => finding.check === 'floating-island').length;

describe('a bridge at a place of the picture', () => {
  it.each([
    ['in the gap', 36, 53, 35, 53],
    ['on the island', 58, 44, 65, 44],
    ['in the gap below', 47, 67, 47, 65],
  ])('%s', (_, x, y, middleX, middleY) => {
    const mend = offered(bridgeAtPoint(ring, x, y));
    expect(mend.title).toMatch(/^Bridge the gap here \(1 bridge of 0\.80 mm\)/);
    expect(middles(mend).some((place) => distance(place, { x: middleX, y: middleY }) < 0.1)).toBe(true);
    expect(mend.bridges![0]).toMatchObject({ layer: expect.any(String), width: 0.8, shown: 1 });
    expect(mend.bridges![0]!.length).toBeCloseTo(10, 2);
    expect(islands(applyEdits(ring, mend.edits))).toBe(0);
  });

  it('where no island borders on the opening: across it, square to its sides', () => {
    const once = applyEdits(ring, offered(bridgeAtPoint(ring, 36, 53)).edits);
    const again = offered(bridgeAtPoint(once, 64.5, 47));
    expect(middles(again)[0]!.x).toBeCloseTo(65, 2);
    expect(middles(again)[0]!.y).toBeCloseTo(47, 2);
    expect(check(applyEdits(once, again.edits)).sheets[0]!.openings).toHaveLength(2);
    const slot = stencil('<rect x="20" y="40" width="60" height="6"/>');
    const { bridges } = offered(bridgeAtPoint(slot, 52, 41));
    expect(bridges![0]!.from.x).toBeCloseTo(52, 2);
    expect(bridges![0]!.to.x).toBeCloseTo(52, 2);
    expect(bridges![0]!.length).toBeCloseTo(6, 2);
  });

  it('that would not hold or has no gap is refused in a sentence', () => {
    expect(reasonOf(bridgeAtPoint(ring, 5, 5))).toMatch(
      /^There is no gap to bridge here: point at an island or an opening\.$/,
    );
    expect(reasonOf(bridgeAtPoint(stencil(''), 5, 5))).toMatch(/no gap/);
    // The rest beside the bridge would be a hole of 0.15 mm.
    const tight = bridgeAtPoint(stencil('<rect x="20" y="40" width="60" height="6"/>'), 20.55, 43);
    expect(reasonOf(tight)).toBe('It would leave an opening too small to paint.');
  });

  it('says how much of it shows', () => {
    const cover = '<rect x="25" y="25" width="10" height="50"/>';
    const stack = stencil(`<g id="a"><path d="${RING}"/></g><g id="b">${cover}</g>`);
    expect(offered(bridgeAtPoint(stack, 36, 53)).bridges![0]!.shown).toBeCloseTo(0.5, 2);
    expect(offered(bridgeAtPoint(stack, 66, 53)).bridges![0]!.shown).toBe(1);
  });

  it('with a kerf, is as wide as cut', () => {
    const report = check(ring, { kerf: 0.2 });
    const { bridges, title, edits } = offered(bridgeAt(report, report.sheets[0]!, { x: 36, y: 53 }));
    expect(title).toContain('1 bridge of 0.80 mm');
    expect(bridges![0]!.width).toBeCloseTo(0.8, 9);
    // One bridge holds it, and no more.
    expect(check(applyEdits(ring, edits), { kerf: 0.2 }).findings.map((found) => found.check)).toEqual([
      'loose-tongue',
    ]);
  });
});

test('gives one at a time, and says that a large island would lift on it', () => {
  const [small, large] = [4, 30].map((side) => {
    const from = 50 - side / 2;
    return offered(
      bridgeAtPoint(stencil(`<path d="M30 30h40v40h-40zM${from} ${from}v${side}h${side}v-${side}z"/>`), 32, 50),
    );
  });
  expect([small!.bridges!.length, large!.bridges!.length]).toEqual([1, 1]);
  expect([small!.title, large!.title].map((title) => title.includes('leaves a loose tongue'))).toEqual([false, true]);
});

describe('a bridge at the caret', () => {
  it.each([
    ['v20', 35, 50],
    ['h20', 50, 65],
    ['v-20', 65, 50],
    ['z', 50, 35],
  ])('on %s', (command, x, y) => {
    const report = check(ring);
    const offset = ring.indexOf('M40 40') + 'M40 40v20h20v-20z'.indexOf(command) + 1;
    const mend = offered(bridgeAtCaret(report, report.findings[0]!, offset));
    expect(mend.kind).toBe('bridge-island-here');
    expect(Math.min(...middles(mend).map((place) => distance(place, { x, y })))).toBeLessThan(0.1);
    expect(islands(applyEdits(ring, mend.edits))).toBe(0);
  });

  it('is worked out once for an edge, though it came to nothing', () => {
    const report = check(stencil('<path fill-rule="evenodd" d="M20 20h20v20h-20zM30 30h.23v.23h-.23z"/>'));
    const asked: string[] = [];
    const { session } = report;
    const remember = session.remember.bind(session);
    session.remember = (what, compute) =>
      remember(what, () => {
        asked.push(what);
        return compute();
      });
    const offset = report.text.indexOf('h.23v') + 1;
    const [one, other] = [0, 1].map(() => bridgeAtCaret(report, report.findings[0]!, offset));
    expect(reasonOf(one)).toMatch(/^No /);
    expect(other).toEqual(one);
    expect(asked.filter((what) => what.startsWith('bridge of'))).toHaveLength(1);
  });

  it('is not offered where the command draws something else', () => {
    const report = check(ring);
    expect(bridgeAtCaret(report, report.findings[0]!, ring.indexOf('h40') + 1)).toBeUndefined();
    expect(bridgeAtCaret(report, report.findings[0]!, 2)).toBeUndefined();
  });
});
