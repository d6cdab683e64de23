/** Files that comments and pages name are there: names outlive what they stand for. */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';

const ROOT = path.resolve(__dirname, '..');
const OURS = ['src', 'test'];
const NAME = /`([\w./-]+\.(?:ts|mjs|css|md))`/g;

const isOurs = (file: string) => !/(^|\/)(node_modules|fixtures|shots|dist)\//.test(file);

const filesIn = (folder: string) =>
  readdirSync(path.join(ROOT, folder), { recursive: true, encoding: 'utf8' })
    .map((file) => path.posix.join(folder, file.replaceAll(path.sep, '/')))
    .filter(isOurs);

const all = OURS.flatMap(filesIn);
const pages = [...all.filter((file) => file.endsWith('.md')), 'README.md', 'DEVELOPERS.md', 'CHANGELOG.md'];
const known = [...all, ...pages];

/** Of a program the lines of its comments, of a page all. */
function prose(file: string): string {
  const text = readFileSync(path.join(ROOT, file), 'utf8');
  if (file.endsWith('.md')) return text;
  return text
    .split('\n')
    .filter((line) => /^\s*(\/?\*|\/\/)/.test(line))
    .join('\n');
}

/** A page beside sources speaks of its own folder first of all; a name alone may stand anywhere. */
function isThere(name: string, from: string): boolean {
  const beside = path.posix.join(path.posix.dirname(from), name);
  if (known.includes(beside)) return true;
  if (from.endsWith('README.md') && path.posix.dirname(from) !== '.' && !name.includes('/')) return false;
  return known.some((file) => file === name || file.endsWith(`/${name}`));
}

test.each(OURS)('of %s', (folder) => {
  const programs = all.filter((file) => file.startsWith(`${folder}/`) && /\.(ts|mjs)$/.test(file));
  const told = [...programs, ...(folder === 'src' ? pages : [])].flatMap((file) =>
    [...prose(file).matchAll(NAME)].flatMap(([, name = '']) => (isThere(name, file) ? [] : [`${file}: ${name}`])),
  );
  expect(told).toEqual([]);
});
