/**
 * Sixty open pictures of many colours (see `pictures/read-pictures.ts`): how much of what is told is noise by a written
 * rule (`pictures/rule.ts`), and that of the faults that were found and judged true by eye none is lost. With
 * `TOMBOLO_SHEETS=folder` contact sheets of all findings are written there, to be looked at.
 */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { check } from '../../src/engine/index';
import type { ReportedFinding } from '../../src/report/finding-id';
import type { Report } from '../../src/report/report';
import { writeContactSheets } from './pictures/contact-sheets';
import { speaksOf } from './pictures/place-of-finding';
import { readPictures } from './pictures/read-pictures';
import { judge, type Noise } from './pictures/rule';

interface Judgement {
  readonly name: string;
  readonly report: Report;
  readonly judged: ReturnType<typeof judge>;
}

/** A fault as `faults.json` keeps it: its check, its layer and its place in mm; of a tongue an end of its root or its tip. */
type Fault = readonly [check: string, layer: string, x: number, y: number];

/** mm */
const REACH = 2;

/** The share of noise among all findings may be so large. */
const MOST_NOISE = 0.01;

/** The checks by which a fault may be told instead, where one cause has several effects. */
const TOLD_AS: Readonly<Record<string, readonly string[]>> = {
  'bare-gap': ['short-overlap'],
  'short-overlap': ['bare-gap', 'mixed-colours'],
  'small-opening': ['narrow-opening', 'buried-opening', 'sliver'],
  'narrow-opening': ['small-opening', 'buried-opening'],
  'floating-island': ['edge-opening', 'sliver'],
  'loose-tongue': ['edge-opening', 'floating-island'],
  'thin-bridge': ['floating-island'],
};

const judgements: Judgement[] = [];

beforeAll(async () => {
  for (const { name, text } of readPictures()) {
    const report = check(text, { budget: Infinity });
    judgements.push({ name, report, judged: judge(report) });
  }
  console.log(tableOf(judgements));
  const folder = process.env.TOMBOLO_SHEETS;
  if (folder) await writeContactSheets(folder, judgements);
}, 900_000);

describe('sixty pictures of many colours', () => {
  it('are read as layers of paint, none as bare cut lines', () => {
    const layers = judgements.flatMap(({ report }) => report.sheets.map(({ layer }) => layer));
    expect(judgements).toHaveLength(60);
    expect(layers.filter(({ byPaint, reading }) => !byPaint || reading === 'outlines')).toEqual([]);
  });

  it('have little noise among their findings', () => {
    const all = judgements.flatMap(({ judged }) => judged);
    expect(all.filter(({ noise }) => noise).length / all.length).toBeLessThan(MOST_NOISE);
  });

  it('have the missing margin told once, and each colour that is sprayed too early', () => {
    for (const { report } of judgements) {
      const of = (id: string) => report.complete.filter((finding) => finding.check === id);
      // What the frame cuts off is told beside what only lies too near to it.
      expect(of('edge-opening').length).toBeLessThanOrEqual(2);
      const early = of('mixed-colours').map(({ layer }) => layer);
      expect(new Set(early).size).toBe(early.length);
    }
  });

  it('keep every fault that was judged true', () => {
    const faults = JSON.parse(readFileSync(path.join(__dirname, 'pictures/faults.json'), 'utf8')) as Record<
      string,
      readonly Fault[]
    >;
    const lost = Object.entries(faults).flatMap(([name, places]) => {
      const findings = judgements.find((each) => each.name === name)?.report.complete ?? [];
      return places.filter((fault) => !isFound(fault, findings)).map((fault) => `${name}: ${fault.join(' ')}`);
    });
    expect(lost).toEqual([]);
  });
});

/** A seam is told once all along, at its worst place. */
function isFound([id, layer, x, y]: Fault, findings: readonly ReportedFinding[]): boolean {
  const names = [id, ...(TOLD_AS[id] ?? [])];
  return findings.some((finding) => {
    if (id === 'short-overlap' && finding.check === id && finding.layer === layer) return true;
    return names.includes(finding.check) && speaksOf(finding, { x, y }, REACH);
  });
}

/** Findings by check, with the causes of noise. */
function tableOf(all: readonly Judgement[]): string {
  const judged = all.flatMap((each) => each.judged);
  const checks = [...new Set(judged.map(({ finding }) => finding.check))].sort();
  const rows = checks.map((id) => {
    const own = judged.filter(({ finding }) => finding.check === id);
    const causes: Noise[] = ['covered', 'unseen', 'told-before', 'outside'];
    const counts = causes.map((cause) => own.filter(({ noise }) => noise === cause).length);
    const shown = causes.flatMap((cause, i) => (counts[i] ? [`${cause} ${counts[i]}`] : []));
    return `  ${id}: ${own.length}${shown.length > 0 ? ` (${shown.join(', ')})` : ''}`;
  });
  const noise = judged.filter((each) => each.noise).length;
  return `${judged.length} findings, ${((100 * noise) / judged.length).toFixed(1)} % noise\n${rows.join('\n')}`;
}
