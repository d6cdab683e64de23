/** Where the code of a finding leads: to the project's site, and where there is none to the page that comes with us. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, expect, it as test } from 'vitest';
import { homepage } from '../../../package.json';
import { RULES } from '../../../src/format/rules';
import { checkAddress } from '../../../src/report/check-address';
import { checkPages } from '../../../src/server/documents/check-pages';

let folder: string;

beforeAll(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'tombolo-pages-'));
  writeFileSync(path.join(folder, 'thin-bridge.md'), '# thin-bridge\n');
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

test('leads to the page beside the server where the project has no site', () => {
  expect(checkPages(folder, '')('thin-bridge')).toMatch(/^file:\/\/\/.*\/thin-bridge\.md$/);
  expect(checkPages(folder, 'marsh')('thin-bridge')).toMatch(/^file:/);
});

test('leads to the site where there is one, but for what has no page', () => {
  const pageOf = checkPages(folder, 'https://example.org/tombolo/');
  expect(pageOf('thin-bridge')).toBe('https://example.org/tombolo/checks/thin-bridge/');
  expect(pageOf('internal')).toBeUndefined();
});

test('is the same place as in logs for machines', () => {
  expect(checkAddress('https://example.org', 'sliver')).toBe('https://example.org/checks/sliver/');
  expect(checkAddress('', 'sliver')).toBeUndefined();
  expect(RULES.map(({ id, page }) => [id, page])).toEqual(RULES.map(({ id }) => [id, checkAddress(homepage, id)]));
});

test('is nowhere in a folder that is not there', () => {
  expect(checkPages(path.join(folder, 'none'), '')('thin-bridge')).toBeUndefined();
});
