/**
 * Three hundred real sheets as cut files, read by programs of others: SVG by svgson and svgpath and by resvg, DXF by dxf-parser, dxf and
 * Debian's ezdxf, PDF by poppler (pdfinfo, pdftocairo). Nothing is lost, and nothing is there twice. A hundred of them cut
 * with a kerf, by clipper-lib's offset of the written path, give the openings as drawn.
 */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Resvg } from '@resvg/resvg-js';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { cutSheet } from '../../src/cut/cut-sheet';
import { type CutSheet, cutFile } from '../../src/engine/index';
import { areaOf, perimeterOf } from '../../src/geometry/boolean/index';
import { areaOf as clipperArea, grown, type Point, type Rings, shifted, without } from '../outside/clipper';
import { bowsOfContours, contoursOf, expectSame, worstBow } from '../outside/cut-files/judge';
import {
  measure,
  type Polyline,
  readPopplerSvg,
  readSvg,
  readWithDxf,
  readWithDxfParser,
  ringsOfPolylines,
} from '../outside/cut-files/readers';
import { demoSheets, iconSheets, letterSheets, type NamedSheet, pictureSheets } from '../outside/cut-files/sheets';
import { readPictures } from './pictures/read-pictures';

const SHEETS = 300;
/** So many pictures have sheets enough. */
const PICTURES = 40;
const WITH_KERF = 100;
const KERF = 0.1;

/** mm: cairo keeps places to 1/256 of a point. */
const CAIRO_GRID = 25.4 / 72 / 256 / 2;

let folder: string;
let sheets: (NamedSheet & { readonly cut: CutSheet })[];

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'tombolo-cut-'));
  const all = [
    ...demoSheets(),
    ...letterSheets('aBe8&gQ%'),
    ...iconSheets('@mdi/svg/svg', 60, 110),
    ...iconSheets('@tabler/icons/icons/filled', 20, 40),
    ...pictureSheets(readPictures().slice(0, PICTURES)),
  ];
  sheets = all.slice(0, SHEETS).map((each) => ({ ...each, cut: cutSheet(each.sheet, { number: 1, count: 2 }) }));
}, 600_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const PYTHON = `
import json, sys, ezdxf
for name in sys.argv[1:]:
    file = ezdxf.readfile(name)
    lines = []
    for each in file.modelspace():
        old = each.dxftype() == 'POLYLINE'
        closed = each.is_closed if old else each.closed
        corners = [(v.dxf.location.x, v.dxf.location.y, v.dxf.get('bulge', 0)) for v in each.vertices] if old else list(each.get_points('xyb'))
        lines.append({'layer': each.dxf.layer, 'closed': bool(closed), 'vertices': [{'x': x, 'y': y, 'bulge': b} for x, y, b in corners]})
    print(json.dumps({'units': file.units, 'errors': len(file.audit().errors), 'polylines': lines}))
`;

test('all sheets are there', () => {
  expect(sheets.length).toBe(SHEETS);
  const cuts = sheets.reduce((sum, { cut }) => sum + cut.contours.length, 0);
  console.log(`${sheets.length} sheets, ${cuts} cuts`);
});

test('each line of the material is cut once', () => {
  for (const { name, sheet, cut } of sheets) {
    const length = cut.contours.reduce((sum, each) => sum + each.length, 0);
    expect(Math.abs(length - perimeterOf(sheet.material)), name).toBeLessThan(1e-4 * length + 0.01);
    const area = contoursOf(cut).reduce((sum, each) => sum + each.area, 0);
    expect(Math.abs(area - areaOf(sheet.material)), name).toBeLessThan(1e-3 * length);
  }
});

test('SVG', () => {
  for (const { name, cut } of sheets) {
    const text = cutFile(cut, 'svg');
    expectSame(measure(readSvg(text).rings), contoursOf(cut), name);
    // Another reader again: the box round all lines, filled as its renderer finds it.
    const filled = text.replaceAll('fill="none" stroke="#ff0000" stroke-width="0.01"', 'fill="#000"');
    const { x, y, width, height } = new Resvg(filled).getBBox()!;
    for (const [found, wanted] of [
      [x, 0],
      [y, 0],
      [width, cut.width],
      [height, cut.height],
    ] as const)
      expect(Math.abs(found - wanted), name).toBeLessThan(1e-3);
  }
});

test('DXF, new and old', () => {
  let worst = 0;
  for (const version of ['AC1015', 'AC1009'] as const) {
    const names: string[] = [];
    for (const [i, { name, cut }] of sheets.entries()) {
      const text = cutFile(cut, 'dxf', version);
      const wanted = bowsOfContours(cut);
      for (const polylines of [readWithDxfParser(text).polylines, readWithDxf(text)]) {
        expectSame(measure(ringsOfPolylines(polylines, cut.height)), wanted, `${name}, ${version}`);
      }
      worst = Math.max(worst, worstBow(cut));
      names.push(join(folder, `${i}-${version}.dxf`));
      writeFileSync(names.at(-1)!, text);
    }
    const printed = execFileSync('/usr/bin/python3', ['-c', PYTHON, ...names], {
      encoding: 'utf8',
      maxBuffer: 2 ** 30,
    });
    for (const [i, line] of printed.trim().split('\n').entries()) {
      const { units, errors, polylines } = JSON.parse(line) as { units: number; errors: number; polylines: Polyline[] };
      const { name, cut } = sheets[i]!;
      expect([units, errors], name).toEqual([version === 'AC1015' ? 4 : 0, 0]);
      expect(
        polylines.every(({ closed }) => closed),
        name,
      ).toBe(true);
      expectSame(measure(ringsOfPolylines(polylines, cut.height)), bowsOfContours(cut), `${name}, ${version}, ezdxf`);
    }
  }
  console.log(`arcs lie at most ${(worst * 1000).toFixed(2)} µm off their curves`);
  expect(worst).toBeLessThan(0.01 + 1e-6);
});

test('PDF', () => {
  for (const { name, cut } of sheets) {
    const [pdf, svg] = [join(folder, 'sheet.pdf'), join(folder, 'sheet.svg')];
    writeFileSync(pdf, cutFile(cut, 'pdf'), 'latin1');
    // pdftocairo shrinks pages unless it is told not to.
    execFileSync('pdftocairo', ['-svg', '-noshrink', '-nocenter', '-origpagesizes', pdf, svg]);
    const text = readFileSync(svg, 'utf8');
    const size = /Page size:\s+([\d.]+) x ([\d.]+) pts/.exec(execFileSync('pdfinfo', [pdf], { encoding: 'utf8' }))!;
    expect(Math.abs(Number(size[1]) - (cut.width / 25.4) * 72), name).toBeLessThan(1e-3);
    expect(Math.abs(Number(size[2]) - (cut.height / 25.4) * 72), name).toBeLessThan(1e-3);
    expectSame(measure(readPopplerSvg(text)), contoursOf(cut), `${name}, poppler`, CAIRO_GRID);
  }
});

test('kerf: what is cut is what is drawn', () => {
  let [taken, worst] = [0, 0];
  for (const { name, sheet } of sheets) {
    const { frame, openings } = sheet;
    const drawn: Rings = openings.flatMap(({ outer, holes }) => [outer, ...holes]).map(pointsOf);
    if (taken >= WITH_KERF) break;
    const cut = cutSheet(sheet, { number: 1, count: 1 }, { kerf: KERF });
    if (cut.contours.filter(({ kind }) => kind === 'edge').length !== 1 || cut.contours.at(-1)!.curves.length !== 4)
      continue;
    taken += 1;
    const written = readSvg(cutFile(cut, 'svg')).rings(24).slice(0, -1);
    // The material's edges turn the other way than the openings'.
    const path = shifted(
      written.map((ring) => [...ring].reverse()),
      frame.minX - KERF / 2,
      frame.minY - KERF / 2,
    );
    const painted = grown(path, KERF / 2);
    const opened = grown(grown(drawn, -KERF / 2), KERF / 2);
    worst = Math.max(
      worst,
      clipperArea(without(painted, grown(drawn, 0.01))),
      clipperArea(without(grown(opened, -0.01), painted)),
    );
    expect(worst, name).toBeLessThan(1e-3);
  }
  console.log(`${taken} sheets with a kerf of ${KERF} mm: at most ${worst.toExponential(1)} mm² beyond 0.01 mm`);
  expect(taken).toBe(WITH_KERF);
});

function pointsOf(ring: ArrayLike<number>): Point[] {
  return Array.from({ length: ring.length / 2 }, (_, i): Point => [ring[2 * i]!, ring[2 * i + 1]!]);
}
