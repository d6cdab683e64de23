/** What the extension takes from the page that shows a picture: each message is looked at as if it came from a stranger. */
import { MAX_COLOURS } from '../config/decode-separate';
import { byTag, count, flag, list, object, size, type Test, tuple } from './guard';
import type { FromPicturePage } from './separating';

/** mm: the largest print, and the least length that can be meant. */
const WIDEST = 10_000;
const LEAST = 0.01;

const colour: Test = (value) => typeof value === 'string' && /^#[0-9a-f]{6}$/.test(value);
const length: Test = (value) => size(value) && Number(value) >= LEAST && Number(value) <= WIDEST;
const place: Test = (value) => size(value) && Number(value) <= WIDEST;
const colours: Test = (value) => count(value) && Number(value) >= 1 && Number(value) <= MAX_COLOURS;
const box = tuple(place, place, place, place);

const dials = object({
  width: length,
  colours,
  paints: list(colour, MAX_COLOURS),
  'detail?': length,
  'follow?': length,
  'ground?': colour,
  leaveOut: list((value) => colour(value) || box(value), 100),
  outline: flag,
  merged: list(tuple(colour, colour), 100),
  order: list(colour, 100),
  bridges: flag,
});

const MESSAGES: Readonly<Record<FromPicturePage['type'], Readonly<Record<string, Test>>>> = {
  ready: {},
  separate: { id: count, dials },
  write: { id: count, dials },
  stop: {},
  chooseFolder: {},
};

const message = byTag('type', MESSAGES);

/** Whether something is a message of the page, with nothing in it that the page would not say. */
export function isFromPicturePage(value: unknown): value is FromPicturePage {
  return message(value);
}
