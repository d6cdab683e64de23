/** One drawing bridged, and what can be said of it by pixels, by statics, and by its text. */
import { bridgeIslands, check, type Report } from '../../../src/engine/index';
import { rasterise } from '../../outside/raster';
import { thoseThatFit } from './any-bridge';
import {
  FINENESS,
  islandsAmong,
  lostBetween,
  type Mask,
  type Piece,
  type Pieces,
  paintOf,
  pieceNear,
  piecesOf,
} from './pixels';
import { type Lift, liftsOf } from './statics';
import { areAlike, columnsOf, isMirrored, mirrorAxesOf, straightShareOf } from './symmetry';
import type { PlacedLetter, Word } from './words';

export interface Drawing {
  readonly name: string;
  readonly set: string;
  readonly text: string;
  readonly word?: Word;
}

export interface Judgement {
  readonly drawing: Drawing;
  readonly bridged: string;
  readonly plan: ReturnType<typeof bridgeIslands>['plan'];
  readonly refusals: readonly string[];
  /** Islands by pixels, before. */
  readonly islands: number;
  readonly left: readonly Left[];
  /** Of the islands that hang, and are no specks. */
  readonly lifts: readonly Lift[];
  /** Whether it was told that islands lift too far, as nothing within reach holds them. */
  readonly tellsOfLifting: boolean;
  /** Off level or upright by more than 1° and less than 12°, in a drawing that is symmetric or has many level and upright lines. */
  readonly crooked: number;
  /** Bridges in such drawings, but for gaps in hairlines. */
  readonly inUpright: number;
  /** Undefined where the drawing is not symmetric, or nothing was bridged. */
  readonly mirrored: boolean | undefined;
  /** Pairs of the same letter in a word, and how many of them are bridged alike. */
  readonly pairs: readonly [all: number, alike: number];
  /** mm² */
  readonly lost: number;
  /** Faults in the text, a sentence each. */
  readonly faults: readonly string[];
  /** New tongues, doubled cuts and openings at the edge, by check: how many there are, and how many were told. */
  readonly along: Readonly<Record<string, readonly [there: number, told: number]>>;
  /** ms of processor time for planning, cutting and proving. */
  readonly time: number;
}

export interface Left {
  /** Pixels. */
  readonly at: { readonly x: number; readonly y: number };
  /** mm² */
  readonly area: number;
  /** Whether a bridge would fit, by the pixels alone. */
  readonly fits: boolean;
}

/** Degrees. */
const [STRAIGHT, SLANTED] = [1, 12];
/** The least share of level and upright edges in a drawing that the eye calls upright. */
const UPRIGHT_DRAWING = 0.2;

export function judge(drawing: Drawing): Judgement {
  const report = check(drawing.text, { budget: Infinity });
  const start = process.cpuUsage();
  const outcome = bridgeIslands(report);
  const { user, system } = process.cpuUsage(start);
  const { text: bridged, plan, refusals } = outcome;
  const columns = Math.round((report.sheets[0]?.drawing.width ?? 0) * FINENESS);
  const [before, after] = [drawing.text, bridged].map((text) => paintOf(rasterise(text, columns))) as [Mask, Mask];
  const lost = lostBetween(before, after);
  const [old, now] = [piecesOf(before), piecesOf(after)];
  const loose = withoutThreads(bridged, now, islandsAmong(now));
  const fitting = thoseThatFit(
    now,
    loose.map(({ number }) => number),
  );
  const left = loose.map(({ number, middle, pixels }): Left => {
    return { at: middle, area: pixels / FINENESS ** 2, fits: fitting.has(number) };
  });
  const drawn = islandsAmong(old);
  const islands = left.length > 0 ? withoutThreads(drawing.text, old, drawn) : drawn;
  const waiting = new Set(left.map(({ at }) => pieceNear(old, at, 10)));
  const hung = islands.map(({ number }) => number).filter((number) => !waiting.has(number));
  const again = check(bridged, { budget: Infinity });
  const axes = mirrorAxesOf(before);
  const isUprightDrawing = !drawing.word && (axes.length > 0 || straightShareOf(before) >= UPRIGHT_DRAWING);
  return {
    drawing,
    bridged,
    plan,
    refusals: refusals.map(({ message }) => message),
    islands: islands.length,
    left,
    lifts: liftsOf(old, plan, hung),
    tellsOfLifting: outcome.brings.some(({ message }) => /^(Island at|Loose tongue)/.test(message)),
    crooked: isUprightDrawing ? plan.filter(showsDirection).filter(isCrooked).length : 0,
    inUpright: isUprightDrawing ? plan.filter(showsDirection).length : 0,
    mirrored: !drawing.word && axes.length > 0 && plan.length > 0 ? isMirrored(lost, axes) : undefined,
    pairs: drawing.word ? pairsOf(drawing.word.letters, before, lost) : [0, 0],
    lost: lost.on.reduce((sum, value) => sum + value, 0) / FINENESS ** 2,
    faults: faultsOf(drawing.text, outcome, again),
    along: alongOf(report, again, outcome.brings),
    time: (user + system) / 1000,
  };
}

/** How many times as finely it is looked whether an island hangs on something that is thinner than a pixel. */
const FINER = 4;

/** Those that hang on nothing at all, one for all that hang together by threads: those are thin bridges, and no gaps. */
function withoutThreads(text: string, coarse: Pieces, islands: readonly Piece[]): Piece[] {
  if (islands.length === 0) return [];
  const fine = piecesOf(paintOf(rasterise(text, coarse.width * FINER)));
  const seen = new Set([1]);
  return islands.filter(({ number }) => {
    const pixel = coarse.number.indexOf(number);
    const [x, y] = [pixel % coarse.width, Math.floor(pixel / coarse.width)];
    const whole = pieceNear(fine, { x: (x + 0.5) * FINER, y: (y + 0.5) * FINER }, FINER);
    if (seen.has(whole)) return false;
    seen.add(whole);
    return true;
  });
}

/** A gap in a hairline, much wider than it is long, has none that anybody sees. */
function showsDirection({ length, width }: Judgement['plan'][number]): boolean {
  return length > width / 2;
}

type Way = Pick<Judgement['plan'][number], 'from' | 'to'>;

/** Degrees off the nearer of level and upright. */
export function slantOf({ from, to }: Way): number {
  const turn = Math.abs((Math.atan2(to.y - from.y, to.x - from.x) * 180) / Math.PI) % 90;
  return Math.min(turn, 90 - turn);
}

function isCrooked(bridge: Way): boolean {
  const slant = slantOf(bridge);
  return slant > STRAIGHT && slant < SLANTED;
}

export function isUpright({ from, to }: Way): boolean {
  return Math.abs(Math.atan2(to.x - from.x, Math.abs(to.y - from.y)) * (180 / Math.PI)) <= STRAIGHT;
}

/** Each letter with the next of its kind. */
function pairsOf(letters: readonly PlacedLetter[], paint: Mask, lost: Mask): [number, number] {
  let [all, alike] = [0, 0];
  for (const [i, first] of letters.entries()) {
    const second = letters.slice(i + 1).find(({ sign }) => sign === first.sign);
    if (!second || first.sign === ' ') continue;
    const [a, b] = [first, second].map(({ from }) => Math.round(from * FINENESS)) as [number, number];
    const size = Math.round((first.to - first.from) * FINENESS);
    const part = (mask: Mask, from: number): Mask => columnsOf(mask, from, from + size);
    // Letters that join, or lie over each other, look otherwise beside another neighbour.
    if (!areAlike(part(paint, a), part(paint, b), { slack: 1, missing: 0.01 })) continue;
    all += 1;
    alike += Number(areAlike(part(lost, a), part(lost, b), { slack: 3, missing: 0.1 }));
  }
  return [all, alike];
}

function faultsOf(text: string, { text: bridged, edits }: ReturnType<typeof bridgeIslands>, again: Report): string[] {
  const second = bridgeIslands(again);
  return [
    ...(withEdits(text, edits) === bridged ? [] : ['bytes outside the edits changed']),
    ...edits.flatMap(({ span: { from, to } }) =>
      isCut(text, from, to) ? [] : [`an edit at ${from} reaches beyond what is drawn`],
    ),
    ...(second.edits.length > 0 ? [`a second run adds ${second.bridges} bridges`] : []),
  ];
}

/** By itself: what stays between the spans is taken from the old text. */
function withEdits(text: string, edits: ReturnType<typeof bridgeIslands>['edits']): string {
  let [result, at] = ['', 0];
  for (const { span, text: inserted } of [...edits].sort((a, b) => a.span.from - b.span.from)) {
    result += text.slice(at, span.from) + inserted;
    at = span.to;
  }
  return result + text.slice(at);
}

/** Whether what an edit replaces lies within one element that draws, or is one, or is nothing. */
function isCut(text: string, from: number, to: number): boolean {
  const replaced = text.slice(from, to);
  return !/<(?!path|rect|circle|ellipse|line|polygon|polyline|use|\/)/.test(replaced);
}

const ALONG = ['loose-tongue', 'doubled-cut', 'edge-opening'];

function alongOf(before: Report, after: Report, brings: readonly { readonly check: string }[]): Judgement['along'] {
  const count = ({ complete }: Report, id: string): number => complete.filter((finding) => finding.check === id).length;
  return Object.fromEntries(
    ALONG.map((id) => {
      const there = Math.max(0, count(after, id) - count(before, id));
      return [id, [there, brings.filter((each) => each.check === id).length]];
    }),
  );
}
