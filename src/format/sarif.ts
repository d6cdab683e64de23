/** SARIF 2.1.0 (OASIS standard, "Static Analysis Results Interchange Format"), for code hosts and their reviews. */

import type {
  ArtifactChange,
  ArtifactLocation,
  Fix,
  Invocation,
  Location,
  Log,
  Notification,
  PhysicalLocation,
  Region,
  ReportingDescriptor,
  Result,
} from 'sarif';
import { version } from '../../package.json';
import type { Severity } from '../checks/finding';
import { escapeMarkdown } from '../text/markdown';
import type { Wording } from '../text/wording';
import type { CheckedFile, PlacedChange, PlacedFinding, PlacedFix } from './checked-file';
import { fingerprintsOf } from './fingerprints';
import type { Format } from './format';
import { jsonText } from './json-text';
import type { Range } from './ranges';
import { RULES, type Rule } from './rules';
import { sarifText } from './sarif-text';
import { tidyMeasure, tidyPoint } from './tidy';

export const formatSarif: Format = ({ files, failures, folder, atGenerator = false }) => {
  const locationOf = locator(folder);
  const log: Log = {
    $schema: 'https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json',
    version: '2.1.0',
    runs: [
      {
        tool: { driver: { name: 'Tombolo', version, semanticVersion: version, rules: RULES.map(ruleOf) } },
        columnKind: 'utf16CodeUnits',
        ...(folder !== undefined && { originalUriBaseIds: { [WORKING_FOLDER]: { uri: folder } } }),
        invocations: [invocationOf(failures)],
        artifacts: files.map(({ path }) => ({ location: locationOf(path) })),
        results: files.flatMap((file) => resultsOf(file, atGenerator, locationOf)),
      },
    ],
  };
  return jsonText(log);
};

type Lines = Pick<Range, 'start' | 'end'>;

const LEVELS: Readonly<Record<Severity, Result.level>> = {
  error: 'error',
  warning: 'warning',
  info: 'note',
  hint: 'note',
};

/** What relative paths start from (section 3.14.14). */
const WORKING_FOLDER = 'SRCROOT';

function ruleOf({ id, summary, why, help, page }: Rule): ReportingDescriptor {
  return {
    id,
    shortDescription: { text: summary },
    fullDescription: { text: why },
    help: { text: help },
    ...(page !== undefined && { helpUri: page }),
  };
}

/** A run in which a file could not be checked does not pass for one that found nothing (section 3.20.14). */
function invocationOf(failures: readonly string[]): Invocation {
  const told = failures.map((text): Notification => ({ level: 'error', message: { text: sarifText(text) } }));
  return { executionSuccessful: told.length === 0, ...(told.length > 0 && { toolExecutionNotifications: told }) };
}

function resultsOf(file: CheckedFile, atGenerator: boolean, locationOf: Locate): Result[] {
  const prints = fingerprintsOf(file);
  return file.findings.map((finding, index) => ({
    ...resultOf(file, finding, atGenerator, locationOf),
    partialFingerprints: { 'checkLayerPlace/v1': prints[index] ?? '' },
  }));
}

interface Told {
  readonly message: string;
  readonly place: PhysicalLocation;
}

function resultOf({ path }: CheckedFile, finding: PlacedFinding, atGenerator: boolean, locationOf: Locate): Result {
  const { check, severity, layer, at, measure, mends } = finding;
  const [own, ...related] = placesOf(path, finding, atGenerator, locationOf);
  const relatedLocations = related.map(
    ({ place, message }, index): Location => ({
      id: index,
      physicalLocation: place,
      message: { text: sarifText(message) },
    }),
  );
  return {
    ruleId: check,
    ruleIndex: RULES.findIndex((rule) => rule.id === check),
    level: LEVELS[severity],
    message: messageOf(finding),
    locations: own ? [{ physicalLocation: own.place }] : [],
    ...(related.length > 0 && { relatedLocations }),
    ...(mends.length > 0 && { fixes: mends.map((mend) => fixOf(path, mend, locationOf)) }),
    properties: { layer, at: tidyPoint(at), measure: tidyMeasure(measure) },
  };
}

/** The finding's own place first. */
function placesOf(
  path: string,
  { range, related, from }: PlacedFinding,
  atGenerator: boolean,
  locationOf: Locate,
): Told[] {
  const placeOf = (file: string, lines: Lines): PhysicalLocation => ({
    artifactLocation: locationOf(file),
    region: regionOf(lines),
  });
  const drawing = { message: 'in the drawing', place: placeOf(path, range) };
  const others = related.map((other) => ({ message: other.message, place: placeOf(other.path ?? path, other.range) }));
  if (!from) return [drawing, ...others];
  const program = { message: from.drawn, place: placeOf(from.path, from.range) };
  const callers = from.callers.map((caller) => ({ message: 'called here', place: placeOf(caller.path, caller.range) }));
  return [...(atGenerator ? [program, drawing] : [drawing, program]), ...callers, ...others];
}

/** Viewers that show no Markdown show the line alone. */
function messageOf({ message, detail }: Wording): Result['message'] {
  const text = sarifText(message);
  if (detail === undefined) return { text };
  return { text, markdown: `${escapeMarkdown(message)}\n\n${escapeMarkdown(detail)}` };
}

function fixOf(path: string, { title, edits, others = [] }: PlacedFix, locationOf: Locate): Fix {
  const changes = [{ path, edits }, ...others].map((change) => changeOf(change, locationOf));
  return { description: { text: sarifText(title) }, artifactChanges: changes };
}

function changeOf({ path, edits }: PlacedChange, locationOf: Locate): ArtifactChange {
  const replacements = edits.map(({ range, text }) => ({ deletedRegion: regionOf(range), insertedContent: { text } }));
  return { artifactLocation: locationOf(path), replacements };
}

/** Lines and columns count from one; the end column is the one after the last (section 3.30). */
function regionOf({ start, end }: Lines): Region {
  return {
    startLine: start.line + 1,
    startColumn: start.character + 1,
    endLine: end.line + 1,
    endColumn: end.character + 1,
  };
}

type Locate = (path: string) => ArtifactLocation;

/** @param folder as `FormatInput` has it: paths of a folder of Windows have backslashes for slashes */
function locator(folder: string | undefined): Locate {
  const onWindows = /^file:\/\/\/[a-z]:/i.test(folder ?? '');
  const separator = onWindows ? /[\\/]/ : /\//;
  const isAbsolute = onWindows ? /^(?:[a-z]:)?[\\/]/i : /^\//;
  return (path) => {
    const parts = path.replace(/\p{Cs}/gu, '\ufffd').split(separator);
    if (!isAbsolute.test(path)) return { uri: uriOf(parts), uriBaseId: WORKING_FOLDER };
    const [first = '', ...rest] = parts;
    return { uri: `file:///${first === '' ? '' : `${first}/`}${uriOf(rest)}` };
  };
}

const uriOf = (parts: readonly string[]): string => parts.map(encodeURIComponent).join('/');
