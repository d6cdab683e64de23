import { describe, expect, it, it as test } from 'vitest';
import { isFromBench } from '../../src/protocol/bench-guard';

const place = { a: 1, b: 0, c: 0, d: 1, e: 0.5, f: -3 };
const point = { x: 31.25, y: -2 };
const layer = 'birds/heron.svg#0';
const uri = 'file:///trail/heron.svg';
const change = { layer, version: 3, bridge: 'b1' };

const ask = (question: unknown) => ({ type: 'ask', id: 7, question });

/** All that the page says, each with what may be left out and without it. */
const SAID: readonly object[] = [
  { type: 'ready' },
  { type: 'reveal', uri, from: 0, to: 12 },
  { type: 'screen', pixelsPerInch: 110.5 },
  { type: 'undo' },
  { type: 'redo' },
  { type: 'save' },
  { type: 'begin', uri },
  { type: 'pin', pinned: true },
  { type: 'saveAs' },
  { type: 'writeCut' },
  { type: 'writeJob' },
  { type: 'picture', bytes: new Uint8Array(9) },
  { type: 'picture', bytes: undefined },
  { type: 'picture' },
  { type: 'reorder', uri, version: 3, layer, to: 'a.svg#1' },
  { type: 'bestOrder', version: 0 },
  ask({ kind: 'necks', layer }),
  ask({ kind: 'slip', places: [{ layer, place }] }),
  ask({ kind: 'slip', places: [] }),
  ask({ kind: 'sweep', layer }),
  ask({ kind: 'bestOrder' }),
  ask({ kind: 'cutFigures' }),
  ask({ kind: 'cutOrder', layer }),
  ask({ kind: 'partAt', places: [{ layer, point }], reach: 0.4, sheets: false }),
  ask({ kind: 'part', layer, number: -1 }),
  ask({ kind: 'bridgeAt', layer, version: 3, point }),
  ask({ kind: 'bridgePlan', finding: 'a.svg@1!2' }),
  ask({ kind: 'bridgePlan', finding: 'a.svg@1!2', mend: 'bridge-island' }),
  ask({ kind: 'standingBridges' }),
  ask({ kind: 'bridgeGhost', ...change, wanted: { remove: true } }),
  ask({ kind: 'changeBridge', ...change, wanted: { to: point } }),
  ask({ kind: 'changeBridge', ...change, wanted: { width: 1.2 } }),
  ask({ kind: 'layerSketch', layer, version: 3, style: 'level' }),
  ask({ kind: 'layerPlan', layer, version: 3 }),
  ask({ kind: 'layerPlan', layer, version: 3, style: 'upright', moved: [{ bridge: 0, from: point, to: point }] }),
  ask({ kind: 'dropLayerPlan' }),
  ask({ kind: 'planGhost', layer, version: 3, move: { bridge: 0, to: point, apart: true } }),
  ask({ kind: 'putIn' }),
  ask({ kind: 'putIn', keep: true }),
];

test.each(SAID)('takes %j', (message) => {
  expect(isFromBench(message)).toBe(true);
});

/** The message with something else at each of its places, however deep. */
function* forged(value: unknown): Generator<unknown> {
  if (typeof value !== 'object' || value === null || ArrayBuffer.isView(value)) return;
  const entries = Object.entries(value);
  for (const [key, own] of entries) {
    const others: unknown[] = [
      null,
      {},
      [],
      [[]],
      '',
      'x'.repeat(20_000),
      NaN,
      Infinity,
      -1e12,
      0.1,
      1e300,
      '__proto__',
      () => 1,
    ];
    for (const other of [...others, ...forged(own)]) {
      yield Array.isArray(value)
        ? value.map((each, i) => (String(i) === key ? other : each))
        : { ...value, [key]: other };
    }
  }
  if (Array.isArray(value)) return yield Array.from({ length: 20_000 }, () => value[0] ?? 1);
  for (const [key, own] of entries) {
    if (own !== undefined) yield Object.fromEntries(entries.filter(([name]) => name !== key));
  }
  // What a question would hand on to the server in place of the document that is shown.
  for (const key of ['uri', 'openConfig', 'constructor'])
    if (!(key in value) || key === 'constructor') yield { ...value, [key]: uri };
  yield JSON.parse(JSON.stringify({ ...value, own: 1 }).replace('"own"', '"__proto__"'));
}

/** The kinds of all that is in a message, by their keys. */
function shape(value: unknown): unknown {
  if (ArrayBuffer.isView(value)) return 'bytes';
  if (typeof value !== 'object' || value === null) return typeof value;
  if (Array.isArray(value)) return value.map(shape).slice(0, 1);
  return Object.fromEntries(
    Object.entries(value)
      .map(([key, each]) => [key, shape(each)])
      .sort(),
  );
}

const SHAPES = new Set(SAID.map((said) => JSON.stringify(shape(said))));

/** What a replacement may make that is still said: an id is any number, a name any text, a flag either. */
const isSaid = (message: unknown): boolean => SHAPES.has(JSON.stringify(shape(message)));

describe('what the page does not say', () => {
  it('nothing of another shape is taken, wherever in a message it stands', () => {
    let count = 0;
    for (const message of SAID) {
      for (const other of forged(message)) {
        count += 1;
        if (!isFromBench(other) || isSaid(other)) continue;
        // A part that may be left out makes another message that is said.
        expect(['mend', 'style', 'moved', 'bytes', 'places', 'remove', 'to', 'width']).toContain(
          leftOut(message, other),
        );
      }
    }
    expect(count).toBeGreaterThan(1500);
  });

  it.each([
    ['an endless number', { type: 'reveal', uri, from: 0, to: Infinity }],
    ['an offset before the text', { type: 'reveal', uri, from: -1, to: 4 }],
    ['half an offset', { type: 'reveal', uri, from: 0.5, to: 4 }],
    ['a place off all sheets', ask({ kind: 'bridgeAt', layer, version: 3, point: { x: 1e9, y: 0 } })],
    ['a screen of no pixels', { type: 'screen', pixelsPerInch: 0 }],
    ['a name without an end', { type: 'begin', uri: 'x'.repeat(1e6) }],
    ['too many places', ask({ kind: 'slip', places: Array.from({ length: 20_000 }, () => ({ layer, place })) })],
    ['another document', ask({ kind: 'necks', layer, uri: 'file:///etc/passwd' })],
    ['a bridge both gone and moved', ask({ kind: 'changeBridge', ...change, wanted: { remove: true, width: 1 } })],
    ['a style that is a key of every object', ask({ kind: 'layerPlan', layer, version: 1, style: 'constructor' })],
    ['a question that is a key of every object', ask({ kind: 'toString' })],
    ['a message that is a key of every object', { type: 'valueOf' }],
    ['what the extension says to the page', { type: 'stack', stack: {} }],
    ['nothing', undefined],
    ['a word', 'ready'],
    ['a list', [{ type: 'ready' }]],
  ])('%s', (_, message) => {
    expect(isFromBench(message)).toBe(false);
  });
});

/** The key that one has and the other lacks, or lists nothing in. */
function leftOut(message: unknown, other: unknown): string | undefined {
  const keys = (value: unknown): string[] => {
    if (typeof value !== 'object' || value === null || ArrayBuffer.isView(value)) return [];
    return Object.entries(value).flatMap(([key, each]) =>
      each === undefined || isEmpty(each) ? [] : [key, ...keys(each)],
    );
  };
  const left = new Set(keys(other));
  return keys(message).find((key) => !left.has(key)) ?? keys(other).find((key) => !keys(message).includes(key));
}

const isEmpty = (value: unknown): boolean => Array.isArray(value) && value.length === 0;
