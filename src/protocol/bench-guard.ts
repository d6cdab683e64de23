/**
 * What the extension takes from the bench's page. The page is ours, but it shows strangers' drawings: so each message is
 * looked at as if it came from one. Nothing but the keys that are known is let through, each of its type and size.
 */
import { BRIDGE_STYLES } from '../config/bridge-style';
import { byTag, count, distance, either, flag, list, object, oneOf, size, type Test, text, whole } from './guard';
import type { BenchRequest } from './requests';
import type { FromBench } from './webview';

/** Bytes of a picture. */
const LARGEST = 500_000_000;

const layer: Test = (value) => text(value) && /#\d+$/.test(String(value));
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

/** Whether something is a message of the page, with nothing in it that the page would not say. */
export function isFromBench(value: unknown): value is FromBench {
  return message(value);
}
