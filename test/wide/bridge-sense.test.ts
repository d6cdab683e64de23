/**
 * Three hundred open silhouettes and sixty words in fifteen open faces, bridged as `tombolo bridge` does and judged by
 * what shares nothing with the planner: pixels of a general renderer, a grillage of rigid plates and beams, the text.
 * Prints the table and each drawing that speaks against it. A mixed two dozen of them are taken, as all would take half an
 * hour; `TOMBOLO_JOBS=360` takes all, `TOMBOLO_SHEETS=folder` writes contact sheets, to be looked at.
 */
import { setImmediate } from 'node:timers/promises';
import { beforeAll, describe, expect, it } from 'vitest';
import { readBefore } from './bridge-sense/before';
import { writeContactSheets } from './bridge-sense/contact-sheets';
import { isUpright, type Judgement, judge } from './bridge-sense/judge';
import { mixedDrawings } from './bridge-sense/mixed-drawings';
import { added, isFlapping, type Sums, sumsOf, tableOf } from './bridge-sense/table';

const ALL = 360;
const JOBS = Number(process.env.TOMBOLO_JOBS ?? 24);

const judgements: Judgement[] = [];
let sums: Sums;
let sumsBefore: Sums;

beforeAll(async () => {
  for (const drawing of await mixedDrawings(JOBS)) {
    judgements.push(judge(drawing));
    // The renderer's pictures are only freed between turns of the event loop.
    await setImmediate();
  }
  const before = readBefore();
  const compared = (some: readonly Judgement[]) =>
    [added(some.map(sumsOf)), added(some.map(({ drawing }) => before[drawing.name]?.sums ?? {}))] as const;
  [sums, sumsBefore] = compared(judgements);
  console.log(`silhouettes and words\n${tableOf(sums, sumsBefore)}`);
  for (const isWord of [false, true]) {
    const own = judgements.filter(({ drawing }) => Boolean(drawing.word) === isWord);
    console.log(`${isWord ? 'words' : 'silhouettes'} alone\n${tableOf(...compared(own))}`);
  }
  console.log(judgements.flatMap(againstOf).join('\n'));
  const folder = process.env.TOMBOLO_SHEETS;
  if (folder) await writeContactSheets(folder, judgements, before);
}, 3_600_000);

/** What speaks against the bridges of a drawing, in a line. */
function againstOf(judgement: Judgement): string[] {
  const { drawing, left, lifts, plan, crooked, mirrored, pairs, faults, refusals, time } = judgement;
  const slanted = drawing.word?.style === 'upright' ? plan.filter((each) => !isUpright(each)).length : 0;
  const against = [
    ...left.map(({ area, fits }) => `left ${area.toFixed(2)} mm²${fits ? ', though one fits' : ''}`),
    ...lifts
      .filter(isFlapping)
      .map(({ lift, extent, bridges }) => `flaps ${lift.toFixed(1)} mm (${extent.toFixed(0)} mm on ${bridges})`),
    ...plan.filter(({ length }) => length > 12).map(({ length }) => `${length.toFixed(1)} mm long`),
    ...(crooked > 0 ? [`${crooked} crooked`] : []),
    ...(mirrored === false ? ['not mirrored'] : []),
    ...(pairs[0] > pairs[1] ? [`${pairs[0] - pairs[1]} letters not alike`] : []),
    ...(slanted > 0 ? [`${slanted} not upright`] : []),
    ...(time > 5000 ? [`${(time / 1000).toFixed(1)} s`] : []),
    ...faults,
    ...refusals.map((refusal) => `refused: ${refusal}`),
  ];
  return against.length > 0 ? [`${drawing.name}: ${against.join('; ')}`] : [];
}

describe('silhouettes and words that people drew for other purposes', () => {
  it.runIf(JOBS >= ALL)('are all there', () => {
    expect(judgements.filter(({ drawing }) => !drawing.word)).toHaveLength(300);
    expect(judgements.filter(({ drawing }) => drawing.word)).toHaveLength(60);
    expect(sums.islands).toBeGreaterThan(1000);
  });

  it('keep all bytes outside the edits', () => {
    const faults = judgements.flatMap((each) => each.faults.map((fault) => `${each.drawing.name}: ${fault}`));
    expect(faults.filter((fault) => !fault.includes('a second run'))).toEqual([]);
  });

  it('have no letter whose counter is left, hangs loosely or is bridged otherwise than the same letter beside it', () => {
    const words = judgements.filter(({ drawing }) => drawing.word);
    expect(words.flatMap(({ drawing, left }) => left.map(() => drawing.name))).toEqual([]);
    expect(words.flatMap(({ drawing, lifts }) => (lifts.some(isFlapping) ? [drawing.name] : []))).toEqual([]);
    expect(words.filter(({ pairs: [all, alike] }) => alike < all).map(({ drawing }) => drawing.name)).toEqual([]);
    expect(
      words.filter(({ plan }) => plan.some(({ length }) => length > 12)).map(({ drawing }) => drawing.name),
    ).toEqual([]);
  });

  it('have hardly an island that lifts too far and is not told of', () => {
    // The model of the judge and that of the planner differ by a few hundredths.
    expect(sums.untold).toBeLessThanOrEqual(0.005 * sums.large + 1);
  });

  it('bring no tongue, doubled cut or opening at the edge that is not told', () => {
    const untold = judgements.filter(({ along }) =>
      Object.values(along).some(([there, told]) => told < Math.min(1, there)),
    );
    expect(untold.map(({ drawing }) => drawing.name)).toEqual([]);
  });
});
