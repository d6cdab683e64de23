/**
 * The engine's public face: text and settings to a report, a report and a choice to edits. It needs neither an editor
 * nor Node.js, runs synchronously, and never throws for what is in the text.
 */
import { parseMarkup } from '../markup/parse';

export { check } from './check/check-file';
export { checkProject } from './check/check-project';
export { projectFiles } from './check/project-layers';
export { describeShapeAt, type ShapeDescription } from './queries/describe-shape';
export { findingById } from './queries/find-finding';
export { addRegistrationMarks } from './fixes/registration-marks';
export { outlineOf, type OutlineItem } from './queries/document-outline';
export { unusedAcceptances } from './check/unused-acceptances';
export { baselineOf } from './check/baseline';
export { layerProblems } from './check/layer-problems';
export { fixesFor } from './fixes/index';
export { bridgeAt, bridgeAtCaret } from './fixes/bridge-at';
export { bridgeAtOffset, bridgeStandingAt, changeBridge, changesFor, type BridgeChange } from './fixes/change-bridge';
export { bridgeIslands, type BridgeChoice, type BridgeOutcome, type PlannedBridge } from './fixes/bridge-islands';
export { readConfig, type ConfigProblem, type ConfigReading } from '../config/read';
export { parseLength } from '../config/length';
export { applyEdits, type Span, type TextEdit } from '../text/text';
export type { FileEdits, LayerFault, Fix, ProjectReport, Report, Settings } from '../report/report';
export type { Finding, Measure, Related } from '../checks/finding';
export { Stopped, type StopReason } from '../geometry/base/checkpoint';
export type { FindingId, ReportedFinding } from '../report/finding-id';
export type { LayerId } from '../sheet/layer/layer-id';
export type { CheckId, Severity } from '../config/check-id';
export type { Config, Reading } from '../config/types';
export type { Layer, Piece, Sheet } from '../sheet/types';

/** Whether the text itself asks to be checked: its root carries a `data-tombolo-*` attribute. */
export function isStencil(text: string): boolean {
  const { root } = parseMarkup(text);
  return root?.attributes.some(({ name }) => name.startsWith('data-tombolo-')) ?? false;
}
