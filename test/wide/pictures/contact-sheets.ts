/** Pictures of findings to be looked at: of each the print and its sheet, with a ring round the place. */
import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { setImmediate } from 'node:timers/promises';
import { Resvg } from '@resvg/resvg-js';
import { joinBoxes } from '../../../src/geometry/base/ring';
import { boxOfPolygon } from '../../../src/geometry/boolean/index';
import { pathData } from '../../../src/picture/path-data';
import type { ReportedFinding } from '../../../src/report/finding-id';
import type { Report } from '../../../src/report/report';
import type { Sheet } from '../../../src/sheet/types';
import { regionOf } from './place-of-finding';
import type { judge } from './rule';

interface Judgement {
  readonly name: string;
  readonly report: Report;
  readonly judged: ReturnType<typeof judge>;
}

/** Pixels of a panel, and of the lines of words below it. */
const [WIDTH, HEIGHT, WORDS] = [148, 130, 46];
const [COLUMNS, ROWS] = [6, 5];
/** mm: so much is shown at the least, and at the most. */
const [NEAR, FAR] = [6, 64];

/** Writes `findings-00.png` and so on, thirty findings a sheet, sorted by check. */
export async function writeContactSheets(folder: string, judgements: readonly Judgement[]): Promise<void> {
  mkdirSync(folder, { recursive: true });
  const cells = judgements
    .flatMap(({ name, report, judged }) => judged.map((each) => ({ name, report, ...each })))
    .sort((a, b) => a.finding.check.localeCompare(b.finding.check));
  const perSheet = COLUMNS * ROWS;
  for (let first = 0; first < cells.length; first += perSheet) {
    const body = cells.slice(first, first + perSheet).map(({ name, report, finding, noise }, i) => {
      const [x, y] = [(i % COLUMNS) * 2 * WIDTH, Math.floor(i / COLUMNS) * (HEIGHT + WORDS)];
      const title = `${name.slice(0, 18)} ${finding.check}${noise ? ` [${noise}]` : ''}`;
      return `<g transform="translate(${x} ${y})">${cellOf(report, finding)}${words([title, ...wrapped(finding.message)])}</g>`;
    });
    const [width, height] = [COLUMNS * 2 * WIDTH, ROWS * (HEIGHT + WORDS)];
    const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}">${body.join('')}</svg>`;
    const png = new Resvg(svg, { background: '#ffffff' }).render().asPng();
    writeFileSync(path.join(folder, `findings-${String(first / perSheet).padStart(2, '0')}.png`), png);
    await setImmediate();
  }
}

function cellOf(report: Report, finding: ReportedFinding): string {
  const sheets = report.stack.layers.map(({ sheet }) => sheet);
  const own = sheets.filter(({ layer }) => layer.id === finding.layerId);
  return panel(report, finding, sheets, 0) + panel(report, finding, own, WIDTH);
}

function panel({ drawing }: Report, finding: ReportedFinding, sheets: readonly Sheet[], x: number): string {
  const { box, pixel, middle } = viewOf(drawing, finding);
  const paint = sheets.map(
    ({ openings, layer }) =>
      `<path fill-rule="evenodd" d="${pathData(openings)}" fill="${layer.paint}" stroke="#777" stroke-width="${x ? pixel / 2 : 0}"/>`,
  );
  const subject = `<path d="${pathData(regionOf(finding))}" fill="none" stroke="#e0e" stroke-width="${pixel}"/>`;
  const ring = `<circle cx="${middle.x}" cy="${middle.y}" r="${9 * pixel}" fill="none" stroke="#e0e" stroke-width="${2 * pixel}"/>`;
  return (
    `<svg x="${x}" width="${WIDTH - 2}" height="${HEIGHT}" viewBox="${box}" preserveAspectRatio="xMidYMid slice">` +
    `<rect width="${drawing.width}" height="${drawing.height}" fill="#efe6d2"/>${paint.join('')}${subject}${ring}</svg>`
  );
}

function viewOf(drawing: { readonly width: number; readonly height: number }, finding: ReportedFinding) {
  const boxes = regionOf(finding).map(boxOfPolygon);
  const extent = boxes.length > 0 ? joinBoxes(boxes) : undefined;
  const middle = finding.at ?? { x: drawing.width / 2, y: drawing.height / 2 };
  const size = extent ? 1.6 * Math.max(extent.maxX - extent.minX, extent.maxY - extent.minY) : NEAR;
  const width = Math.min(FAR, Math.max(NEAR, size));
  const height = (width * HEIGHT) / WIDTH;
  const box = [middle.x - width / 2, middle.y - height / 2, width, height].join(' ');
  return { box, pixel: width / WIDTH, middle };
}

function wrapped(message: string): string[] {
  return message.match(/.{1,50}(\s|$)/g)?.slice(0, 3) ?? [];
}

function words(lines: readonly string[]): string {
  const shown = lines.map(
    (line, i) =>
      `<text x="2" y="${HEIGHT + 10 + i * 11}" font-size="9.5" font-family="DejaVu Sans">${line.replace(/&/g, '&amp;').replace(/</g, '&lt;')}</text>`,
  );
  return shown.join('');
}
