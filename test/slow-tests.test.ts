/** The list of slow tests stays true: it names files that are there, and all that start processes. */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { SLOW_TESTS } from './slow-tests';
import { THOROUGH_TESTS } from './thorough';
import { APART, ELSEWHERE } from './vitest.config';

const ROOT = path.resolve(__dirname, '..');
const files = readdirSync(__dirname, { recursive: true, encoding: 'utf8' })
  .map((file) => `test/${file.replaceAll(path.sep, '/')}`)
  .filter((file) => file.endsWith('.test.ts'));
/** Most patterns are names, which need not be matched character by character. */
const fits = (file: string, pattern: string) =>
  pattern.includes('*') ? path.matchesGlob(file, pattern) : file === pattern;
const matching = (patterns: readonly string[]) =>
  files.filter((file) => patterns.some((pattern) => fits(file, pattern)));

test('every pattern finds a test', () => {
  expect(SLOW_TESTS.filter((pattern) => matching([pattern]).length === 0)).toEqual([]);
});

test('no quick test starts a process', () => {
  const left = new Set(matching([...SLOW_TESTS, ...ELSEWHERE]));
  const starting = files.filter((file) => {
    if (left.has(file)) return false;
    return /from '(node:child_process|.*\/(run-cli|server-process))'/.test(readFileSync(path.join(ROOT, file), 'utf8'));
  });
  expect(starting).toEqual([]);
});

test('every test that takes a share of its cases is run with all of them, too', () => {
  const sharing = files.filter((file) => /from '[./]+\/thorough'/.test(readFileSync(path.join(ROOT, file), 'utf8')));
  expect(sharing.filter((file) => file !== 'test/slow-tests.test.ts').sort()).toEqual([...THOROUGH_TESTS].sort());
});

test('what mocks a module has modules of its own', () => {
  const elsewhere = new Set(matching(ELSEWHERE));
  const units = files.filter((file) => !elsewhere.has(file));
  const mocking = units.filter((file) => /\bvi\.(?:do)?[mM]ock\(/.test(readFileSync(path.join(ROOT, file), 'utf8')));
  expect(mocking.filter((file) => file !== 'test/slow-tests.test.ts').sort()).toEqual([...APART].sort());
});
