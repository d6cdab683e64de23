/** What holds of drawings, in numbers that add up. */
import { isUpright, type Judgement } from './judge';
import type { Lift } from './statics';

/** mm: what lifts farther lets paint creep under it, as the sheet's tongues are judged. */
const MOST_LIFT = 1;
/** mm: smaller islands are held wherever a bridge is. */
const LARGE = 6;

const KEYS = [
  'drawings',
  'islands',
  'left',
  /** Of those, the ones that a bridge fits by the pixels. */
  'leftThoughOneFits',
  'withLeft',
  'bridges',
  /** Islands of 6 mm or more that hang; those that lift too far; those that reach past their bridges by a third. */
  'large',
  'flapping',
  /** Of the flapping ones those in drawings of which that is not told. */
  'untold',
  'reaching',
  'over12',
  'over20',
  /** mm; the longest of all. */
  'longest',
  'inUpright',
  'crooked',
  'symmetric',
  'mirrored',
  'pairs',
  'alike',
  /** Bridges in words of upright faces, and those that stand upright. */
  'inWords',
  'uprightInWords',
  /** mm² */
  'lost',
  'faults',
  'refusals',
  'alongThere',
  'alongTold',
  /** Of processor time; the most of all. */
  'seconds',
  'slowest',
] as const;

export type Sums = Readonly<Record<(typeof KEYS)[number], number>>;

/** Not added up: the largest counts. */
const LARGEST: readonly string[] = ['longest', 'slowest'];

export function added(all: readonly Partial<Sums>[]): Sums {
  const of = (key: (typeof KEYS)[number]): number => {
    const values = all.map((each) => each[key] ?? 0);
    return LARGEST.includes(key) ? Math.max(0, ...values) : values.reduce((sum, value) => sum + value, 0);
  };
  return Object.fromEntries(KEYS.map((key) => [key, of(key)])) as unknown as Sums;
}

export function sumsOf(judgement: Judgement): Sums {
  const { drawing, islands, left, lifts, plan, crooked, inUpright, mirrored, pairs, lost, faults, refusals, time } =
    judgement;
  const large = lifts.filter(({ extent }) => extent >= LARGE);
  const inWord = drawing.word?.style === 'upright' ? plan : [];
  const along = Object.values(judgement.along);
  return {
    drawings: 1,
    islands,
    left: left.length,
    leftThoughOneFits: left.filter(({ fits }) => fits).length,
    withLeft: Math.min(1, left.length),
    bridges: plan.length,
    large: large.length,
    flapping: large.filter(isFlapping).length,
    untold: judgement.tellsOfLifting ? 0 : large.filter(isFlapping).length,
    reaching: large.filter(({ reach, extent }) => reach > extent / 3).length,
    over12: plan.filter(({ length }) => length > 12).length,
    over20: plan.filter(({ length }) => length > 20).length,
    longest: Math.max(0, ...plan.map(({ length }) => length)),
    inUpright,
    crooked,
    symmetric: Number(mirrored !== undefined),
    mirrored: Number(mirrored ?? false),
    pairs: pairs[0],
    alike: pairs[1],
    inWords: inWord.length,
    uprightInWords: inWord.filter(isUpright).length,
    lost,
    faults: faults.length,
    refusals: refusals.length,
    alongThere: along.reduce((sum, [there]) => sum + there, 0),
    alongTold: along.reduce((sum, [, told]) => sum + told, 0),
    seconds: time / 1000,
    slowest: time / 1000,
  };
}

/** What has no bridge is left, and falls out. */
export function isFlapping({ lift, extent, bridges }: Pick<Lift, 'lift' | 'extent' | 'bridges'>): boolean {
  return bridges > 0 && extent >= LARGE && lift > MOST_LIFT;
}

/** @param before the same drawings by the planner that went island by island */
export function tableOf(now: Sums, before: Sums): string {
  const rows: [string, (s: Sums) => string][] = [
    ['drawings, islands, bridges', (s) => `${s.drawings}, ${s.islands}, ${s.bridges}`],
    ['islands left', (s) => share(s.left, s.islands)],
    ['  in drawings; though a bridge fits', (s) => `${s.withLeft}; ${s.leftThoughOneFits}`],
    ['flapping by statics (over 1 mm)', (s) => share(s.flapping, s.large)],
    ['  though it is not told', (s) => share(s.untold, s.large)],
    ['reaching past their bridges by a third', (s) => share(s.reaching, s.large)],
    ['bridges over 12 mm; over 20 mm; longest', (s) => `${s.over12}; ${s.over20}; ${s.longest.toFixed(1)} mm`],
    ['crooked (1 to 12°) in upright drawings', (s) => share(s.crooked, s.inUpright)],
    ['mirror-symmetric drawings mirrored', (s) => share(s.mirrored, s.symmetric)],
    ['same letters alike', (s) => share(s.alike, s.pairs)],
    ['upright in upright words', (s) => share(s.uprightInWords, s.inWords)],
    ['paint lost', (s) => `${s.lost.toFixed(0)} mm²`],
    ['new tongues, doubled cuts, at the edge; told', (s) => `${s.alongThere}; ${s.alongTold}`],
    ['refusals; faults in texts', (s) => `${s.refusals}; ${s.faults}`],
    ['processor time; slowest', (s) => `${s.seconds.toFixed(1)} s; ${s.slowest.toFixed(1)} s`],
  ];
  return [['', () => ''] as const, ...rows]
    .map(([what, of], i) =>
      i === 0
        ? `  ${''.padEnd(46)} ${'before'.padEnd(26)} now`
        : `  ${what.padEnd(46)} ${of(before).padEnd(26)} ${of(now)}`,
    )
    .join('\n');
}

function share(part: number, whole: number): string {
  return `${part} of ${whole} (${((100 * part) / Math.max(1, whole)).toFixed(1)} %)`;
}
