/** `tombolo bridge`: gives every island the bridges it needs. */

import { type Command, Option } from 'commander';
import { BRIDGE_ROOTS, BRIDGE_STYLES, type BridgeStyle } from '../config/bridge-style';
import { count } from '../config/values';
import { applyEdits, bridgeIslands, type KeptBridge, keepBridges } from '../engine/index';
import { plainBridge } from '../format/bridge-plan';
import { jsonText } from '../format/json-text';
import { oneLine } from '../format/plain-text';
import type { Point } from '../geometry/base/curve-types';
import { isRefusal, whyNot } from '../report/refusal';
import { stackOfFile } from '../stack/stack';
import { fixAtPlace, plainBridgePreview } from './bridge-place';
import { changeFiles } from './change-files';
import { cutCovered, uncutNotes } from './cut-covered';
import { EXIT_CODES, Failure } from './failure';
import { pathIn } from './files/load-project';
import { type LoadedReport, ReportLoader, requireLayer, warnOfUnreadable } from './files/load-report';
import { writeResult } from './files/write-result';
import type { Host } from './host';
import { readPlan } from './kept-plan';
import { addReadingOptions, parsePlace, parsePositiveLength, type ReadingOptions } from './options';
import { twoLayers, writeTwoFiles } from './two-sheets';

interface BridgeOptions extends ReadingOptions {
  readonly write?: boolean;
  readonly diff?: boolean;
  readonly plan?: boolean;
  /** mm */
  readonly widthOfBridge?: number;
  readonly bridge?: number;
  readonly layer?: string;
  readonly cutCovered?: boolean;
  readonly style?: BridgeStyle;
  readonly at?: Point;
  readonly moveTo?: Point;
  readonly remove?: boolean;
  readonly twoSheets?: boolean;
  readonly out?: string;
  readonly with?: string;
}

export function addBridgeCommand(program: Command, host: Host): void {
  const command = program
    .command('bridge')
    .summary('add the bridges that islands need')
    .description(
      'Adds the bridges that every island needs and gives the changed file to standard output. Ends with 1 ' +
        'when an island could not be bridged.',
    )
    .argument('<files...>', 'SVG files, folders or patterns; - reads standard input')
    .addOption(new Option('--write', 'change the file itself').conflicts(['diff', 'plan']))
    .addOption(new Option('--diff', 'give a unified patch instead').conflicts('plan'))
    .option('--plan', 'give the bridges as JSON instead, and change nothing')
    .addOption(
      new Option('--width-of-bridge <length>', 'how wide bridges are (default: what the material needs)').argParser(
        parsePositiveLength,
      ),
    )
    .addOption(new Option('--bridge <length>', 'the same, shorter').argParser(parsePositiveLength))
    .addOption(
      new Option(
        '--with <plan>',
        'put in the bridges of a plan that --plan gave for an earlier build of the drawing (default: "bridges.plan" of tombolo.json)',
      ).conflicts(['at', 'twoSheets', 'style', 'cutCovered', 'layer']),
    )
    .option('--layer <name>', 'bridge the islands of this layer alone')
    .addOption(
      new Option('--cut-covered', 'cut islands away that later layers paint over, instead of bridging them').conflicts([
        'at',
        'twoSheets',
      ]),
    )
    .addOption(
      new Option('--style <style>', 'how bridges are put in (default: as tombolo.json says, else auto)').choices(
        BRIDGE_STYLES,
      ),
    )
    .addOption(
      new Option(
        '--roots <form>',
        'how bridges meet their banks: rounded fills the corners where they would tear (default: as tombolo.json says, else square)',
      ).choices(BRIDGE_ROOTS),
    )
    .addOption(placeOption('--at <x,y>', 'one bridge at this place of the sheet, in mm; if one is there, change that'))
    .addOption(
      placeOption('--move-to <x,y>', 'with --at: move the bridge along its gap').conflicts([
        'remove',
        'bridge',
        'widthOfBridge',
      ]),
    )
    .addOption(new Option('--remove', 'with --at: take the bridge out').conflicts(['bridge', 'widthOfBridge']))
    .addOption(
      new Option(
        '--two-sheets',
        "cut each layer with islands as two sheets in one paint that cover each other's bridges: a second layer behind it",
      ).conflicts(['at', 'style']),
    )
    .addOption(
      new Option(
        '--out <folder>',
        'with --two-sheets: write first.svg, second.svg and their tombolo.json there',
      ).conflicts(['write', 'diff', 'plan']),
    );
  addReadingOptions(command)
    .addHelpText('after', EXAMPLES)
    .action((files: string[], options: BridgeOptions) => runBridge(files, options, host));
}

const EXAMPLES = `
Examples:
  tombolo bridge heron.svg > heron-bridged.svg
  tombolo bridge heron.svg --diff
  tombolo bridge heron.svg --write --width-of-bridge 1.2mm --layer reeds
  tombolo bridge numerals.svg --style upright --roots rounded
  tombolo bridge trail 'posts/*.svg' --write
  tombolo bridge trail.svg --write --cut-covered
  tombolo bridge post.svg --plan > bridges.json
  tombolo bridge post.svg --write --with bridges.json
  tombolo bridge heron.svg --at 31,18.5 --bridge 1.2mm
  tombolo bridge numerals.svg --two-sheets --write
  tombolo bridge numerals.svg --two-sheets --out numerals`;

function placeOption(flags: string, description: string): Option {
  return new Option(flags, description).argParser(parsePlace);
}

async function runBridge(named: readonly string[], options: BridgeOptions, host: Host): Promise<void> {
  if (!options.at && (options.moveTo || options.remove)) throw new Failure('--move-to and --remove need --at');
  if (options.out !== undefined && !options.twoSheets) throw new Failure('--out needs --two-sheets');
  await changeFiles(named, options, host, bridgeFile, refuseForSeveral);
}

/** What is about one place, or goes elsewhere than the result, is of one file. */
function refuseForSeveral({ plan, at, with: kept, out }: BridgeOptions): void {
  if (plan || at || kept !== undefined || out !== undefined) {
    throw new Failure('--plan, --with, --at and --out are for one file');
  }
}

async function bridgeFile(file: string, options: BridgeOptions, host: Host): Promise<void> {
  const loaded = await new ReportLoader(options).file(file);
  requireLayer(loaded.name, stackOfFile(loaded.report.sheets), options.layer);
  warnOfUnreadable(loaded, host);
  const { text, planned, done, refusals, brings, cutAway, notes = [] } = await workOn(loaded, options);
  if (options.plan) host.print(jsonText({ version: 1, bridges: planned, ...(cutAway && { cutAway }) }));
  else if (text !== undefined) await writeResult(file, text, loaded, options, host);
  const name = oneLine(loaded.name);
  host.say(`${name}: ${done}`);
  for (const note of notes) host.say(`${name}: ${oneLine(note)}`);
  for (const finding of brings) host.say(`${name}: brings: ${oneLine(finding)}`);
  for (const refusal of refusals) host.say(`${name}: refused: ${oneLine(refusal)}`);
  if (refusals.length > 0) host.endWith(EXIT_CODES.findings);
}

/** What came of the command. */
interface Work {
  /** Undefined where it is written already. */
  readonly text: string | undefined;
  readonly planned: readonly object[];
  readonly done: string;
  readonly refusals: readonly string[];
  /** What `tombolo check` will say of the result and did not say before. */
  readonly brings: readonly string[];
  /** Islands that were cut away instead, where that was asked for. */
  readonly cutAway?: readonly object[];
  readonly notes?: readonly string[];
}

async function workOn(loaded: LoadedReport, options: BridgeOptions): Promise<Work> {
  const { at, out } = options;
  if (at) return atPlace(loaded, { ...options, at });
  if (options.twoSheets) return asTwoSheets(loaded, options, out);
  const plan = planFileOf(loaded, options);
  return plan === undefined ? everyIsland(loaded, options) : withPlan(loaded, await readPlan(plan), options);
}

/** The plan that is asked for, or that the configuration names; whoever asks for other bridges gets those. */
function planFileOf({ config }: LoadedReport, options: BridgeOptions): string | undefined {
  const { plan } = config.config.bridges;
  const asksForOthers =
    options.style !== undefined || options.cutCovered || options.layer !== undefined || options.plan;
  return options.with ?? (plan === undefined || asksForOthers ? undefined : pathIn(config, plan));
}

function withPlan({ report }: LoadedReport, plan: readonly KeptBridge[], options: BridgeOptions): Work {
  const kept = keepBridges(report, plan);
  if (typeof kept === 'string') {
    return { text: report.text, planned: [], done: 'no bridge added', refusals: [kept], brings: [] };
  }
  return {
    text: kept.text,
    planned: kept.plan.map((bridge) => plainBridge(report, bridge)),
    refusals: kept.refusals.map(({ message }) => message),
    brings: kept.brings.map(({ message }) => message),
    done: `${count(kept.bridges, 'bridge')} of the plan ${options.plan ? 'planned' : 'added'}`,
    notes: [...kept.moved, ...unnamedNote(kept.unnamed)],
  };
}

async function asTwoSheets(loaded: LoadedReport, options: BridgeOptions, out: string | undefined): Promise<Work> {
  const choice = choiceOf(options);
  const work = out === undefined ? twoLayers(loaded, choice) : await writeTwoFiles(loaded, choice, out);
  const { text, layers, done, refusals, brings } = work;
  const planned = layers.flatMap(({ first, second }) => [
    ...first.map((bridge) => ({ sheet: 1, ...plainBridge(loaded.report, bridge) })),
    ...second.map((bridge) => ({ sheet: 2, ...plainBridge(loaded.report, bridge) })),
  ]);
  return { text, planned, done, refusals, brings: brings.map(({ message }) => message) };
}

function choiceOf({ layer, widthOfBridge, bridge }: BridgeOptions): { layer?: string; bridgeWidth?: number } {
  const width = widthOfBridge ?? bridge;
  return { ...(layer !== undefined && { layer }), ...(width !== undefined && { bridgeWidth: width }) };
}

function everyIsland({ report }: LoadedReport, options: BridgeOptions): Work {
  const cut = options.cutCovered ? cutCovered(report, options.layer) : undefined;
  const { text, bridges, plan, refusals, brings } = bridgeIslands(cut?.report ?? report, {
    ...choiceOf(options),
    ...(options.style !== undefined && { style: options.style }),
  });
  const done = options.plan ? 'planned' : 'added';
  return {
    text,
    planned: plan.map((bridge) => plainBridge(report, bridge)),
    refusals: refusals.map(({ message }) => message),
    brings: [...(cut?.brings ?? []), ...brings.map(({ message }) => message)],
    done: [cut?.done, bridges > 0 ? `${count(bridges, 'bridge')} ${done}` : `no bridge ${done}`]
      .filter(Boolean)
      .join('; '),
    notes: cut ? cut.notes : uncutNotes(report, options.layer),
    ...(cut && { cutAway: cut.cutAway }),
  };
}

function atPlace({ report, name }: LoadedReport, options: BridgeOptions & { readonly at: Point }): Work {
  const width = options.widthOfBridge ?? options.bridge;
  const mend = fixAtPlace(report, name, { ...options, ...(width !== undefined && { width }) });
  if (isRefusal(mend)) {
    return { text: report.text, planned: [], done: 'nothing changed', refusals: [whyNot(mend)], brings: [] };
  }
  return {
    text: applyEdits(report.text, mend.edits),
    planned: (mend.bridges ?? []).map(plainBridgePreview),
    done: mend.title,
    refusals: [],
    // Its title says so.
    brings: [],
  };
}

function unnamedNote(islands: number): string[] {
  return islands === 0
    ? []
    : [`${count(islands, 'island')} not in the plan: bridge without --with, and make a new plan`];
}
