/** The words of the page, row by row: the same for HTML and PDF. */
import { formatDuration } from '../../sheet/cutting-time';
import type { Job, JobLayer } from './job';

export const COLUMNS = [
  'Sheet',
  'Layer',
  'Paint',
  'Area',
  'Cut',
  'Time',
  'Coats',
  'Then wait',
  'Cans',
  'Marks',
] as const;

export function rowOf({ number, name, paint, area, cutLength, cutTime, coats, wait, cans, marks }: JobLayer): string[] {
  return [
    String(number),
    name,
    paint,
    `${area.toFixed(1)} cm²`,
    `${(cutLength / 1000).toFixed(2)} m`,
    cutTime === undefined ? '-' : formatDuration(cutTime),
    String(coats),
    wait ?? '-',
    cans === undefined ? '-' : percent(cans),
    String(marks),
  ];
}

/** As exact as an estimate deserves. */
function percent(share: number): string {
  if (share > 0 && share < 0.0005) return '< 0.1 %';
  return `${(100 * share).toFixed(share < 0.1 ? 1 : 0)} %`;
}

export function sumRow({ layers }: Job): string[] {
  const sum = (of: (layer: JobLayer) => number | undefined) => layers.reduce((all, layer) => all + (of(layer) ?? 0), 0);
  const times = layers.every(({ cutTime }) => cutTime !== undefined);
  const cans = layers.every((layer) => layer.cans !== undefined);
  return [
    'All',
    '',
    '',
    `${sum(({ area }) => area).toFixed(1)} cm²`,
    `${(sum(({ cutLength }) => cutLength) / 1000).toFixed(2)} m`,
    times ? formatDuration(sum(({ cutTime }) => cutTime)) : '-',
    String(sum(({ coats }) => coats)),
    '',
    cans ? percent(sum((layer) => layer.cans)) : '-',
    '',
  ];
}

/** What stands below the table: a heading, and lines under it. */
export function paragraphsOf({
  pieces,
  accepted,
  notes,
}: Job): { readonly heading: string; readonly lines: readonly string[] }[] {
  return [
    ...(pieces.length > 0
      ? [
          {
            heading: 'Loose pieces',
            lines: [
              `${pieces.map(({ label }) => label).join(', ')}. Lay each where the picture and the drawing of its sheet show its number; 2.1 is the first of sheet 2.`,
            ],
          },
        ]
      : []),
    ...(accepted.length > 0 ? [{ heading: 'Accepted', lines: accepted }] : []),
    { heading: 'Take care', lines: notes },
  ];
}
