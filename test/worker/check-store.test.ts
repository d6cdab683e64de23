import { beforeEach, expect, test, vi } from 'vitest';
import { readConfig } from '../../src/engine/index';
import * as markup from '../../src/markup/parse';
import type { CheckRequest } from '../../src/protocol/engine-worker';
import { CheckStore } from '../../src/worker/check-store';
import { ring, sheet } from '../engine/project-files';

vi.mock('../../src/markup/parse', { spy: true });

const uri = 'file:///sun.svg';
const stencil = sheet(ring(5, 5), 'width="60mm" height="60mm" data-tombolo-reading="openings"');
const plain = sheet(ring(5, 5));

const asked: CheckRequest = { kind: 'check', key: uri, files: [], config: undefined, project: false, always: false };
const files = (text: string, version = 1) => [{ name: '', uri, version, open: true, text }];

function checked(store: CheckStore, text: string, more: Partial<CheckRequest> = {}) {
  return store.check({ ...asked, ...more }, store.sources(files(text))).documents;
}

beforeEach(() => vi.clearAllMocks());

test('a text is parsed once, whether it calls itself a stencil or not', () => {
  expect(checked(new CheckStore(), stencil)).toMatchObject([
    { stencil: true, findings: [{ check: 'floating-island' }] },
  ]);
  expect(markup.parseMarkup).toHaveBeenCalledTimes(1);
});

test('a text that nobody calls a stencil is not even parsed, unless somebody wants to see it', () => {
  const store = new CheckStore();
  expect(checked(store, plain)).toEqual([]);
  expect(markup.parseMarkup).not.toHaveBeenCalled();
  expect(store.document(uri)).toBeUndefined();
  expect(checked(store, plain, { always: true })).toMatchObject([{ stencil: false }]);
  expect(checked(new CheckStore(), plain.replace('<svg', '<!-- data-tombolo-x --><svg'))).toEqual([]);
});

test('a tombolo.json makes a stencil of it', () => {
  const text = '{"checks": {"floating-island": "hint"}}';
  const config = { uri: 'file:///tombolo.json', text, config: readConfig(text).config };
  expect(checked(new CheckStore(), plain, { config })).toMatchObject([{ findings: [{ severity: 'hint' }] }]);
});

test('a text that was sent before need not be sent again, until it is forgotten', () => {
  const store = new CheckStore();
  store.sources(files(stencil));
  const { text: _, ...again } = files(stencil, 2)[0]!;
  expect(store.sources([again]).get('')).toEqual({ uri, version: 2, open: true, text: stencil });
  checked(store, stencil);
  store.forget(uri);
  expect(store.document(uri)).toBeUndefined();
  expect(store.sources([again]).get('')?.text).toBe('');
});

test('facts are plain data', () => {
  const [facts] = checked(new CheckStore(), stencil);
  expect(structuredClone(facts)).toEqual(facts);
  expect(facts?.tags.layers).toEqual([{ name: 'stencil', paint: '#000000', reading: 'openings' }]);
  expect(stencil.slice(facts?.tags.from[0], facts?.tags.to[0])).toMatch(/^<path .*\/>$/);
});

test('what the memory of the host does not suffice for is left out and said', () => {
  const full = new CheckStore({ memoryInUse: () => 2e9, memoryBudget: 1e9 });
  expect(checked(full, stencil)).toMatchObject([{ findings: [{ check: 'unfinished' }] }]);
  const [facts] = checked(new CheckStore({ memoryInUse: () => 0.5e9, memoryBudget: 1e9 }), stencil);
  expect(facts?.findings.map(({ check }) => check)).toEqual(['floating-island']);
});

test('documents share one engine: a text that another document had is not parsed again', () => {
  const store = new CheckStore();
  checked(store, stencil);
  const again = store.sources([{ name: '', uri: 'file:///copy.svg', version: 1, open: true, text: stencil }]);
  expect(store.check({ ...asked, key: 'file:///copy.svg' }, again).documents).toHaveLength(1);
  expect(markup.parseMarkup).toHaveBeenCalledTimes(1);
});
