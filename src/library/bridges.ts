/** Bridges: for every island, kept from an earlier build, or as two sheets that cover each other's. */
import { BRIDGE_STYLES, type BridgeStyle as Style } from '../config/bridge-style';
import { bridgeIslands as bridge, type BridgeOutcome as Outcome } from '../engine/fixes/bridge-islands';
import { keepBridges } from '../engine/fixes/kept/index';
import { bridgeAsTwoLayers } from '../engine/fixes/two-sheets/whole-file';
import { keptBridges, type PlainBridge, plainBridge } from '../format/bridge-plan';
import type { Report } from '../report/report';
import {
  callback,
  knownLayer,
  type Length,
  oneOf,
  positiveLength,
  readOptions,
  type Signal,
  StencilError,
  signalOption,
  whileWanted,
  words,
} from './failure';
import { engineReport, type StencilReport } from './report';
import type { TextEdit } from './text';

/**
 * How bridges are to look; `auto` is as the drawing asks for.
 *
 * @example
 * ```js
 * bridgeIslands(report, { style: 'upright' });
 * ```
 */
export type BridgeStyle = Style;

/**
 * Which islands get bridges, and which. Widths in mm.
 *
 * @example
 * ```js
 * bridgeIslands(report, { layer: 'reeds', width: '1.2mm', style: 'level' });
 * ```
 */
export interface BridgeOptions {
  /** Only the islands of the layer of this name. */
  readonly layer?: string;
  /** How wide a bridge is as cut; else the least that the material bears. mm, or a text with its unit. */
  readonly width?: Length;
  /** How bridges are to look; else as the settings say. */
  readonly style?: BridgeStyle;
  /** Ends the work where nobody waits for it any more. */
  readonly signal?: Signal;
  /** Is told how many layers are done, of how many. */
  readonly progress?: (done: number, of: number) => void;
}

/**
 * A bridge that was put in. Places in mm on the sheet, from its upper left corner; width and length in mm, areas in mm².
 *
 * @example
 * ```js
 * for (const { layer, from, to, width } of plan.bridges) console.log(layer, from.x, from.y, to.x, to.y, width); // mm
 * ```
 */
export type Bridge = PlainBridge;

/**
 * Bridges to keep for the next build of a drawing: what `tombolo bridge --plan` prints. Places and widths in mm.
 *
 * @example
 * ```js
 * writeFileSync('bridges.json', JSON.stringify(bridgeIslands(report).plan));
 * ```
 */
export interface BridgePlan {
  /** Of this form: 1. */
  readonly version: 1;
  /** In the order in which they were put in. */
  readonly bridges: readonly Bridge[];
}

/**
 * What came of bridging. What could not be done is told here and not thrown: the rest is done all the same. Widths in mm.
 *
 * @example
 * ```js
 * const { text, bridges, refusals } = bridgeIslands(report);
 * if (refusals.length === 0) writeFileSync('heron.svg', text);
 * ```
 */
export interface BridgeOutcome {
  /** The drawing with the bridges in it. */
  readonly text: string;
  /** The same change, as edits of the text that was checked. */
  readonly edits: readonly TextEdit[];
  /** How many bridges were put in. */
  readonly bridges: number;
  /** The bridges themselves. */
  readonly plan: BridgePlan;
  /** What could not be done, a sentence each. */
  readonly refusals: readonly { readonly message: string }[];
  /** Findings that come of it, a sentence each. */
  readonly brings: readonly { readonly check: string; readonly message: string }[];
}

/**
 * Gives every island of the drawing the bridges that it needs, each proven by checking the changed text.
 *
 * @param report of the drawing, from `check`
 * @param options widths in mm or with their unit
 * @throws StencilError where an option is wrong, or no layer has the name; the signal's reason where it ends the work
 * @example
 * ```js
 * import { bridgeIslands, check } from 'tombolo-stencil';
 *
 * const { text, refusals } = bridgeIslands(check(svgText, { width: 148 }), { width: '1.2mm' });
 * ```
 */
export function bridgeIslands(report: StencilReport, options: BridgeOptions = {}): BridgeOutcome {
  const asker = 'bridgeIslands()';
  const source = engineReport(report, asker);
  const read = readOptions<BridgeOptions>(options, asker, {
    layer: words,
    width: positiveLength,
    style: oneOf(BRIDGE_STYLES),
    signal: signalOption,
    progress: callback(),
  });
  const { signal, width, layer, ...rest } = read as typeof read & { width?: number };
  knownLayer(layer, layersOf(source));
  const choice = { ...rest, ...(layer !== undefined && { layer }), ...(width !== undefined && { bridgeWidth: width }) };
  return whileWanted(signal, () => outcomeOf(source, bridge(source, choice)));
}

/**
 * What came of putting in the bridges of a plan. Places in mm.
 *
 * @example
 * ```js
 * const { text, moved } = applyPlan(report, plan);
 * for (const sentence of moved) console.log(sentence);
 * ```
 */
export interface PlanOutcome extends BridgeOutcome {
  /** Bridges that stand elsewhere than the plan has them, a sentence for each island. */
  readonly moved: readonly string[];
  /** How many islands are loose that the plan does not name. */
  readonly unnamed: number;
}

/**
 * Puts the bridges of a plan into the next build of its drawing; where shapes have moved or grown, the bridges move
 * along, and a little aside where something is in their way.
 *
 * @param report of the new build, from `check`
 * @param plan what {@link bridgeIslands} gave as `plan`, or `tombolo bridge --plan` printed; places in mm
 * @throws StencilError where it is no plan, or one for another drawing
 * @example
 * ```js
 * import { applyPlan, check } from 'tombolo-stencil';
 *
 * const { text, refusals } = applyPlan(check(nextBuild), JSON.parse(readFileSync('bridges.json', 'utf8')));
 * ```
 */
export function applyPlan(
  report: StencilReport,
  plan: BridgePlan,
  options: { readonly signal?: Signal } = {},
): PlanOutcome {
  const source = engineReport(report, 'applyPlan()');
  const { signal } = readOptions<{ signal?: Signal }>(options, 'applyPlan()', { signal: signalOption });
  const kept = keptBridges(plan);
  if (!kept) throw new StencilError('This is no plan of bridges: bridgeIslands() gives one as "plan".');
  const outcome = whileWanted(signal, () => keepBridges(source, kept));
  if (typeof outcome === 'string') throw new StencilError(outcome);
  return { ...outcomeOf(source, outcome), moved: outcome.moved, unnamed: outcome.unnamed };
}

/**
 * What came of making two sheets of a layer. Places in mm.
 *
 * @example
 * ```js
 * const { text, layers } = asTwoSheets(report);
 * console.log(`two sheets each: ${layers.join(', ')}`);
 * ```
 */
export interface TwoSheetsOutcome extends Pick<BridgeOutcome, 'text' | 'refusals' | 'brings'> {
  /** The names of the layers that are two sheets now. */
  readonly layers: readonly string[];
}

/**
 * Makes two sheets in one paint of each layer that has islands: each covers the bridges of the other.
 *
 * @param report of the drawing, from `check`
 * @param options `layer`: only the layer of this name; `width` of a bridge as cut, mm or a text with its unit
 * @throws StencilError where an option is wrong, or no layer has the name
 * @example
 * ```js
 * import { asTwoSheets, check } from 'tombolo-stencil';
 *
 * const { text } = asTwoSheets(check(numerals, { width: '90mm' }), { width: '1.5mm' });
 * ```
 */
export function asTwoSheets(
  report: StencilReport,
  options: Pick<BridgeOptions, 'layer' | 'width' | 'signal'> = {},
): TwoSheetsOutcome {
  const asker = 'asTwoSheets()';
  const source = engineReport(report, asker);
  const read = readOptions<typeof options>(options, asker, {
    layer: words,
    width: positiveLength,
    signal: signalOption,
  });
  const { layer, width, signal } = read as typeof read & { width?: number };
  knownLayer(layer, layersOf(source));
  const choice = { ...(layer !== undefined && { layer }), ...(width !== undefined && { bridgeWidth: width }) };
  const { text, layers, refusals, brings } = whileWanted(signal, () => bridgeAsTwoLayers(source, choice));
  return {
    text,
    layers: layers.map(({ sheet }) => sheet.layer.name),
    refusals: refusals.map((message) => ({ message })),
    brings: brings.map(({ check, message }) => ({ check, message })),
  };
}

function layersOf({ sheets }: Report): string[] {
  return sheets.map(({ layer }) => layer.name);
}

function outcomeOf(report: Report, { text, edits, bridges, plan, refusals, brings }: Outcome): BridgeOutcome {
  return {
    text,
    edits,
    bridges,
    plan: { version: 1, bridges: plan.map((each) => plainBridge(report, each)) },
    refusals: refusals.map(({ message }) => ({ message })),
    brings: brings.map(({ check, message }) => ({ check, message })),
  };
}
