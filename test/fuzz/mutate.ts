/** Real documents, changed at random: cut, swapped, spliced, their numbers blown up, their attributes and elements exchanged. */
import { PIECES } from './pieces';

type Random = () => number;

/** Names of attributes whose values are exchanged. */
const ATTRIBUTE = /([\w:-]+)=("[^"]*"|'[^']*')/g;
const NUMBER = /-?\d*\.?\d+(?:e[-+]?\d+)?/gi;
const ELEMENT = /<(path|rect|circle|ellipse|polygon|polyline|line|use)\b[^<>]*\/>/g;

const pick = <T>(random: Random, list: readonly T[]): T => list[Math.floor(random() * list.length)] as T;

interface Stretch {
  readonly from: number;
  readonly to: number;
}

function stretchOf(random: Random, text: string, most: number): Stretch {
  const from = Math.floor(random() * (text.length + 1));
  return { from, to: Math.min(text.length, from + Math.floor(random() * most)) };
}

const replaced = (text: string, { from, to }: Stretch, by: string): string => text.slice(0, from) + by + text.slice(to);

/** Where a pattern matches; the first thousand, as some documents have a hundred thousand numbers. */
function matchesOf(text: string, pattern: RegExp): Stretch[] {
  const found: Stretch[] = [];
  for (const match of text.matchAll(pattern)) {
    found.push({ from: match.index, to: match.index + match[0].length });
    if (found.length === 1000) break;
  }
  return found;
}

function exchanged(random: Random, text: string, places: readonly Stretch[]): string {
  if (places.length < 2) return text;
  const [a, b] = [pick(random, places), pick(random, places)].sort((x, y) => x.from - y.from);
  if (!a || !b || a.to > b.from) return text;
  return (
    text.slice(0, a.from) +
    text.slice(b.from, b.to) +
    text.slice(a.to, b.from) +
    text.slice(a.from, a.to) +
    text.slice(b.to)
  );
}

function withOtherNumber(random: Random, text: string): string {
  const places = matchesOf(text, NUMBER);
  if (places.length === 0) return text;
  const place = pick(random, places);
  const value = Number(text.slice(place.from, place.to));
  const factor = pick(random, [1e9, 1e-9, -1, 0, 10 ** Math.round(18 * random() - 9), random() * 2]);
  return replaced(text, place, String(value * factor));
}

/** @param others documents to splice from */
export function mutated(random: Random, seeds: readonly string[]): string {
  let text = random() < 0.05 ? '' : pick(random, seeds);
  for (let changes = 1 + Math.floor(random() * 5); changes > 0; changes -= 1) text = changed(random, text, seeds);
  return text;
}

function changed(random: Random, text: string, seeds: readonly string[]): string {
  const ways: readonly (() => string)[] = [
    () => text.slice(0, Math.floor(random() * text.length)),
    () => replaced(text, stretchOf(random, text, 40), ''),
    () => replaced(text, stretchOf(random, text, 1), pick(random, PIECES)),
    () => replaced(text, stretchOf(random, text, 40), pick(random, PIECES)),
    () => doubled(random, text),
    () => spliced(random, text, pick(random, seeds)),
    () => exchanged(random, text, [stretchOf(random, text, 200), stretchOf(random, text, 200)]),
    () => withOtherNumber(random, text),
    () => withOtherNumber(random, text),
    () => withOtherNumber(random, text),
    () => exchanged(random, text, matchesOf(text, ATTRIBUTE)),
    () => exchanged(random, text, matchesOf(text, ELEMENT)),
    () => doubledElement(random, text),
  ];
  return pick(random, ways)();
}

function doubled(random: Random, text: string): string {
  const place = stretchOf(random, text, 200);
  return replaced(text, place, text.slice(place.from, place.to).repeat(2));
}

function doubledElement(random: Random, text: string): string {
  const places = matchesOf(text, ELEMENT);
  const place = places.length > 0 ? pick(random, places) : undefined;
  return place ? replaced(text, place, text.slice(place.from, place.to).repeat(2)) : text;
}

function spliced(random: Random, text: string, other: string): string {
  const place = stretchOf(random, other, 400);
  return replaced(text, stretchOf(random, text, 40), other.slice(place.from, place.to));
}

/** A change as one makes while typing: what was worked out before is of use. */
export const nudged = (random: Random, text: string): string =>
  random() < 0.7 ? withOtherNumber(random, text) : replaced(text, stretchOf(random, text, 12), '');
