/** Text and settings to a report: the whole line through markup, drawing, sheets and checks. */
import { ALL_CHECKS } from '../checks/all';
import type { Stencil } from '../checks/check';
import type { Finding } from '../checks/finding';
import { readDrawing } from '../drawing/read-drawing';
import { parseMarkup } from '../markup/parse';
import type { Report, Settings } from '../report';
import { DEFAULT_CONFIG, type Config } from '../sheet/config';
import { groupShapes } from '../sheet/layers';
import { limitsOf } from '../sheet/limits';
import { measureSheet } from '../sheet/measure-sheet';
import type { Sheet } from '../sheet/sheet';
import { SourceIndex } from '../sheet/source-index';
import { stackOfFile } from '../sheet/stack';
import { applyAcceptances } from './acceptances';
import { capFindings, inOrder } from './order';

/** Long enough for any sheet that a person draws; a run that takes longer stops between its steps. */
const DEFAULT_BUDGET = 20_000;

/**
 * Checks one file. Any text gives a report: what cannot be read is among its findings.
 * @param text the SVG, as the artist wrote it
 * @param earlier a report on an earlier state of the text; layers that still draw the same are not measured again
 */
export function check(text: string, settings: Settings = {}, earlier?: Report): Report {
  const start = performance.now();
  const late = () => performance.now() - start > (settings.budget ?? DEFAULT_BUDGET);
  const config = configOf(settings);
  const document = parseMarkup(text);
  const drawing = readDrawing(document, sizeOf(config));
  const groups = groupShapes(drawing, settings.oneLayer);
  const known = earlier && sameConfig(configOf(earlier.settings), config) ? earlier.sheets : [];
  const skipped: string[] = [];
  const sheets: Sheet[] = [];
  for (const group of groups) {
    if (late()) skipped.push(`layer "${group.name}"`);
    else sheets.push(measureSheet(drawing, group, config, known.find(({ layer }) => layer.name === group.name)));
  }
  const stencil: Stencil = {
    drawing, config, limits: limitsOf(config), sheets, sources: sourcesOnce(), file: '', stack: stackOfFile(sheets),
  };
  const found = [...runChecks(stencil, late, skipped), ...unfinished(skipped)];
  const complete = inOrder(applyAcceptances(document, withSeverities(found, config)));
  const findings = capFindings(complete);
  return { text, settings, drawing, sheets, findings, complete, elapsed: performance.now() - start };
}

/** The configuration with the settings' overrides worked in. */
export function configOf({ config = DEFAULT_CONFIG, width, height, kerf }: Settings): Config {
  const sized = width === undefined && height === undefined ? config : { ...config, width, height };
  return kerf === undefined ? sized : { ...sized, kerf, compensated: false };
}

/** Configurations are plain data, always with the same keys in the same order. */
function sameConfig(a: Config, b: Config): boolean {
  return a === b || JSON.stringify(a) === JSON.stringify(b);
}

function sizeOf({ width, height }: Config): { width?: number; height?: number } {
  return { ...(width === undefined ? {} : { width }), ...(height === undefined ? {} : { height }) };
}

function* runChecks(stencil: Stencil, late: () => boolean, skipped: string[]): Iterable<Finding> {
  for (const each of ALL_CHECKS) {
    if (stencil.config.checks[each.id] === 'off') continue;
    if (late()) skipped.push(each.id);
    else yield* each.run(stencil);
  }
}

function withSeverities(findings: readonly Finding[], { checks }: Config): Finding[] {
  return findings.map((finding) => {
    const severity = checks[finding.check];
    return severity && severity !== 'off' ? { ...finding, severity } : finding;
  });
}

function unfinished(skipped: readonly string[]): Finding[] {
  if (skipped.length === 0) return [];
  return [{
    check: 'unfinished',
    severity: 'warning',
    message: `The time for this run was over before these were done: ${skipped.join(', ')}. ` +
      'Nothing is known of them; split the file, or check it on the command line.',
    span: { from: 0, to: 0 },
    related: [],
  }];
}

/** One index for each sheet, built when a place is first asked for. */
function sourcesOnce(): Stencil['sources'] {
  const built = new WeakMap<Sheet, SourceIndex>();
  return (sheet) => {
    const known = built.get(sheet);
    if (known) return known;
    const index = new SourceIndex(sheet.layer.shapes, sheet.layer.reading === 'outlines');
    built.set(sheet, index);
    return index;
  };
}
