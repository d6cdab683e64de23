/** What the bench asks, by the names that the editor asks it by. */
import { wrapPaths } from '../../engine/index';
import { CUT_FIGURES, CUT_FILES, CUT_ORDER, type CutFilesParams, JOB_FILES } from '../../protocol/cutting';
import * as protocol from '../../protocol/index';
import {
  LAYER_PLAN,
  LAYER_SKETCH,
  type LayerPlanParams,
  type LayerSketchParams,
  PLAN_GHOST,
  type PlanGhostParams,
} from '../../protocol/layer-plan';
import { PART, PART_AT, type PartAtParams, type PartParams } from '../../protocol/parts';
import { DRAWN_AT, DRAWN_BY, type DrawnAtPaths, type DrawnByParams, KEPT_PLAN } from '../../protocol/programs';
import {
  BRIDGE_GHOST,
  CHANGE_BRIDGE,
  type ChangeBridgeParams,
  STANDING_BRIDGES,
} from '../../protocol/standing-bridges';
import {
  BEST_ORDER,
  type LayerParams,
  NECKS,
  REORDER,
  type ReorderParams,
  SLIP,
  type SlipParams,
  SWEEP,
} from '../../protocol/views';
import type { CheckedDocument } from '../documents/checked-document';
import type { DocumentFixes } from '../fixes/document-fixes';
import { beginningFor } from './begin';
import { bridged } from './bridge-all';
import { bridgeOfferAt, bridgePlan } from './bridge-requests';
import { CutRequests } from './cut-requests';
import { drawnAtLine } from './drawn-at';
import { FindingNumbers } from './finding-numbers';
import { keptPlan } from './kept-plan';
import { layerPlan, layerSketch, planGhost } from './layer-plan-requests';
import { PartRequests } from './part-requests';
import { previewStackOf } from './preview-model';
import { bestOrder, type OpenConfig, reordering } from './reordering';
import { shapeAt } from './shape-at';
import { necksOfLayer, SlipRequests } from './slip-requests';
import { bridgeGhost, changedBridge, standingBridges } from './standing-bridge-requests';

/** Plain data, or undefined where there is nothing to say. */
type Answer = object | null | undefined;

export class BenchRequests {
  private readonly parts = new PartRequests();
  private readonly slips = new SlipRequests();
  private readonly cuts = new CutRequests();
  /** By stack: the project's, or the file's own. */
  private readonly numbers = new Map<string, FindingNumbers>();

  private readonly fixesOf: (checked: CheckedDocument) => DocumentFixes;

  /** @param fixesOf gives what is offered in a document of the stack */
  constructor(fixesOf: (checked: CheckedDocument) => DocumentFixes) {
    this.fixesOf = fixesOf;
  }

  /**
   * @param params as the protocol has them for the method
   * @param openConfig the `tombolo.json` in force, where it is open in the editor
   */
  answer(checked: CheckedDocument, method: string, params: object, openConfig?: OpenConfig): Answer {
    switch (method) {
      case protocol.STACK:
        return previewStackOf(checked, this.numbersOf(checked));
      case protocol.SHAPE_AT:
        return shapeAt(checked.report, (params as protocol.PlaceParams).offset);
      case protocol.BEGIN:
        return beginningFor(checked, (params as protocol.BeginParams).width);
      case protocol.BRIDGE_ISLANDS:
        return bridged(checked, params as protocol.BridgeIslandsParams);
      case protocol.WRAP_PATHS:
        return wrapped(checked);
      case protocol.BRIDGE_AT:
        return bridgeOfferAt(checked, params as protocol.BridgeAtParams);
      case protocol.BRIDGE_PLAN:
        return bridgePlan(checked, params as protocol.BridgePlanParams, this.fixesOf);
      case LAYER_SKETCH:
        return layerSketch(checked, params as LayerSketchParams);
      case LAYER_PLAN:
        return layerPlan(checked, params as LayerPlanParams, openConfig);
      case PLAN_GHOST:
        return planGhost(checked, params as PlanGhostParams);
      case STANDING_BRIDGES:
        return standingBridges(checked);
      case BRIDGE_GHOST:
        return bridgeGhost(checked, params as ChangeBridgeParams);
      case CHANGE_BRIDGE:
        return changedBridge(checked, params as ChangeBridgeParams);
      case PART_AT:
        return this.parts.partAt(checked, params as PartAtParams);
      case PART:
        return this.parts.part(checked, params as PartParams);
      case NECKS:
        return necksOfLayer(checked, params as LayerParams);
      case SLIP:
        return this.slips.bareAfter(checked, params as SlipParams);
      case SWEEP:
        return this.slips.sweep(checked, params as LayerParams);
      case REORDER:
        return reordering(checked, params as ReorderParams, openConfig);
      case KEPT_PLAN:
        return keptPlan(checked);
      case DRAWN_AT:
        return drawnAtLine(checked, params as DrawnAtPaths);
      case DRAWN_BY:
        return checked.generators.of(params as DrawnByParams);
      case BEST_ORDER:
        return bestOrder(checked, openConfig);
      case CUT_FIGURES:
        return this.cuts.figures(checked);
      case CUT_ORDER:
        return this.cuts.order(checked, params as LayerParams);
      case CUT_FILES:
        return this.cuts.files(checked, params as CutFilesParams);
      case JOB_FILES:
        return this.cuts.job(checked);
      default:
        throw new Error(`There is no question "${method}".`);
    }
  }

  private numbersOf({ uri, project }: CheckedDocument): FindingNumbers {
    const key = project?.config.uri ?? uri;
    const known = this.numbers.get(key) ?? new FindingNumbers();
    this.numbers.set(key, known);
    return known;
  }
}

function wrapped({ report, version }: CheckedDocument): protocol.VersionedEdits {
  return { version, edits: wrapPaths(report.drawing.document) };
}
