/** Documents that failed once, made small: nothing of what may never be is true of them any more. */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { judge } from './judge';

const CORPUS = path.join(__dirname, 'corpus');

const names = readdirSync(CORPUS, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.svg'));

test.each(names)('%s', (name) => {
  const text = readFileSync(path.join(CORPUS, name), 'utf8');
  expect(judge(text, text, { fixed: Infinity }).faults).toEqual([]);
});
