/** For people at a terminal: what was measured, what was found, and how many. */
import { count, shortNumber } from '../config/values';
import { formatDuration } from '../sheet/cutting-time';
import type { CheckedFile, CheckedLayer, PlacedFinding, SeverityCounts } from './checked-file';
import type { Format, FormatInput } from './format';
import { placeText } from './place-text';
import { oneLine } from './plain-text';
import { snippetLines } from './snippet/snippet-text';
import { type Column, padAll, tableLines } from './table';

export const formatText: Format = (input) => {
  const files = input.files.map((file) => textOfFile(file, input)).join('');
  return files === '' ? '' : `${files}${textOfCounts(input)}`;
};

/** One file and a blank line; nothing with `--quiet` where nothing was found. */
export function textOfFile(file: CheckedFile, style: Pick<FormatInput, 'quiet' | 'colours' | 'snippetStyle'>): string {
  return style.quiet && file.findings.length === 0 ? '' : `${fileLines(file, style).join('\n')}\n\n`;
}

/** What stands after all files. */
export function textOfCounts(input: FormatInput): string {
  return `${summaryLine(input)}\n`;
}

const LAYER_COLUMNS: readonly Column<CheckedLayer>[] = [
  { heading: 'layer', align: 'left', cell: (layer) => oneLine(layer.name) || '(unnamed)' },
  { heading: 'paint', align: 'left', cell: (layer) => layer.paint },
  { heading: 'reading', align: 'left', cell: (layer) => layer.reading },
  { heading: 'openings', align: 'right', cell: (layer) => String(layer.openings) },
  { heading: 'islands', align: 'right', cell: (layer) => String(layer.islands) },
  { heading: 'cut length', align: 'right', cell: (layer) => `${layer.cutLength.toFixed(1)} mm` },
];

/** Without the ways between the lines: a cutter takes longer. */
const TIME_COLUMN: Column<CheckedLayer> = {
  heading: 'cut time',
  align: 'right',
  cell: ({ cutTime }) => (cutTime === undefined ? '' : formatDuration(cutTime)),
};

type Style = Pick<FormatInput, 'colours' | 'snippetStyle'>;

function fileLines(file: CheckedFile, style: Style): string[] {
  const { colours } = style;
  const size = file.size ? `  ${sizeText(file.size)}` : '';
  const lines = [`${colours.bold(oneLine(file.path))}${size}`];
  if (file.layers.length > 0) {
    const timed = file.layers.some(({ cutTime }) => cutTime !== undefined);
    const [heading = '', ...rows] = tableLines(timed ? [...LAYER_COLUMNS, TIME_COLUMN] : LAYER_COLUMNS, file.layers);
    lines.push(`  ${colours.dim(heading)}`, ...rows.map((row) => `  ${row}`));
  }
  return [...lines, ...findingLines(file.findings, style)];
}

function sizeText({ width, height, stated }: NonNullable<CheckedFile['size']>): string {
  if (!(width > 0 && height > 0)) return 'no size';
  const text = `${shortNumber(width)} × ${shortNumber(height)} mm`;
  return stated ? text : `${text} (not stated: pixels at 96 to the inch)`;
}

function findingLines(findings: readonly PlacedFinding[], { colours, snippetStyle = 'braille' }: Style): string[] {
  const places = padAll(
    findings.map(({ range }) => placeText(range)),
    'right',
  );
  const severities = padAll(
    findings.map(({ severity }) => severity),
    'left',
  );
  return findings.flatMap(({ severity, message, check, layer, related, from, refusals, snippet }, index) => {
    const place = places[index] ?? '';
    const paint = colours[SEVERITY_COLOURS[severity]];
    const where = layer === undefined ? check : `${check}, ${oneLine(layer)}`;
    const first = `  ${place}  ${paint(severities[index] ?? '')}  ${oneLine(message)} ${colours.dim(`[${where}]`)}`;
    const indent = ' '.repeat(place.length + 4);
    const others = related.map(({ path, range, message: words }) => {
      const file = path === undefined ? '' : `${oneLine(path)}:`;
      return colours.dim(`${indent}${file}${placeText(range)}: ${oneLine(words)}`);
    });
    const drawn =
      from && colours.dim(`${indent}${oneLine(from.path)}:${placeText(from.range)}: ${oneLine(from.drawn)}`);
    const none = noFix(refusals);
    return [
      first,
      ...(drawn ? [drawn] : []),
      ...others,
      ...(none === undefined ? [] : [colours.dim(`${indent}${none}`)]),
      ...(snippet ? snippetLines(snippet, snippetStyle, paint, colours.dim).map((line) => `${indent}${line}`) : []),
    ];
  });
}

/** Said where all that was tried was refused: each reason once, up to its details. */
function noFix(refusals: PlacedFinding['refusals']): string | undefined {
  if (refusals.length === 0) return undefined;
  const reasons = refusals.map(({ reason }) => /^.*?(?=[.:;](?:\s|$))/s.exec(reason)?.[0] ?? reason);
  return `no fix holds: ${oneLine([...new Set(reasons)].join('; '))}`;
}

const SEVERITY_COLOURS = { error: 'red', warning: 'yellow', info: 'blue', hint: 'gray' } as const;

function summaryLine({ files, summary, passed, colours }: FormatInput): string {
  const stencils = count(files.filter((file) => file.size).length, 'file');
  const { error, warning, info, hint } = summary;
  const letPass = passed === 0 ? '' : ` The baseline let ${count(passed, 'finding')} pass.`;
  if (error + warning + info + hint === 0) return colours.green(`${stencils} checked, nothing found.${letPass}`);
  const paint = error > 0 ? colours.red : warning > 0 ? colours.yellow : colours.green;
  return paint(`${stencils} checked: ${countsText(summary)}.${letPass}`);
}

function countsText({ error, warning, info, hint }: SeverityCounts): string {
  const counts = [count(error, 'error'), count(warning, 'warning')];
  if (info > 0) counts.push(`${info} info`);
  if (hint > 0) counts.push(count(hint, 'hint'));
  return counts.join(', ');
}
