/** Checks one heavy drawing, or a file, in a process of its own, and prints what that took: `run-one.mjs NAME`. */
import { readFileSync } from 'node:fs';
import { check } from '../../../src/engine/check/check-file';
import { HEAVY_DRAWINGS } from '../../engine/check/heavy-drawings';

export interface Taken {
  /** Characters of the text. */
  readonly length: number;
  /** Milliseconds of processor time, of all threads, for the check alone. */
  readonly cpu: number;
  /** Most megabytes that the process held, those of Node.js among them. */
  readonly memory: number;
  /** By check. */
  readonly counts: Readonly<Record<string, number>>;
  readonly unfinished: string | undefined;
  /** How many places `unfinished` points at. */
  readonly places: number;
}

const [, , name = ''] = process.argv;
const text = HEAVY_DRAWINGS.get(name)?.() ?? readFileSync(name, 'utf8');
const before = process.cpuUsage();
const { complete } = check(text);
const { user, system } = process.cpuUsage(before);
const counts: Record<string, number> = {};
for (const { check: id } of complete) counts[id] = (counts[id] ?? 0) + 1;
const unfinished = complete.find(({ check: id }) => id === 'unfinished');
const taken: Taken = {
  length: text.length,
  cpu: Math.round((user + system) / 1000),
  memory: Math.round(process.resourceUsage().maxRSS / 1024),
  counts,
  unfinished: unfinished?.message,
  places: unfinished?.related.length ?? 0,
};
process.stdout.write(JSON.stringify(taken));
