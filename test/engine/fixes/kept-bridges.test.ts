/** Bridges of a plan in later builds of the same drawing: the demo's program, with other parameters each time. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { bridgeIslands, check, type KeptBridge, keepBridges, keptBridgeOf } from '../../../src/engine/index';
import { cases } from '../../thorough';

const POSTS = path.resolve(import.meta.dirname, '../../../media/demo/posts/posts.mjs');
let folder: string;
let plan: KeptBridge[];

function build(number: string, ...words: string[]): string {
  execFileSync(process.execPath, [POSTS, `number=${number}`, ...words], { cwd: folder });
  return readFileSync(path.join(folder, `post-${number}.svg`), 'utf8');
}

function planFor(text: string): KeptBridge[] {
  const report = check(text);
  return bridgeIslands(report).plan.map((bridge) => keptBridgeOf(report, bridge)!);
}

/** As a file keeps them. */
const throughJson = (bridges: readonly KeptBridge[]): KeptBridge[] => JSON.parse(JSON.stringify(bridges));

beforeAll(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'tombolo-kept-'));
  plan = throughJson(planFor(build('8')));
});
afterAll(() => rmSync(folder, { recursive: true }));

function kept(text: string) {
  const outcome = keepBridges(check(text), plan);
  if (typeof outcome === 'string') throw new Error(outcome);
  return outcome;
}

const islandsIn = (text: string): number =>
  check(text).sheets.reduce((sum, { pieces }) => sum + pieces.filter(({ island }) => island).length, 0);

describe('a plan of bridges', () => {
  it('names each island by the element that draws it', () => {
    expect(new Set(plan.map(({ island }) => island.id))).toEqual(new Set(['halo', 'core', 'digit1']));
  });

  it('gives the drawing it was made for the bridges that it has', () => {
    const text = build('8');
    expect(kept(text)).toMatchObject({ bridges: plan.length, refusals: [], moved: [], unnamed: 0 });
    expect(kept(text).text).toBe(bridgeIslands(check(text)).text);
  });

  const changes = Array.from({ length: cases(50, 4) }, (_, i) => [
    `reeds=${3 + (i % 5)}`,
    `sway=${i % 6}`,
    `sun=${13 + (i % 8)}`,
  ]);
  it.each(changes)('keeps them through %s %s %s', (...words) => {
    const text = build('8', ...words);
    const outcome = kept(text);
    expect(outcome).toMatchObject({ bridges: plan.length, refusals: [], unnamed: 0 });
    expect(islandsIn(outcome.text)).toBe(0);
    const held = outcome.plan.map((bridge) => keptBridgeOf(check(text), bridge)?.island.id);
    expect(held.sort()).toEqual(plan.map(({ island }) => island.id).sort());
  });

  it('moves a bridge a little where a build has a reed in its way', () => {
    const outcome = kept(build('8', 'reeds=4', 'sway=3', 'sun=18'));
    expect(outcome).toMatchObject({ moved: ['The island in "halo" has bridges at other places.'], refusals: [] });
    const below = outcome.plan.filter(({ layer, to }) => layer === 'Sun' && to.y > 49);
    expect(below).toHaveLength(1);
    // The reed's tip reaches from 49 to 50 mm and touches the sun; the bridge was at 50.
    expect(Math.abs(below[0]!.from.x - 50)).toBeGreaterThan(0.4);
    expect(Math.abs(below[0]!.from.x - 50)).toBeLessThan(3);
  });

  it('says which island has a bridge less than it names', () => {
    const text = build('8');
    const tooWide = plan.map((bridge, i) => (i === 0 ? { ...bridge, width: 40 } : bridge));
    const outcome = keepBridges(check(text), tooWide);
    expect(outcome).toMatchObject({
      bridges: plan.length - 1,
      refusals: [{ message: 'Layer "Sun": The island in "halo" has a bridge less: No bridge fits there.' }],
    });
  });

  it('says what is not here any more, and how many islands it does not name', () => {
    const outcome = kept(build('12'));
    expect(outcome.refusals).toEqual([{ message: 'Layer "Numeral": The island in "digit1" is not here any more.' }]);
    expect(kept(build('86')).unnamed).toBe(1);
  });

  it('that is for another drawing is refused', () => {
    const other =
      '<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="40mm" viewBox="0 0 60 40"><g id="Numeral"><path id="ring" fill-rule="evenodd" d="M10 10H50V30H10ZM20 15V25H40V15Z"/></g></svg>';
    expect(keepBridges(check(other), plan)).toBe(
      'The plan is for another drawing: of the 4 islands that it names, 0 are here.',
    );
    expect(keepBridges(check(other), [])).toBe('The plan has no bridges.');
  });
});
