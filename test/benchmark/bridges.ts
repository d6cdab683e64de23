/**
 * Run by itself: how long bridging a whole layer takes beside checking it, planning, cutting and the proof by a second
 * check apart.
 */
import { changedRegion, cutStrips, stripsFor } from '../../src/edits/bridge/cut';
import { planBridges } from '../../src/edits/plan/index';
import { bridgeIslands, check } from '../../src/engine/index';
import { time } from './measure';
import { blobSheet } from './seeded';

/** One blob in three has a counter: 200 islands in 100 000 segments. */
const COUNTER_EACH = 3;
/** mm */
const WIDTH = 0.8;

/** Prints a row for a drawing of many paths, and one for the same drawing as a single path. */
function compareBridging(segments: number): void {
  const svg = blobSheet(segments, COUNTER_EACH);
  compare('in paths', segments, svg);
  compare('in one path', segments, svg.replace(/"\/>\n<path d="/g, ' '));
}

function compare(how: string, segments: number, svg: string): void {
  const report = check(svg);
  const [sheet] = report.sheets;
  if (!sheet) return;
  const islands = sheet.pieces.filter(({ island }) => island);
  const plan = () => planBridges(sheet, islands, { width: WIDTH }).bridges;
  const bridges = plan();
  const strips = stripsFor(sheet, bridges);
  const checked = time(() => check(svg));
  const planned = time(plan);
  const cut = time(() => [cutStrips(sheet, stripsFor(sheet, bridges)), changedRegion(sheet, strips)]);
  // What was proven for a report is remembered with it: each run gets one of its own, whose check is taken off again.
  const whole = time(() => bridgeIslands(check(svg))) - checked;
  console.log(
    `bridging ${islands.length} islands of ${segments} segments ${how} with ${bridges.length} bridges: check ` +
      `${checked.toFixed(0)} ms, plan ${planned.toFixed(0)} ms, cut ${cut.toFixed(0)} ms, with ` +
      `proof ${whole.toFixed(0)} ms, ` +
      `(plan + cut)/check ${((planned + cut) / checked).toFixed(2)}, all/check ${(whole / checked).toFixed(2)}`,
  );
}

compareBridging(100_000);
