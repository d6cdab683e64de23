/** A drawing of three colours as designers draw it: by the fixes that are offered it becomes a stencil. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import {
  applyEdits,
  candidatesFor,
  check,
  type Fix,
  proveFix,
  type Report,
  whyBeyondMending,
} from '../../src/engine/index';
import { areaOf, difference, intersection, regionContains } from '../../src/geometry/boolean/index';
import type { ReportedFinding } from '../../src/report/finding-id';
import { isRefusal } from '../../src/report/refusal';

const drawn = readFileSync(path.resolve(__dirname, '../editor/unfinished/otter.svg'), 'utf8');
const read = (text: string): Report => check(text, { width: 90, budget: Infinity });

/** Kinds that give up what was drawn, rather than mend it. */
const GIVES_UP = ['accept', 'remove-opening', 'cut-island-away', 'shorten-tip', 'close-slot'];
/** More than there are findings, with those that are parted on the way. */
const MOST_STEPS = 60;
/** Milliseconds. */
const PATIENCE = 300_000;

/** The first fix of a place that can be had: as it was offered, else as what may be had anyway. */
function fixFor(report: Report, finding: ReportedFinding): Fix | undefined {
  const wanted = candidatesFor(report, finding).filter(
    ({ kind, scope }) => scope === 'place' && !GIVES_UP.includes(kind),
  );
  const results = [];
  for (const candidate of wanted) {
    const result = proveFix(report, candidate);
    if (result && !isRefusal(result)) return result;
    results.push(result);
  }
  return results.find((result) => result?.anyway)?.anyway;
}

/** Takes a proven fix wherever there is one, then what may be had anyway, until nothing is left that can be mended. */
function mended(text: string): { readonly text: string; readonly titles: readonly string[] } {
  const titles: string[] = [];
  let now = text;
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const report = read(now);
    const fixes = function* () {
      for (const finding of report.findings) yield fixFor(report, finding);
    };
    let chosen: Fix | undefined;
    for (const fix of fixes()) {
      chosen ??= fix;
      if (fix && !fix.forced) {
        chosen = fix;
        break;
      }
    }
    if (!chosen) break;
    titles.push(chosen.title);
    now = applyEdits(now, chosen.edits);
  }
  return { text: now, titles };
}

describe('an otter as it was drawn', () => {
  const before = read(drawn);
  const mouthOf = ({ sheets }: Report) => {
    const openings = sheets.find(({ layer }) => layer.name === 'Ink')!.openings;
    return openings.filter((opening) => regionContains([opening], { x: 45, y: 52 }));
  };

  it(
    'has for every finding a fix, one that may be had anyway, or what must come first',
    () => {
      expect(before.findings.length).toBeGreaterThan(25);
      const left = before.findings.flatMap((finding) => {
        if (fixFor(before, finding)) return [];
        return whyBeyondMending(before, finding).some(({ first }) => first) ? [] : [finding.message];
      });
      expect(left).toEqual([]);
    },
    PATIENCE,
  );

  it('says of the neck between two seams that the water comes first', () => {
    const firstOf = (id: string, layer: string) =>
      before.findings
        .filter((finding) => finding.check === id && finding.layer === layer)
        .flatMap((finding) => whyBeyondMending(before, finding))
        .map(({ first }) => first);
    // Where the ink meets the seam of water and fur in a point, that is a part of the seam.
    expect(firstOf('short-overlap', 'Fur')).toEqual([]);
    expect(firstOf('thin-bridge', 'Fur')).toEqual(['Extend "Water" under "Fur" first.']);
  });

  describe('mended one after the other', () => {
    let done: ReturnType<typeof mended>;
    beforeAll(() => {
      done = mended(drawn);
    }, PATIENCE);

    it('ends with no finding, and without anything that was forced', () => {
      expect(read(done.text).findings.map(({ message }) => message)).toEqual([]);
      expect(done.titles.filter((title) => title.includes('anyway'))).toEqual([]);
    });

    it('still has a mouth, and every other opening that was drawn', () => {
      const [mouth] = mouthOf(before);
      const after = read(done.text);
      expect(areaOf(intersection([mouth!], mouthOf(after)))).toBeGreaterThan(0.95 * areaOf([mouth!]));
      for (const [i, { layer, openings }] of before.sheets.entries()) {
        const now = after.sheets[i]!;
        expect(now.layer.name).toBe(layer.name);
        for (const opening of openings) {
          const lost = areaOf(difference([opening], now.openings));
          expect(lost).toBeLessThan(0.1 * areaOf([opening]));
        }
      }
    });
  });
});
