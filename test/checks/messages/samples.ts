/** Small drawings that together make every check speak, as their authors might leave them. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { check } from '../../../src/engine/check/check-file';
import { checkProject } from '../../../src/engine/check/check-project';
import { readConfig } from '../../../src/engine/check/known-checks';
import { projectFiles } from '../../../src/engine/check/project-layers';
import type { Report, Settings } from '../../../src/report/report';
import { sheetOf } from '../stencils';

const root = path.resolve(__dirname, '../../..');

const RING = '<path fill-rule="evenodd" d="M20 20H80V80H20Z M30 30H70V70H30Z"/>';
const SQUARE = '<path d="M10 10H40V40H10Z"/>';

/** What a name of a layer can be at its longest. */
const LONG = 'The marsh trail from the weir to the old sluice, second copy of layer';

/** Single sheets: openings on 100 × 100 mm, read as `reading` says. */
const SHEETS: readonly [body: string, reading?: string][] = [
  [RING],
  [`<g id="${LONG}">${RING}</g>`],
  [
    `<g id="a">${RING}</g><g id="${LONG}"><rect x="28" y="28" width="24" height="44"/></g>` +
      `<g id="${LONG} 2"><rect x="50.2" y="30.2" width="19.6" height="39.6"/></g>`,
  ],
  ['<path d="M30.3 20V30H40V50H20V30H29.7V20H10V60H50V20Z"/>'],
  ['<rect x="20" y="20" width="20" height="40"/><rect x="40.4" y="20" width="20" height="40"/>'],
  ['<path d="M10 10H40V24.8H60V10H90V40H60V25.2H40V40H10Z"/>'],
  ['<path d="M20 40L70 45L20 50Z"/>'],
  ['<path d="M20 20H40V27.98h1V20h20v16h-20V28.02h-1V36H20Z"/>'],
  [
    `<g id="${LONG}"><path d="M20 20H40V27.98h1V20h20v16h-20V28.02h-1V36H20ZM20 60H40V67.98h1V60h20v16h-20V68.02h-1V76H20Z"/></g>`,
  ],
  ['<circle cx="50" cy="50" r="0.25"/><rect x="20" y="20" width="30" height="0.58"/>'],
  ['<path d="M10 20H90V80H10V51H60V49H10Z"/>'],
  [`<g id="${LONG}"><path d="M10 10h30v.03h-30zM10 15h30v.04h-30z"/></g>`],
  [`<g id="${LONG}"><circle cx="20" cy="20" r="0.1"/><path d="M30 30H60V60H30Z"/></g>`],
  ['<circle cx="50" cy="2" r="10"/><rect x="0.4" y="40" width="20" height="20"/>'],
  ['<path d="M50 10L74 82L12 38H88L26 82Z"/>'],
  ['<path d="M0 0H100V100H0Z M20 20L80 80V30L20 60Z"/>', 'sheet'],
  ['<rect x="10" y="10" width="20" height="20"/><rect x="30" y="10" width="20" height="20"/>'],
  [
    '<rect x="10" y="10" width="20" height="1.9"/><rect x="30" y="10" width="20" height="1.9"/>' +
      '<rect x="10" y="20" width="20" height="1.9"/><rect x="30" y="20" width="20" height="1.9"/>',
  ],
  [SQUARE + SQUARE],
  ['<path fill-rule="evenodd" d="M10 10H40V40H10ZM10 10H40V40H10Z"/>'],
  ['<path fill-rule="evenodd" d="M10 50V10H90V90H10V50H40V60H60V40H40V50Z"/>'],
  ['<rect x="10" y="10" width="60" height="60"/><rect x="10" y="20" width="20" height="20"/>'],
  ['<path fill-rule="evenodd" d="M0 0H50V100H0Z M10 20H40V40H10Z"/><rect x="50" width="50" height="100"/>', 'sheet'],
  [`<g fill="none" stroke="#000" stroke-width="0.1"><path d="M10 10H40V40H10V12.5"/></g>`, 'outlines'],
  [
    '<g fill="none" stroke="#000" stroke-width="0.1"><path d="M10 10H40"/><path d="M40 10V40"/><path d="M40 40L10 10"/></g>',
    'outlines',
  ],
  ['<text x="10" y="40">Reeds</text><image href="heron.png" width="20" height="20"/><foreignObject/>'],
  [
    '<linearGradient id="g"><stop offset="0" stop-color="#123"/><stop offset="1" stop-color="#fed"/></linearGradient>' +
      `<g fill="url(#g)">${SQUARE}</g><rect x="50" y="50" width="20" height="20" opacity="0.123456"/>` +
      '<rect x="50" y="10" width="20" height="20" style="filter:blur(2px);mix-blend-mode:multiply"/>',
  ],
  [`<use href="#${LONG.replaceAll(' ', '-')}"/><use href="${LONG.replaceAll(' ', '-')}.svg#a"/><polygonal-thing/>`],
  ['<path d="M10 10L20"/><rect width="wide" height="-5"/><rect x="10" y="10" width="20" height="-5"/>'],
  [`<!-- tombolo accept thin-bridge: glued -->${SQUARE}<!-- tombolo accept thin-brigde: glued -->${SQUARE}`],
  [SQUARE, 'opnings'],
  [SQUARE, LONG],
];

const FILES: readonly string[] = [
  'media/demo/waymarker.svg',
  'media/demo/numeral-post.svg',
  'test/editor/workspace/ring.svg',
  'test/editor/workspace/waymarker.svg',
  'test/editor/workspace/hostile/hostile.svg',
];

/** Two layers that differ by `later` only: gaps, overlaps that are short, what is covered, with long names. */
const STACKS: readonly [earlier: string, later: string][] = [
  ['<rect x="10" y="10" width="40" height="40"/>', '<rect x="50.2" y="10" width="40" height="40"/>'],
  ['<rect x="10" y="10" width="40" height="40"/>', '<rect x="50" y="10" width="40" height="40"/>'],
  ['<rect x="10" y="10" width="40" height="40"/>', '<rect x="49.9" y="10" width="40" height="40"/>'],
  ['<rect x="30" y="30" width="10" height="10"/>', '<rect x="10" y="10" width="60" height="60"/>'],
  [
    '<path fill-rule="evenodd" d="M10 10H90V90H10Z M30 50a20 20 0 1 0 40 0a20 20 0 1 0 -40 0Z"/>',
    '<circle cx="50" cy="50" r="19.7"/>',
  ],
];

/** Two sheets in one paint with bridges beside each other, and one that goes with no other. */
const PARTNERS = [
  `<g id="${LONG} 1"><path d="M20 10H50V30H20Z M50.8 10H80V30H50.8Z"/></g>`,
  `<g id="2" data-tombolo-with="${LONG} 1"><path d="M20 10H51V30H20Z M51.8 10H80V30H51.8Z"/></g>`,
  `<g id="3" data-tombolo-with="${LONG} 3"><path d="M20 40H50V60H20Z"/></g>`,
].join('');

function configured(text: string, svg: string): Report {
  const { config } = readConfig(text);
  return check(svg, { config });
}

function project(folder: string): Report[] {
  const { config } = readConfig(readFileSync(path.join(root, folder, 'tombolo.json'), 'utf8'));
  const files = projectFiles(config).map(
    (name) => [name, readFileSync(path.join(root, folder, name), 'utf8')] as const,
  );
  return [...checkProject(new Map(files), { config }).files.values()];
}

/** Two sheets of other sizes, with long names. */
function unequal(): Report[] {
  const names = [`${LONG} 1`, `${LONG} 2`];
  const layers = names.map((name, i) => ({ from: `${i}.svg`, name }));
  const { config } = readConfig(JSON.stringify({ layers }));
  const sheet = (width: number) => sheetOf(SQUARE).replace('width="100mm"', `width="${width}mm"`);
  return [
    ...checkProject(
      new Map([
        ['0.svg', sheet(100)],
        ['1.svg', sheet(101.23)],
      ]),
      { config },
    ).files.values(),
  ];
}

const NO_MEMORY: Settings = { memoryInUse: () => 3000, memoryBudget: 2000 };

export function sampleReports(): Report[] {
  const sheets = SHEETS.map(([body, reading]) =>
    check(sheetOf(body, reading === undefined ? '' : `data-tombolo-reading="${reading}"`)),
  );
  const stacks = STACKS.map(([earlier, later]) =>
    check(sheetOf(`<g id="${LONG} 1">${earlier}</g><g id="${LONG} 2">${later}</g>`)),
  );
  const kerf = check(sheetOf('<path d="M30.1 20V30H40V50H20V30H29.9V20H10V60H50V20Z"/>'), { kerf: 0.25 });
  return [
    ...sheets,
    ...stacks,
    kerf,
    check(sheetOf(PARTNERS)),
    ...FILES.map((file) => check(readFileSync(path.join(root, file), 'utf8'))),
    ...project('media/demo/trail'),
    ...unequal(),
    check('<svg xmlns="http://www.w3.org/2000/svg" width="384" height="192"/>'),
    check('{"no": "svg"}'),
    check('<svg xmlns="http://www.w3.org/2000/svg"><g><rect x="2'),
    check(sheetOf(RING), NO_MEMORY),
    check(sheetOf(RING), { budget: -1 }),
    configured('{"cutter": {"bed": ["80mm", "80mm"]}}', sheetOf('')),
    configured(
      '{"cutter": {"bed": ["142mm", "20mm"]}}',
      sheetOf('').replace('height="100mm" viewBox="0 0 100 100"', 'height="1mm"'),
    ),
    configured('{"material": "vinyl-0.08"}', sheetOf('')),
    configured('{"material": "film-0.125"}', sheetOf(SHEETS[4]?.[0] ?? '')),
    configured(
      `{"material": "m", "materials": {"m": {"thickness": "0.3mm", "title": "${LONG}"}}}`,
      sheetOf(SHEETS[3]?.[0] ?? ''),
    ),
    configured('{"size": {"width": "148mm"}}', '<svg xmlns="http://www.w3.org/2000/svg" width="384" height="192"/>'),
  ];
}
