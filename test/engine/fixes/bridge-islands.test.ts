import { beforeAll, describe, expect, it } from 'vitest';
import {
  applyEdits,
  bridgeIslands,
  candidatesFor,
  check,
  type Fix,
  fixesFor,
  proveFix,
} from '../../../src/engine/index';
import type { FixRefusal } from '../../../src/report/fix';
import type { Report } from '../../../src/report/report';

const circle = (x: number, y: number, r: number): string =>
  `M${x - r} ${y}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0Z`;

/** Rings of one path, each with what it leaves inside: centre and radius of that. */
const rings = (islands: readonly (readonly [number, number, number])[]): string =>
  '<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="60mm" viewBox="0 0 60 60"><path fill-rule="evenodd" ' +
  `d="${islands.map(([x, y, r]) => circle(x, y, 8) + circle(x, y, r)).join('')}"/></svg>`;

const islandsLeft = (text: string): number =>
  check(text).sheets.flatMap(({ pieces }) => pieces.filter(({ island }) => island)).length;

describe('a layer with an island that there is no place for', () => {
  const text = rings([
    [15, 15, 5],
    [40, 15, 5],
    [30, 40, 0.2],
  ]);
  let outcome: ReturnType<typeof bridgeIslands>;
  beforeAll(() => {
    outcome = bridgeIslands(check(text));
  }, 60_000);

  it('has all its other islands bridged, though one path draws them all', () => {
    expect(outcome.bridges).toBe(4);
    expect(islandsLeft(text)).toBe(3);
    expect(islandsLeft(outcome.text)).toBe(1);
  });

  it('says which one is left, once', () => {
    expect(outcome.refusals.map(({ message }) => message)).toEqual([
      'Layer "stencil": No bridge fits the island at 30.0, 40.0 mm, which is narrower than a bridge of 0.80 mm. ' +
        'One of 0.32 mm would hold: lower limits.bridge, cut the drawing 2.5 times as large, or remove it.',
    ]);
  });

  it('is left alone by a second run', () => {
    expect(bridgeIslands(check(outcome.text)).edits).toEqual([]);
  });
});

describe('an opening across the edge of the sheet that a bridge parts', () => {
  // A ring with two horns that reach the border on the right: each half has one.
  const text =
    '<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="60mm" viewBox="0 0 60 60">' +
    '<path fill-rule="evenodd" d="M10 10H60V14H40V46H60V50H10ZM14 20V40H36V20Z"/></svg>';

  it('is not a new fault, whichever half is told at the place of the whole', () => {
    const outcome = bridgeIslands(check(text));
    expect(outcome.refusals).toEqual([]);
    expect(islandsLeft(outcome.text)).toBe(0);
    const edges = check(outcome.text).findings.filter((finding) => finding.check === 'edge-opening');
    expect(edges.length).toBeGreaterThan(1);
    expect(outcome.brings.map((each) => each.check)).toContain('edge-opening');
  });
});

describe('a line with round caps', () => {
  // Not level nor upright anywhere: the cap ends beside a side of the bridge that no corner of a polygon lies at.
  const text =
    '<svg xmlns="http://www.w3.org/2000/svg" width="80mm" height="80mm" viewBox="0 0 80 80"><path fill="none" ' +
    'stroke="#000" stroke-width="6" stroke-linecap="round" d="M40 12 L66 55 L15 57 Z M40 32 L49 47 L31 48 Z"/></svg>';

  it('is parted by bridges of the whole limit, at once', () => {
    const outcome = bridgeIslands(check(text));
    expect(outcome.refusals).toEqual([]);
    expect(islandsLeft(outcome.text)).toBe(0);
    expect(check(outcome.text).findings.filter((finding) => finding.check === 'thin-bridge')).toEqual([]);
    expect(bridgeIslands(check(outcome.text)).edits).toEqual([]);
  });
});

describe('bridges for one island', () => {
  const NESTED =
    '<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="100mm" viewBox="0 0 100 100">' +
    '<path d="M10 10H90V90H10zM12 12V88H88V12zM40 40h20v20h-20zM48 48v4h4v-4z"/></svg>';
  const offeredFor = (text: string, area: number) => {
    const report = check(text);
    const island = report.findings.find(({ measure }) => measure && Math.abs(measure.value - area) < 0.1);
    return { report, fixes: island ? fixesFor(report, island).fixes : [] };
  };
  const titled = (fixes: readonly Fix[], kind: string) => fixes.find((fix) => fix.kind === kind)?.title;

  it('are no others, though what it hangs on is loose; the title says so', () => {
    const { report, fixes } = offeredFor(NESTED, 16);
    const [own] = fixes;
    expect(own?.title).toBe('Bridge this island (1 bridge of 0.80 mm; the piece around it is loose too)');
    expect(own?.bridges?.map(({ length }) => Math.round(length))).toEqual([8]);
    const after = check(applyEdits(NESTED, own?.edits ?? []));
    const loose = (each: Report) => each.sheets[0]?.pieces.filter(({ island }) => island).length;
    expect([loose(report), loose(after)]).toEqual([2, 1]);
  });

  it('come with those of the piece around it where all is to hold, and the title counts them', () => {
    const { fixes } = offeredFor(NESTED, 16);
    expect(titled(fixes, 'bridge-island-two')).toMatch(
      /^Add two opposite bridges \(and [34] for the piece around it\)$/,
    );
    const two = fixes.find(({ kind }) => kind === 'bridge-island-two');
    const after = check(applyEdits(NESTED, two?.edits ?? []));
    expect(after.findings.filter((finding) => finding.check === 'floating-island')).toEqual([]);
  });

  it('of the outer one are for it alone', () => {
    const { fixes } = offeredFor(NESTED, 76 * 76 - 400);
    expect(fixes[0]?.title).toMatch(/^Bridge this island \([34] bridges of 0\.80 mm\)$/);
    const after = check(applyEdits(NESTED, fixes[0]?.edits ?? []));
    expect(after.sheets[0]?.pieces.filter(({ island }) => island)).toHaveLength(1);
  });
});

describe('what is refused when other islands are bridged already', () => {
  // @mdi/svg, cabin-a-frame, Apache-2.0: three islands, each of which vertical bridges leave too thin a bridge beside.
  const text =
    '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 24 24"><path d="M12 3L4 21H20L12 3M9 19H7.08L9 14.67V19' +
    'M13 19H11V14H13V19M10.19 12L12 7.92L13.81 12H10.19M15 14.67L16.92 19H15V14.67Z"/></svg>';

  it('may be had anyway as a change of the text that it was asked for', () => {
    const report = check(text);
    const finding = report.findings.find(({ subject }) => subject?.kind === 'island')!;
    const upright = candidatesFor(report, finding).find(({ kind }) => kind === 'bridge-layer-upright')!;
    const { edits, bridges = [] } = (proveFix(report, upright) as FixRefusal).anyway!;
    const bridged = applyEdits(report.text, edits);
    expect(islandsLeft(bridged)).toBe(0);
    expect(check(bridged).findings.filter((each) => each.check === 'thin-bridge').length).toBeGreaterThan(0);
    expect(bridges.length).toBeGreaterThan(2);
  });
});

describe('an island that nothing within reach holds well', () => {
  const told = (standing: string): string[] => {
    const text =
      '<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="100mm" viewBox="0 0 100 100"' +
      ` data-tombolo-reading="openings"><path fill-rule="evenodd" d="M2 2H98V98H2z${standing}"/></svg>`;
    return bridgeIslands(check(text)).brings.map(({ message }) => message);
  };

  it('is told with how far it lifts, once for all that hang with it', () => {
    const sentences = told('M26 30H74V54H26zM26 60H74V84H26z').filter((message) => message.startsWith('Island at'));
    expect(sentences).toHaveLength(1);
    expect(sentences[0]).toMatch(
      /^Island at [\d., ]+ mm and 1 more: lifts (over )?[\d.]+ mm under spray, as no bridge/,
    );
  });

  it('is not told of where bridges embrace it', () => {
    expect(told('M13 13H87V87H13z')).toEqual([]);
  });
});

describe('bridges that are longer than they had better be', () => {
  const told = (inset: number): string[] => {
    const text =
      '<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="100mm" viewBox="0 0 100 100"' +
      ` data-tombolo-reading="openings"><path fill-rule="evenodd" d="M2 2H98V98H2zM${inset} ${inset}V${100 - inset}` +
      `H${100 - inset}V${inset}z"/></svg>`;
    return bridgeIslands(check(text)).brings.map(({ message }) => message);
  };

  it('are told in a sentence for a layer, with what would do instead', () => {
    const sentences = told(15).filter((message) => message.startsWith('Bridge at'));
    expect(sentences).toHaveLength(1);
    expect(sentences[0]).toMatch(
      /^Bridge at [\d., ]+ mm and \d more: 13\.00 mm long; over 12\.00 mm it bends easily\. Remove the island, cut two/,
    );
  });

  it('are not told of at that length', () => {
    expect(told(14)).toEqual([]);
  });
});
