/**
 * What the planner that went island by island made of the same drawings, kept to be compared with: of 153 of them, as it
 * took minutes for some of the others.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { tidy } from '../../../src/format/tidy';
import type { Judgement } from './judge';
import { type Sums, sumsOf } from './table';

export interface Before {
  /** What is not nought. */
  readonly sums: Partial<Sums>;
  /** Sheet mm: x and y where it leaves the island, x and y where it ends. */
  readonly bridges: readonly (readonly number[])[];
}

const FILE = path.join(__dirname, 'before.json');

export function readBefore(): Readonly<Record<string, Before>> {
  return JSON.parse(readFileSync(FILE, 'utf8')) as Record<string, Before>;
}

/** Only to be run where another planner is to be compared with from now on. */
export function writeBefore(judgements: readonly Judgement[]): void {
  const lines = judgements.map((judgement) => {
    const sums = Object.entries(sumsOf(judgement)).filter(([, value]) => value !== 0);
    const bridges = judgement.plan.map(({ from, to }) =>
      [from.x, from.y, to.x, to.y].map((value) => Number(value.toFixed(1))),
    );
    const before = { sums: Object.fromEntries(sums.map(([key, value]) => [key, tidy(value)])), bridges };
    return `${JSON.stringify(judgement.drawing.name)}: ${JSON.stringify(before)}`;
  });
  writeFileSync(FILE, `{\n${lines.join(',\n')}\n}\n`);
}
