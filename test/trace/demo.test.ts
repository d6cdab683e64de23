/** The demo's program, traced: what falls out is told at the helpers' callers, and nothing of the program changes. */
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { check, generatorsIn } from '../../src/engine/index';
import { TraceWorkshop } from './workshop';

const POSTS = path.resolve(import.meta.dirname, '../../media/demo/posts/posts.mjs');

let workshop: TraceWorkshop;
beforeAll(async () => {
  workshop = await TraceWorkshop.create();
});
afterAll(() => workshop.dispose());

test('each island of a post leads to the line that drew it', async () => {
  const source = readFileSync(POSTS, 'utf8');
  await workshop.file('posts.mjs', source);
  execFileSync(process.execPath, ['posts.mjs', 'number=86'], { cwd: workshop.folder });
  const plain = workshop.read('post-86.svg');
  const { outputs } = await workshop.traced([process.execPath, 'posts.mjs', 'number=86']);
  expect(workshop.read('post-86.svg')).toBe(plain);
  const report = check(plain);
  const generatorOf = generatorsIn(report.drawing.document, outputs[0]!.marks);
  const told = report.findings
    .filter((finding) => finding.check === 'floating-island')
    .map(({ span }) => {
      const { range, drawn } = generatorOf(span)!;
      return [source.split('\n')[range.start.line]?.slice(range.start.character, range.start.character + 8), drawn];
    });
  expect(told).toEqual([
    ['<path id', 'halo, number 1 of 2 drawn here'],
    ['<path id', 'core, number 2 of 2 drawn here'],
    ['<path id', 'digit1, number 1 of 2 drawn here'],
    ['<path id', 'digit1, number 1 of 2 drawn here'],
    ['<path id', 'digit2, number 2 of 2 drawn here'],
  ]);
});
