import { describe, expect, it, it as test } from 'vitest';
import { DEFAULT_CONFIG } from '../../src/config/types';
import { cutSheet } from '../../src/cut/cut-sheet';
import { chainData } from '../../src/cut/write/svg';
import { type CutOptions, check } from '../../src/engine/index';
import { areaOf } from '../../src/geometry/boolean/index';
import { signedAreaOf } from '../../src/geometry/curve/measure';

const drawn = (content: string) =>
  check(`<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="40mm" viewBox="0 0 60 40">${content}</svg>`)
    .sheets[0]!;

const cutOf = (content: string, options: CutOptions = {}) => cutSheet(drawn(content), { number: 1, count: 1 }, options);
const dataOf = (content: string, options?: CutOptions) =>
  cutOf(content, options)
    .contours.filter(({ kind }) => kind !== 'edge')
    .map(({ curves, closed }) => chainData(curves, closed));

describe('a sheet whose cuts are not compensated', () => {
  it('is written curve for curve', () => {
    const cut = cutOf('<path d="M10 10C12 4 20 4 22 10Q30 12 22 20A6 6 0 0 1 10 20Z"/>');
    const [opening] = cut.contours;
    expect(opening!.curves.map(({ kind }) => kind).sort()).toEqual(['arc', 'cubic', 'line', 'quadratic']);
    const cubic = opening!.curves.find(({ kind }) => kind === 'cubic')!;
    expect([cubic.start, cubic.end]).toContainEqual({ x: 10, y: 10 });
    expect([cubic]).toEqual([
      expect.objectContaining(
        cubic.start.x === 10
          ? { control1: { x: 12, y: 4 }, control2: { x: 20, y: 4 } }
          : { control1: { x: 20, y: 4 }, control2: { x: 12, y: 4 } },
      ),
    ]);
  });

  it('keeps circles as arcs', () => {
    const [data] = dataOf('<circle cx="30" cy="20" r="10"/>');
    expect(data).toMatch(/^M[\d. ]+(A10 10 0 0 [01] [\d. ]+){4}Z$/);
  });

  it('cuts shapes that overlap along their common outline, with their own curves parted where they meet', () => {
    const cut = cutOf('<circle cx="25" cy="20" r="8"/><circle cx="35" cy="20" r="8"/>');
    const [opening, edge] = cut.contours;
    expect(cut.contours).toHaveLength(2);
    expect(edge!.kind).toBe('edge');
    expect(opening!.curves.every(({ kind }) => kind === 'arc')).toBe(true);
    // Two circles of radius r with centres d apart: their union has 2πr² − 2r²·acos(d/2r) + (d/2)·√(4r² − d²).
    const area = 2 * Math.PI * 64 - 2 * 64 * Math.acos(10 / 16) + 5 * Math.sqrt(4 * 64 - 100);
    expect(Math.abs(opening!.curves.reduce((sum, curve) => sum + signedAreaOf(curve), 0))).toBeCloseTo(area, 2);
    // Each circle is left an arc of 2π − 2·acos(d/2r).
    expect(opening!.length).toBeCloseTo(2 * 8 * (2 * Math.PI - 2 * Math.acos(10 / 16)), 3);
  });

  it('has no line twice, and none inside an opening', () => {
    const cut = cutOf(
      '<rect x="10" y="10" width="20" height="20"/><rect x="15" y="15" width="5" height="5"/><rect x="30" y="10" width="10" height="20"/>',
    );
    expect(cut.contours.map(({ kind }) => kind)).toEqual(['opening', 'edge']);
    expect(cut.contours[0]!.length).toBeCloseTo(2 * (30 + 20), 6);
  });

  it('follows the frame where an opening reaches it, once', () => {
    const cut = cutOf('<rect x="-5" y="10" width="20" height="20"/>');
    expect(cut.contours.map(({ kind }) => kind)).toEqual(['edge']);
    expect(cut.contours[0]!.length).toBeCloseTo(2 * (60 + 40) + 2 * 15, 6);
  });
});

describe('order', () => {
  it('goes from inside out, the edge last', () => {
    // An opening with a loose piece that has an opening of its own.
    const nest =
      '<path fill-rule="evenodd" d="M5 5H35V35H5Z M10 10H30V30H10Z M15 15H25V25H15Z"/><circle cx="50" cy="20" r="4"/>';
    const kinds = cutOf(nest).contours.map(({ kind, length }) => `${kind} ${Math.round(length)}`);
    expect(kinds.at(-1)).toBe('edge 200');
    const nested = kinds.filter((kind) => kind !== 'opening 25');
    expect(nested).toEqual(['opening 40', 'piece 80', 'opening 120', 'edge 200']);
  });

  it('leaves the edge out where that is asked for', () => {
    expect(cutOf('<circle cx="30" cy="20" r="10"/>', { edge: false }).contours.map(({ kind }) => kind)).toEqual([
      'opening',
    ]);
  });
});

describe('kerf', () => {
  // Morphology: a path inset by k/2, cut with a disc of k, leaves the opening with corners rounded by k/2.
  it('a square of 10 mm and k 0.1: a path of 39.6 mm', () => {
    const cut = cutOf('<rect x="20" y="10" width="10" height="10"/>', { kerf: 0.1 });
    expect(cut.contours[0]!.length).toBeCloseTo(39.6, 3);
    expect(cut.contours[0]!.curves).toHaveLength(4);
  });

  it('the sheet keeps its size: its edge runs outside', () => {
    const cut = cutOf('<rect x="20" y="10" width="10" height="10"/>', { kerf: 0.2 });
    expect([cut.width, cut.height]).toEqual([60.2, 40.2]);
    expect(cut.contours.at(-1)!.length).toBeCloseTo(2 * (60.2 + 40.2), 9);
  });

  it('a circle is cut smaller by k/2, a loose piece larger', () => {
    const ring =
      '<path fill-rule="evenodd" d="M40 20A10 10 0 1 1 20 20A10 10 0 1 1 40 20ZM36 20A6 6 0 1 0 24 20A6 6 0 1 0 36 20Z"/>';
    const lengths = cutOf(ring, { kerf: 0.1 }).contours.map(({ kind, length }) => [kind, length] as const);
    expect(lengths.map(([kind]) => kind)).toEqual(['piece', 'opening', 'edge']);
    expect(lengths[0]![1]).toBeCloseTo(2 * Math.PI * 6.05, 1);
    expect(lengths[1]![1]).toBeCloseTo(2 * Math.PI * 9.95, 1);
  });

  it('says what is too narrow to be cut', () => {
    const { notes, contours } = cutOf('<rect x="10" y="10" width="20" height="0.08"/><circle cx="40" cy="20" r="5"/>', {
      kerf: 0.1,
    });
    expect(notes).toEqual(['1 opening is narrower than the kerf and cannot be cut']);
    expect(contours.map(({ kind }) => kind)).toEqual(['opening', 'edge']);
  });
});

test('margin is sheet: the page is as large as it, and its origin is told', () => {
  const text =
    '<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="40mm" viewBox="0 0 60 40"><circle cx="30" cy="20" r="10"/></svg>';
  const sheet = check(text, { config: { ...DEFAULT_CONFIG, margin: 5 } }).sheets[0]!;
  const cut = cutSheet(sheet, { number: 1, count: 1 });
  expect([cut.width, cut.height, cut.origin]).toEqual([70, 50, { x: -5, y: -5 }]);
  expect(areaOf(sheet.material)).toBeCloseTo(70 * 50 - Math.PI * 100, 1);
});
