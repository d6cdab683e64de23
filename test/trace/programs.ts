/** Programs that draw, in the ways that people write them; they stand in the folder of this name. */
import { readFileSync } from 'node:fs';
import path from 'node:path';

export interface DrawingProgram {
  readonly title: string;
  /** Its file in the folder `programs`. */
  readonly file: string;
  readonly change?: (text: string) => string;
  readonly command: readonly string[];
  /** Built before it runs, by this command. */
  readonly build?: readonly string[];
  readonly elements: number;
  /** What stands in the source where an element is made by a call. */
  readonly calls?: RegExp;
  /** For elements by id: what stands at the innermost place, and at its callers. */
  readonly at?: Readonly<Record<string, readonly string[]>>;
}

export function textOf({ file, change = (text) => text }: DrawingProgram): string {
  return change(readFileSync(path.join(import.meta.dirname, 'programs', file), 'utf8'));
}

/** How a placeholder is written in the language of the program. */
const slot = (name: string): string => `$\{${name}}`;

const templates = (title: string, change: (text: string) => string): DrawingProgram => ({
  title,
  file: 'templates.mjs',
  change,
  command: ['node', 'templates.mjs'],
  elements: 20,
  at: {
    reed17: [`<path id="reed${slot('x')}"`, 'reed(10 + 7 * i'],
    sun: [`<${slot('name')} `, "el('circle', { id: 'sun'", 'sun(100, 30)'],
    core: [`<${slot('name')} `, "el('circle', { id: 'core'", 'sun(100, 30)'],
    otter: ['<rect id="otter"'],
    pond: ["<ellipse id='pond'"],
    'worked-out': ["<' + named"],
    brick2: [`<rect id="brick${slot('i')}"`],
    dot1: [`<circle id="dot${slot('i')}"`],
  },
});

const bundled = (title: string, flags: readonly string[]): DrawingProgram => ({
  title,
  file: 'typed.ts',
  build: ['esbuild', 'typed.ts', '--bundle', '--platform=node', '--sourcemap=inline', '--outfile=built.cjs', ...flags],
  command: ['node', 'built.cjs'],
  elements: 9,
  at: { cap2: [`<path id="cap${slot('n')}"`], post1: [`<g id="post${slot('n')}"`] },
});

const DRAWN_BY_D3 = {
  elements: 8,
  calls: /^(?:append\('|createElementNS\()/,
  at: {
    outer: ["append('circle')", "ring(svg, 'outer'"],
    inner: ["append('circle')", "ring(svg, 'inner'"],
    r3: ["append('rect')"],
    heron: ['createElementNS('],
  },
};

/** Those that need nothing but Node.js, and a bundler. */
export const PROGRAMS: readonly DrawingProgram[] = [
  templates('template strings', (text) => text),
  templates('lines that end with CR LF', (text) => text.replaceAll('\n', '\r\n')),
  { title: 'CommonJS, sums of strings', file: 'sums.cjs', command: ['node', 'sums.cjs'], elements: 10 },
  bundled('TypeScript, bundled', []),
];

/** Those that take longer to begin. */
export const WITH_LIBRARIES: readonly DrawingProgram[] = [
  bundled('TypeScript, bundled small', ['--minify']),
  { title: 'TypeScript by tsx', file: 'typed.ts', command: ['tsx', 'typed.ts'], elements: 9 },
  { title: 'd3 on linkedom', file: 'd3-linkedom.mjs', command: ['node', 'd3-linkedom.mjs'], ...DRAWN_BY_D3 },
  { title: 'd3 on jsdom', file: 'd3-jsdom.mjs', command: ['node', 'd3-jsdom.mjs'], ...DRAWN_BY_D3 },
  {
    title: 'svg.js on svgdom',
    file: 'svg-js.mjs',
    command: ['node', 'svg-js.mjs'],
    elements: 4,
    calls: /^(?:rect|circle|SVG)\(/,
    at: { reed20: ['rect(2, 40)', 'reed(20)'], sun: ['circle(20)'] },
  },
];

/** Debian's own, which finds Debian's packages. */
const PYTHON = '/usr/bin/python3';

const inPython = (title: string, file: string, rest: Omit<DrawingProgram, 'title' | 'file' | 'command'>) => ({
  title,
  file,
  command: [PYTHON, file],
  ...rest,
});

const strings = (title: string, change: (text: string) => string): DrawingProgram =>
  inPython(title, 'strings.py', {
    change,
    elements: 19,
    at: {
      reed17: ['<path id="reed{x}"', 'reed(10 + 7'],
      sun: ['<{name} ', "el('circle', id='sun'"],
      post: ['<rect id="%s"'],
      pond: ["<ellipse id='{}'"],
      'worked-out': ["<' + named"],
      percent: ['<%s id="percent"'],
      brick2: ['<rect id="brick{i}"'],
      dot1: ['<circle id="dot{i}"'],
    },
  });

export const IN_PYTHON: readonly DrawingProgram[] = [
  strings('Python strings', (text) => text),
  strings('Python with lines that end with CR LF', (text) => text.replaceAll('\n', '\r\n')),
  inPython('ElementTree', 'tree.py', {
    elements: 6,
    calls: /^ET\.(?:SubElement|Element)\(/,
    at: { outer: ['ET.SubElement(', "ring(svg, 'outer'"], r2: ['ET.SubElement('] },
  }),
  inPython('lxml', 'tree_lxml.py', {
    elements: 4,
    calls: /^(?:etree\.SubElement|E\.\w+)\(/,
    at: { inner: ['etree.SubElement(', "ring(svg, 'inner'"], post: ['E.rect('] },
  }),
  inPython('svgwrite', 'drawing_svgwrite.py', {
    elements: 6,
    calls: /^(?:d\.path|d\.circle|svgwrite\.Drawing)\(/,
    at: { reed20: ['d.path(', 'reed(10 * (i'], sun: ['d.circle('] },
  }),
];
