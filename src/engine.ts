/**
 * The engine's public face: text and settings to a report, a report and a choice to edits. It needs neither an editor
 * nor Node.js, runs synchronously, and never throws for what is in the text.
 */
import { parseMarkup } from './markup/parse';

export { check } from './engine/check';
export { checkProject } from './engine/check-project';
export { projectFiles } from './engine/project-layers';
export { describeShapeAt, type ShapeDescription } from './engine/describe-shape';
export { markRegister } from './engine/mark-register';
export { outlineOf, type OutlineItem } from './engine/outline';
export { acceptProblems } from './engine/accept-problems';
export { baselineOf } from './engine/let-pass';
export { layerProblems } from './engine/layer-problems';
export { mendsFor } from './engine/mends';
export { bridgeAt, bridgeAtCaret } from './engine/bridge-at';
export { bridgeAtOffset, bridgeStandingAt, changeBridge, changesFor, type BridgeChange } from './engine/change-bridge';
export { bridgeIslands, type BridgeChoice, type BridgeOutcome, type PlannedBridge } from './engine/bridge-islands';
export { readConfig, type ConfigProblem, type ConfigReading } from './sheet/read-config';
export { parseLength } from './sheet/length';
export { applyEdits, type Span, type TextEdit } from './text';
export type { FileEdits, LayerFault, Mend, ProjectReport, Report, Settings } from './report';
export type { Finding, Measure, Related } from './checks/finding';
export type { CheckId, Severity } from './sheet/check-id';
export type { Config } from './sheet/config';
export type { Layer, Piece, Reading, Sheet } from './sheet/sheet';

/** Whether the text itself asks to be checked: its root carries a `data-tombolo-*` attribute. */
export function isStencil(text: string): boolean {
  const { root } = parseMarkup(text);
  return root?.attributes.some(({ name }) => name.startsWith('data-tombolo-')) ?? false;
}
