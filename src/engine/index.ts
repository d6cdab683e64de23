/**
 * The engine's public face: text and settings to a report, a report and a choice to edits. It needs neither an editor
 * nor Node.js, runs synchronously, and never throws for what is in the text.
 */
export { Stopped, type StopReason } from '../base/checkpoint';
export type { Finding, Measure, Related } from '../checks/finding';
export type { CheckId, Severity } from '../config/check-id';
export type { ConfigProblem, ConfigReading } from '../config/read';
export type { BaselineEntry, Config, Reading } from '../config/types';
export { parseLength } from '../config/values';
export {
  type ContourKind,
  CUT_FORMATS,
  type CutContour,
  type CutFormat,
  type CutOptions,
  type CutSheet,
  cutFile,
  cutFileName,
  cutOnBeds,
  cutStack,
  cutStackInTiles,
  cuttingCautions,
  type ErrorsLeft,
  errorsLeft,
  isCutFile,
  type Job,
  jobFiles,
  jobOf,
  mirrored,
  motionOf,
  type PlannedCut,
  planOf,
  type Repeat,
  type RepeatPlan,
  repeatPlan,
  STRIP_WIDTHS,
  sheetTime,
  type TileSize,
  testStrip,
} from '../cut/index';
export type { StandingBridge } from '../edits/plan/standing/detect';
export type { FindingId, ReportedFinding } from '../report/finding-id';
export type { BroughtFinding, Fix, FixCandidate, FixId, FixRefusal, FixScope } from '../report/fix';
export type { Generator, GeneratorMarks, GeneratorPlace } from '../report/generator';
export type { FileEdits, LayerFault, ProjectReport, Report, Settings } from '../report/report';
export type { LayerId } from '../sheet/layer/layer-id';
export type { Layer, Piece, Sheet } from '../sheet/types';
export type { SprayOrder } from '../stack/order/index';
export { applyEdits, type Span, type TextEdit } from '../text/text';
export type { CacheCount } from './cache/cache';
export { baselineOf } from './check/baseline';
export { check } from './check/check-file';
export { checkProject } from './check/check-project';
export {
  acceptanceProblems,
  type IdleAcceptance,
  idleAcceptances,
  layerProblems,
  unusedAcceptances,
} from './check/config-problems';
export { readConfig } from './check/known-checks';
export { projectFiles } from './check/project-layers';
export { createEngine, type Engine } from './engine';
export { BRIDGE_ISLAND_HERE, bridgeAt, bridgeAtCaret, edgeAtCaret } from './fixes/bridge-at';
export { type BridgeChoice, type BridgeOutcome, bridgeIslands, type PlannedBridge } from './fixes/bridge-islands';
export {
  type BridgeChange,
  changeBridge,
  changesFor,
  fallsWithout,
  titleOfChange,
} from './fixes/change-bridge';
export { cutAwayHeld, type HeldHole, heldUnderPaint, titleOfHeld } from './fixes/covered/held';
export { type CoveredOutcome, type CutAway, coveredIslands, cutCoveredIslands } from './fixes/covered/islands';
export { type FixAllChoice, type FixAllOutcome, fixAll } from './fixes/fix-all';
export {
  candidatesFor,
  type FixesOfFinding,
  fixesFor,
  offerOrder,
  proveFix,
  sharedChange,
  whyBeyondMending,
} from './fixes/index';
export { type IslandName, type KeptBridge, type KeptOutcome, keepBridges, keptBridgeOf } from './fixes/kept/index';
export { addRegistrationMarks } from './fixes/kinds/register-stack';
export { layerBridges, layerPlanFix, sketchedBridges } from './fixes/layer-plan/layer-bridges';
export {
  type BridgeMove,
  type MovedBridge,
  type MovedTogether,
  movedPlanFix,
  movedTogether,
} from './fixes/layer-plan/moved-bridges';
export { type OrderEdits, reorderStack } from './fixes/order/reorder-stack';
export { type BridgeTarget, gapUnder, ghostOf } from './fixes/plan-change';
export { askedSizeEdits } from './fixes/root-attributes';
export { bridgeAtOffset, bridgeStandingAt, bridgesOf, lengthOf } from './fixes/standing-bridges';
export { bridgeAsTwoFiles, bridgeAsTwoLayers, type TwoSheetsOutcome } from './fixes/two-sheets/whole-file';
export { wrapChange, wrapPaths } from './fixes/wrap-paths';
export {
  type DrawnDescription,
  describeDrawn,
  describeShapeAt,
  type ShapeDescription,
} from './queries/describe-shape';
export { type OutlineItem, outlineOf } from './queries/document-outline';
export { findingById } from './queries/find-finding';
export { FROM_ATTRIBUTE, type Generators, generatorsIn, generatorsOf } from './queries/generators';
export { sprayOrder } from './queries/spray-order';
export { isPicture, isStencil } from './stencil';
export { svg } from './svg-tag';
