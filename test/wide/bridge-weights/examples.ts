/** For each weight a drawing whose plan it changes, and the value at which it does nothing. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'opentype.js';
import type { BridgeStyle } from '../../../src/config/bridge-style';
import type { Bridge } from '../../../src/edits/plan/index';
import { WEIGHTS } from '../../../src/edits/plan/search/weights';
import { islandsOf, planFor } from '../../../src/engine/fixes/bridging/plan';
import { check, type Report, type Sheet } from '../../../src/engine/index';
import { lineOfText } from '../../outside/typefaces';

/** But for the longest that a bridge may be, which is a bound. */
export type Weight = Exclude<keyof typeof WEIGHTS, 'longest'>;

interface Example {
  readonly text: string;
  /** The value of the weight with which it does nothing. */
  readonly off: number;
  readonly style?: BridgeStyle;
}

const MDI = join('node_modules', '@mdi', 'svg', 'svg');
const FONT = join('node_modules', '@fontsource', 'dejavu-sans', 'files', 'dejavu-sans-latin-700-normal.woff');

function icon(name: string, off: number, style?: BridgeStyle): Example {
  const svg = readFileSync(join(MDI, `${name}.svg`), 'utf8');
  const data = [...svg.matchAll(/ d="([^"]+)"/g)].map(([, each]) => each).join('');
  const text = file(`<path d="${data}"/>`, '0 0 24 24', OPENINGS);
  return { text, off, ...(style && { style }) };
}

function word(letters: string, off: number): Example {
  const bytes = readFileSync(FONT);
  const font = parse(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength));
  const path = `<path transform="translate(2 36)" d="${lineOfText(font, letters, 14)}"/>`;
  return { text: file(path, '0 0 60 60', OPENINGS), off };
}

/** A ring, and a later bar that covers a part of it. */
function covered(off: number, style?: BridgeStyle): Example {
  const ring =
    '<g id="sun"><path fill="#d9a" fill-rule="evenodd" d="M30 8A22 22 0 1 1 29.9 8ZM30 16A14 14 0 1 0 30.1 16Z"/></g>';
  const bar = '<g id="reeds"><path fill="#357" d="M36 2L46 2L58 58H50Z"/></g>';
  return { text: file(`${ring}${bar}`, '0 0 60 60'), off, ...(style && { style }) };
}

const OPENINGS = ' data-tombolo-reading="openings"';

/** Rings about three middles. */
function ripples(off: number): Example {
  const rings = [28, 24, 19, 15, 10, 6].map((radius, i) => {
    const [x, y] = [30 + 1.5 * (i >> 1), 30 - 2 * (i >> 1)];
    return `M${x - radius} ${y}a${radius} ${radius} 0 1 0 ${2 * radius} 0a${radius} ${radius} 0 1 0 ${-2 * radius} 0z`;
  });
  const path = `<path fill-rule="evenodd" d="${rings.join('')}"/>`;
  return { text: file(path, '0 0 60 60', ' data-tombolo-reading="openings"'), off };
}

function file(inside: string, viewBox: string, attributes = ''): string {
  const size = 'width="60mm" height="60mm"';
  return `<svg xmlns="http://www.w3.org/2000/svg" ${size} viewBox="${viewBox}"${attributes}>${inside}</svg>`;
}

const NONE = 1e9;

export const EXAMPLES: Readonly<Record<Weight, Example>> = {
  slenderness: icon('clipboard-play', NONE),
  widest: icon('arrow-left-drop-circle', 1),
  stoutest: {
    text: file('<path fill-rule="evenodd" d="M1 1H59V59H1zM18 22H34V37H18z"/>', '0 0 60 60', OPENINGS),
    off: 0,
  },
  widthStep: icon('arrow-up-drop-circle', 1),
  tooNarrow: icon('message-lock-outline', 0),
  long: icon('bag-personal-tag', NONE),
  longer: icon('cloud-check-variant', 0),
  oblique: icon('zodiac-cancer', 0),
  crooked: icon('account-off-outline', 0),
  notUpright: icon('ab-testing', 0, 'upright'),
  slantedEnd: icon('music-clef-treble', 0),
  corner: icon('arrow-bottom-left-bold-outline', 0),
  noSupport: icon('hand-front-right-outline', 0),
  noRoot: icon('fishbowl', 0),
  thinPlace: icon('lightbulb-group-off-outline', 0),
  hidden: covered(0),
  hiddenFirst: covered(0, 'hidden'),
  uneven: icon('ab-testing', 0),
  hinge: icon('knob', 1),
  bent: icon('currency-eur-off', 0),
  further: icon('checkbox-marked-circle', 0),
  furtherWidths: icon('google-cloud', 0),
  reach: icon('account-school-outline', 10),
  offCentre: icon('emoticon-cool', 10),
  swing: icon('keyboard', NONE),
  lettering: word('BADGE', 0),
  nested: ripples(0),
  symmetric: icon('delete-circle', 0),
  alike: icon('ballot-recount-outline', 0),
};

export interface Compared {
  readonly sheet: Sheet;
  /** Painted over it. */
  readonly later: readonly Sheet[];
  readonly withIt: readonly Bridge[];
  readonly without: readonly Bridge[];
}

export function compared(weight: Weight): Compared {
  const { text, off, style } = EXAMPLES[weight];
  const report = check(text);
  const [sheet, ...later] = report.sheets as readonly [Sheet, ...Sheet[]];
  const withIt = bridgesOf(report, sheet, style);
  const own = WEIGHTS[weight] as { value: number };
  const { value } = own;
  own.value = off;
  try {
    return { sheet, later, withIt, without: bridgesOf(report, sheet, style) };
  } finally {
    own.value = value;
  }
}

function bridgesOf(report: Report, sheet: Sheet, style?: BridgeStyle): readonly Bridge[] {
  return planFor(report, sheet, islandsOf(sheet), { ...(style && { style }) }).bridges;
}
