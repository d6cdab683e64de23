/** The mend that spreads a colour under its neighbour; pictures before and after by an independent renderer (resvg). */
import { Resvg } from '@resvg/resvg-js';
import { describe, expect, it } from 'vitest';
import { check } from '../../../src/engine/check/check-file';
import { fixesFor } from '../../../src/engine/fixes/index';
import type { Fix } from '../../../src/report/fix';
import { applyEdits } from '../../../src/text/text';
import { fixed, foundIn, project, sheet } from '../project-files';

const SIDE = 60;
const PIXELS_PER_MM = 20;

const stencil = (body: string) => sheet(body);

function spreadFor(svg: string, id: string): Fix | undefined {
  const report = check(svg);
  const finding = report.findings.find((each) => each.check === id);
  if (!finding) throw new Error(`no ${id} in ${report.findings.map((each) => each.check)}`);
  return fixesFor(report, finding).fixes.find(({ kind }) => kind === 'spread-colour');
}

const after = (svg: string, mend: Fix | undefined): string => applyEdits(svg, mend?.edits ?? []);

/** Red, green, blue and opacity of each pixel. */
const render = (svg: string) =>
  new Uint8Array(new Resvg(svg, { fitTo: { mode: 'width', value: SIDE * PIXELS_PER_MM } }).render().pixels);

/** Pixels that were wholly painted and have another colour now. */
function repainted(before: string, now: string): number {
  const [a, b] = [render(before), render(now)];
  let count = 0;
  for (let i = 0; i < a.length; i += 4) {
    if (a[i + 3] === 255 && [0, 1, 2, 3].some((part) => Math.abs((a[i + part] ?? 0) - (b[i + part] ?? 0)) > 2))
      count += 1;
  }
  return count;
}

/** mm² that show bare within a box, when the group `id` has slipped. */
function bareAfterSlip(svg: string, id: string, dx: number, dy: number, [x0, y0, x1, y1]: readonly number[]): number {
  const pixels = render(svg.replace(`<g id="${id}"`, `<g transform="translate(${dx} ${dy})" id="${id}"`));
  const box = [x0, y0, x1, y1].map((value) => Math.round((value ?? 0) * PIXELS_PER_MM)) as [
    number,
    number,
    number,
    number,
  ];
  let sum = 0;
  for (let y = box[1]; y < box[3]; y += 1) {
    for (let x = box[0]; x < box[2]; x += 1) sum += 255 - (pixels[4 * (y * SIDE * PIXELS_PER_MM + x) + 3] ?? 0);
  }
  return sum / 255 / PIXELS_PER_MM ** 2;
}

const straight = (lap: number) =>
  stencil(
    `<g id="sky" fill="#88c"><path d="M5 5H${30 + lap}V55H5Z"/></g>\n<g id="hill" fill="#363">` +
      `<path d="M30 5H55V55H30Z"/></g>`,
  );

/** The earlier colour, and a later one that begins where it ends. */
const sides = (sky: string, hill = '<path d="M30 5H55V55H30Z"/>') =>
  stencil(`<g id="sky" fill="#88c">${sky}</g><g id="hill" fill="#363">${hill}</g>`);

/** Both colours have the same curved border, 5 mm and more from the outlines bare of everything else. */
const CURVE = 'C40 20 20 40 30 55';
const curved = (shift: number) =>
  stencil(
    `<g id="sky" fill="#88c">\n  <path class="far" ` +
      `d="M5 5H${30 - shift}${shift === 0 ? CURVE : 'c10 15-10 35 0 50'}H5Z"/>\n</g>\n` +
      `<g id="hill" fill="#363"><path d="M30 5${CURVE}H55V5Z"/></g>`,
  );

const DIRECTIONS = [0, 1, 2, 3, 4, 5, 6, 7].map(
  (k) => [Math.cos((k * Math.PI) / 4), Math.sin((k * Math.PI) / 4)] as const,
);

describe('spreading the earlier colour', () => {
  it.each([
    ['only touches', straight(0)],
    ['overlaps by 0.2 mm', straight(0.2)],
    ['touches along a curve', curved(0)],
  ])('mends a seam that %s, and changes nothing that is seen', (_, svg) => {
    const mend = spreadFor(svg, 'short-overlap');
    expect(mend).toMatchObject({ preferred: true, safe: false, title: 'Extend "sky" 0.50 mm under "hill"' });
    const now = after(svg, mend);
    expect(check(now).findings).toEqual([]);
    expect(repainted(svg, now)).toBe(0);
  });

  it.each([
    ['a straight edge', straight(0), straight(0.55)],
    [
      'the side of a rectangle',
      sides('<rect x="5" y="5" width="25" height="50"/>'),
      sides('<path d="M5 5H30.55V55H5Z"/>'),
    ],
    ['a curve', curved(0), curved(0).replace('H30C40 20 20 40 30 55', 'H30.78C40.78 20 20.79 40 30.79 55')],
    [
      'a shape in units of its own',
      sides('<path transform="translate(5 5) scale(.1)" d="M0 0H250V500H0Z"/>'),
      sides('<path transform="translate(5 5) scale(.1)" d="M0 0H255.5V500H0Z"/>'),
    ],
  ])('moves the edge that is there, which stays what it is: %s', (_, svg, expected) => {
    expect(after(svg, spreadFor(svg, 'short-overlap'))).toBe(expected);
  });

  it('moves the part of a straight edge that the neighbour reaches, in parallel', () => {
    const svg = sides('<path d="M5 5H30V55H5Z"/>', '<path d="M30 15H55V45H30Z"/>');
    const now = after(svg, spreadFor(svg, 'short-overlap'));
    expect(now).toContain('d="M5 5H30V15.04L30.55 15.04L30.55 44.96L30 44.96L30 55H5Z"');
    expect(check(now).findings).toEqual([]);
    expect(repainted(svg, now)).toBe(0);
  });

  it('goes under whichever later colours meet there', () => {
    const svg = stencil(
      '<g fill="#88c"><title>sky</title><path d="M5 5H30V55H5Z"/></g>' +
        '<g fill="#363"><title>hill</title><path d="M30 5H55V31H30Z"/></g>' +
        '<g fill="#a52"><title>field</title><path d="M30 30H55V55H30Z"/></g>',
    );
    const found = (text: string) => check(text).findings.map(({ check: id, message }) => `${id} ${message}`);
    expect(found(svg)).toHaveLength(2);
    let now = after(svg, spreadFor(svg, 'short-overlap'));
    expect(found(now)).toHaveLength(1);
    now = after(now, spreadFor(now, 'short-overlap'));
    expect(found(now)).toEqual([]);
    expect(repainted(svg, now)).toBe(0);
  });

  it('leaves no step where two seams lie along one edge', () => {
    const svg = sides('<path d="M5 5H30V55H5Z"/>', '<path d="M30 5H55V55H30Z"/>').replace(
      '<g id="hill" fill="#363"><path d="M30 5H55V55H30Z"/></g>',
      '<g id="hill" fill="#363"><path d="M30 5H55V25H30Z"/></g><g id="field" fill="#a52"><path d="M30 24H55V55H30Z"/></g>',
    );
    let now = after(svg, spreadFor(svg, 'short-overlap'));
    now = after(now, spreadFor(now, 'short-overlap'));
    expect(check(now).findings).toEqual([]);
    const xs = [...new Set(check(now).sheets[0]?.openings[0]?.outer.filter((_, i) => i % 2 === 0))].sort(
      (a, b) => a - b,
    );
    // Nothing lies beyond the first extension, or between it and the edge.
    expect(Math.max(...xs)).toBeCloseTo(30.55, 2);
    expect(repainted(svg, now)).toBe(0);
  });

  describe('where paints are layers', () => {
    const first = '<path fill="#88c" d="M6 6H9V9H6Z"/>';
    const hill = '<path fill="#363" d="M30 5H55V55H30Z"/>';
    const sky = '<path fill="#88c" d="M5 5H30V55H5Z"/>';
    const byPaint = (body: string) => sheet(body).replace('<svg ', '<svg data-tombolo-layers="by-paint" ');
    const extended = (svg: string) => {
      const now = after(svg, spreadFor(svg, 'short-overlap'));
      expect(check(now).findings.filter(({ check: id }) => id === 'short-overlap')).toEqual([]);
      expect(repainted(svg, now)).toBe(0);
      return now;
    };

    it('moves an edge that is drawn before the neighbour', () => {
      expect(extended(byPaint(first + sky + hill))).toContain('d="M5 5H30.55V55H5Z"');
    });

    it('draws a shape before the neighbour, where the edge is drawn after it', () => {
      const now = extended(byPaint(first + hill + sky));
      expect(now).toContain(hill + sky);
      expect(now).toMatch(/d="M6 6H9V9H6Z"\/><path fill="#88c" d="[^"C]*"\/><path fill="#363"/);
    });
  });

  it('is a new shape in the colour where the edge is made by the width of a line', () => {
    const svg = sides('<path class="far" fill="none" stroke="#88c" stroke-width="25" d="M17.5 5V55"/>');
    const mend = spreadFor(svg, 'short-overlap');
    expect(mend?.edits).toHaveLength(1);
    const { span, text } = mend!.edits[0]!;
    expect(span.from).toBe(span.to);
    expect(text).toMatch(/<path style="fill:#8888cc;stroke:none" d="M[^"]*Z"\/>$/);
    expect(text).not.toContain('C');
    expect(repainted(svg, after(svg, mend))).toBe(0);
  });

  it('keeps the ground covered, whichever way a sheet slips by up to the allowance', () => {
    for (const svg of [straight(0), curved(0)]) {
      const now = after(svg, spreadFor(svg, 'short-overlap'));
      const inner = [8, 8, 52, 52];
      for (const [dx, dy] of DIRECTIONS) {
        for (const id of ['sky', 'hill']) expect(bareAfterSlip(now, id, 0.49 * dx, 0.49 * dy, inner)).toBe(0);
      }
      expect(bareAfterSlip(svg, 'hill', 0.49, 0, inner)).toBeGreaterThan(10);
    }
  }, 60_000);

  it.each([
    ['straight', straight(-0.2)],
    ['curved', curved(0.3)],
  ])(
    'closes a %s bare gap and goes on under the neighbour',
    (_, svg) => {
      const mend = spreadFor(svg, 'bare-gap');
      const now = after(svg, mend);
      expect(check(now).findings).toEqual([]);
      expect(repainted(svg, now)).toBe(0);
      for (const [dx, dy] of DIRECTIONS)
        expect(bareAfterSlip(now, 'hill', 0.49 * dx, 0.49 * dy, [8, 8, 52, 52])).toBe(0);
    },
    60_000,
  );

  it('works in the file of the earlier colour, with the neighbour in another', () => {
    const files = {
      'sky.svg': sheet('<path d="M5 5H30V55H5Z" fill="#88c"/>'),
      'hill.svg': sheet('<path d="M30 5H55V55H30Z" fill="#363"/>'),
    };
    const layers = [{ from: 'sky.svg' }, { from: 'hill.svg' }];
    const before = project(files, layers);
    expect(foundIn(before)).toEqual(['sky.svg: short-overlap']);
    const report = before.files.get('sky.svg');
    const finding = report?.findings[0];
    if (!report || !finding) throw new Error('nothing found');
    expect(finding.related).toMatchObject([{ file: 'hill.svg' }]);
    const [span] = finding.related.map((related) => related.span);
    expect(files['hill.svg'].slice(span?.from, span?.to)).toBe('Z');
    const mend = fixesFor(report, finding).fixes.find(({ kind }) => kind === 'spread-colour');
    if (!mend) throw new Error('no mend');
    expect(foundIn(project(fixed(files, 'sky.svg', mend), layers))).toEqual([]);
  });

  it('is not offered where what is filled is the material that stays', () => {
    const svg = stencil(
      '<g id="sky" data-tombolo-reading="sheet"><path d="M0 0H60V60H0ZM5 5V55H30V5Z"/></g>' +
        '<g id="hill" fill="#363"><path d="M30 5H55V55H30Z"/></g>',
    );
    expect(spreadFor(svg, 'short-overlap')).toBeUndefined();
  });
});

describe('removing a buried opening', () => {
  it('takes out its element', () => {
    const svg = stencil(
      '<g id="a"><circle cx="30" cy="30" r="5"/><circle cx="10" cy="30" r="5"/></g><g id="b">' +
        '<circle cx="30" cy="30" r="8"/></g>',
    );
    const report = check(svg);
    const [finding] = report.findings;
    const mend = finding && fixesFor(report, finding).fixes.find(({ kind }) => kind === 'remove-opening');
    expect(after(svg, mend)).toBe(svg.replace('<circle cx="30" cy="30" r="5"/>', ''));
  });
});
