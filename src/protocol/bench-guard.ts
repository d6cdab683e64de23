/**
 * What the extension takes from the bench's page. The page is ours, but it shows strangers' drawings: so each message is
 * looked at as if it came from one. Nothing but the keys that are known is let through, each of its type and size.
 */
import { BRIDGE_STYLES } from '../config/bridge-style';
import type { BenchRequest } from './requests';
import type { FromBench } from './webview';

type Test = (value: unknown) => boolean;

/** Offsets, versions, numbers of things: no text is longer. */
const MOST = 2 ** 31;
/** mm, and factors of matrices: no sheet is larger than 100 m. */
const FARTHEST = 1e6;
/** Layers that a stack may have, bridges that a plan may have. */
const MOST_LISTED = 10_000;
/** Characters of a name or an address. */
const LONGEST = 10_000;
/** Bytes of a picture. */
const LARGEST = 500_000_000;

const flag: Test = (value) => typeof value === 'boolean';
const text: Test = (value) => typeof value === 'string' && value.length <= LONGEST;
const count: Test = (value) => Number.isInteger(value) && Number(value) >= 0 && Number(value) < MOST;
const whole: Test = (value) => Number.isInteger(value) && Math.abs(Number(value)) < MOST;
const distance: Test = (value) => typeof value === 'number' && Math.abs(value) <= FARTHEST;
const size: Test = (value) => distance(value) && Number(value) >= 0;
const layer: Test = (value) => text(value) && /#\d+$/.test(String(value));
const oneOf =
  (...words: readonly unknown[]): Test =>
  (value) =>
    words.includes(value);
const list =
  (item: Test): Test =>
  (value) =>
    Array.isArray(value) && value.length <= MOST_LISTED && value.every(item);
const either =
  (...tests: readonly Test[]): Test =>
  (value) =>
    tests.some((test) => test(value));

/** An object with these keys and no others; those that end with `?` may be left out. */
function object(tests: Readonly<Record<string, Test>>): Test {
  const known = new Map(Object.entries(tests).map(([key, test]) => [key.replace(/\?$/, ''), test]));
  const needed = Object.keys(tests).filter((key) => !key.endsWith('?'));
  return (value) => {
    if (typeof value !== 'object' || value === null || Array.isArray(value)) return false;
    const entries = Object.entries(value).filter(([, each]) => each !== undefined);
    const keys = new Set(entries.map(([key]) => key));
    return needed.every((key) => keys.has(key)) && entries.every(([key, each]) => known.get(key)?.(each) === true);
  };
}

const point = object({ x: distance, y: distance });
const matrix = object({ a: distance, b: distance, c: distance, d: distance, e: distance, f: distance });
const wanted = either(object({ remove: oneOf(true) }), object({ 'to?': point, 'width?': size }));
const change = { layer, version: count, bridge: text, wanted };
const sketch = { layer, version: count, 'style?': oneOf(...BRIDGE_STYLES) };
const plan = {
  ...sketch,
  'moved?': list(object({ bridge: count, from: point, to: point })),
};

const QUESTIONS: Readonly<Record<BenchRequest['kind'], Readonly<Record<string, Test>>>> = {
  necks: { layer },
  slip: { places: list(object({ layer, place: matrix })) },
  sweep: { layer },
  bestOrder: {},
  cutFigures: {},
  cutOrder: { layer },
  partAt: { places: list(object({ layer, point })), reach: size, sheets: flag },
  part: { layer, number: whole },
  bridgeAt: { layer, version: count, point },
  bridgePlan: { finding: text, 'mend?': text },
  standingBridges: {},
  bridgeGhost: change,
  changeBridge: change,
  layerSketch: sketch,
  layerPlan: plan,
  dropLayerPlan: {},
  planGhost: { ...plan, move: object({ bridge: count, to: point, apart: flag }) },
  putIn: { 'keep?': flag },
};

const question = byTag('kind', QUESTIONS);

const MESSAGES: Readonly<Record<FromBench['type'], Readonly<Record<string, Test>>>> = {
  ready: {},
  reveal: { uri: text, from: count, to: count },
  // No screen is coarser or finer than these.
  screen: { pixelsPerInch: (value) => distance(value) && Number(value) >= 10 && Number(value) <= 2000 },
  undo: {},
  redo: {},
  save: {},
  begin: { uri: text },
  ask: { id: count, question },
  pin: { pinned: flag },
  saveAs: {},
  writeCut: {},
  writeJob: {},
  picture: { 'bytes?': (value) => ArrayBuffer.isView(value) && value.byteLength <= LARGEST },
  reorder: { uri: text, version: count, layer, to: layer },
  bestOrder: { version: count },
};

const message = byTag('type', MESSAGES);

/** Objects that say by one key what they are, and with it which others they have. */
function byTag(tag: string, kinds: Readonly<Record<string, Readonly<Record<string, Test>>>>): Test {
  const tests = new Map(Object.entries(kinds).map(([kind, keys]) => [kind, object({ ...keys, [tag]: oneOf(kind) })]));
  return (value) => {
    const kind = (value as Readonly<Record<string, unknown>> | null | undefined)?.[tag];
    return typeof kind === 'string' && tests.get(kind)?.(value) === true;
  };
}

/** Whether something is a message of the page, with nothing in it that the page would not say. */
export function isFromBench(value: unknown): value is FromBench {
  return message(value);
}
