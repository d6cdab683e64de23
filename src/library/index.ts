/**
 * Checks stencils for laser and knife as they are drawn in SVG, mends them, and writes what the cutter takes.
 *
 * All lengths are millimetres on the sheet unless a text with its unit is given; places count from the sheet's upper left
 * corner, y down. Everything runs where it is called, in a browser, a worker or Node.js, without network and files. What cannot be
 * done is thrown as a {@link StencilError}; what is wrong with a drawing is among the findings of its report.
 *
 * @packageDocumentation
 */
export {
  applyPlan,
  asTwoSheets,
  type Bridge,
  type BridgeOptions,
  type BridgeOutcome,
  type BridgePlan,
  type BridgeStyle,
  bridgeIslands,
  type PlanOutcome,
  type TwoSheetsOutcome,
} from './bridges';
export {
  type CheckOptions,
  check,
  checkEach,
  checkProject,
  type EachOptions,
  type ProjectReport,
  type Texts,
} from './check';
export {
  CHECKS,
  type CheckDescription,
  type Config,
  DEFAULT_CONFIG,
  MATERIALS,
  type Material,
  readConfig,
} from './config';
export {
  CUT_FORMATS,
  type CutFormat,
  type CutOptions,
  type CutSheet,
  cutFile,
  cutFileName,
  cutStack,
  cuttingCautions,
  jobFiles,
  type RegisterHole,
  type RepeatPlan,
  repeatPlan,
  testStrip,
} from './cutting';
export { createEngine, type StencilEngine } from './engine';
export { type Length, type Signal, StencilError } from './failure';
export { type Fix, type FixAllOptions, type FixAllOutcome, type FixesOfFinding, fixAll, fixesFor } from './fixes';
export { FORMATS, type FormatOptions, formatReports, type ReportFormat } from './formats';
export { type SprayOrder, sprayOrder } from './order';
export { type PictureOptions, pictureSvg } from './pictures';
export { type CheckedLayer, type Finding, StencilReport, type TextRange } from './report';
export { applyEdits, isStencil, parseLength, svg, type TextEdit } from './text';
