import { describe, expect, expectTypeOf, it, test } from 'vitest';
import {
  check,
  checkEach,
  checkProject,
  createEngine,
  DEFAULT_CONFIG,
  formatReports,
  readConfig,
  StencilError,
  StencilReport,
} from '../../src/library/index';
import { BURIED, RING } from './made';

/** What is thrown, as one sentence. */
function sentenceOf(ask: () => unknown): string {
  try {
    ask();
  } catch (error) {
    expect(error).toBeInstanceOf(StencilError);
    const { message } = error as StencilError;
    expect(message).toMatch(/^[^\n]{5,200}\.$/);
    return message;
  }
  throw new Error('nothing was thrown');
}

// What a program in JavaScript may give, whatever the types say.
const asked = check as (...given: unknown[]) => StencilReport;

describe('check', () => {
  it('takes lengths as numbers of millimetres and with their unit', () => {
    expect(check(RING, { width: '148mm' }).size).toEqual({ width: 148, height: 148, stated: true });
    expect(check(RING, { width: 148 }).size.width).toBe(148);
    expect(check(RING, { width: '1in' }).size.width).toBeCloseTo(25.4, 9);
    expect(check(RING, { kerf: 0 }).findings.map((finding) => finding.check)).toEqual(['floating-island']);
  });

  it.each([
    [RING, { width: -5 }],
    [RING, { width: 0 }],
    [RING, { width: '148' }],
    [RING, { width: Number.NaN }],
    [RING, { width: 'wide' }],
    [RING, { kerf: -1 }],
    [RING, { widht: 148 }],
    [RING, { oneLayer: 'yes' }],
    [RING, { file: 5 }],
    [RING, { config: 'tombolo.json' }],
    [RING, { signal: true }],
    [RING, 148],
    [RING, null],
    [undefined, {}],
    [Uint8Array.of(60), {}],
  ])('says in a sentence what is wrong with what it is given (%#)', (text, options) => {
    sentenceOf(() => asked(text, options));
  });

  it('throws nothing for what is wrong with a drawing', () => {
    for (const text of ['', '<svg', 'no SVG', '<svg xmlns="http://www.w3.org/2000/svg"><path d="M0"/></svg>']) {
      expect(check(text).findings.length).toBeGreaterThan(0);
    }
  });

  it('gives the place of a finding in the text and on the sheet', () => {
    const [island] = check(RING).findings;
    expect(island).toMatchObject({ check: 'floating-island', severity: 'error', layer: 'ring', at: { x: 30, y: 30 } });
    expect(RING.slice(island?.range.from, island?.range.to)).toBe('v20h20v-20z');
    expect(island?.range.start).toEqual({ line: 0, character: island?.range.from });
  });

  it('works out again only what has changed, from an earlier report', () => {
    const before = check(RING);
    expect(check(RING.replace('M20', 'M21'), {}, before).counts.error).toBe(1);
    expect(sentenceOf(() => asked(RING, {}, { findings: [] }))).toMatch(/copy/);
  });

  it('ends where a signal says so, with the reason of the signal', () => {
    const reason = new Error('closed');
    expect(() => check(RING, { signal: AbortSignal.abort(reason) })).toThrow(reason);
    // Of shared memory, which another thread may write while the work runs.
    let looks = 0;
    const signal = {
      get aborted() {
        looks += 1;
        return looks > 1;
      },
    };
    const many = RING.replace('</g>', `${'<path d="M1 1c1 2 3 4 5 1z"/>'.repeat(3000)}</g>`);
    expect(sentenceOf(() => check(many, { signal }))).toMatch(/waits/);
  });
});

describe('a report', () => {
  const report = check(RING, { file: 'ring.svg' });

  it('is plain data: a copy holds all of it', () => {
    const copy = structuredClone(report);
    expect(copy).toEqual({ ...report });
    expect(JSON.stringify(copy).length).toBeLessThan(5000);
    expectTypeOf(copy).toEqualTypeOf(report);
  });

  it('is written to JSON as the command line prints a file', () => {
    const printed = JSON.parse(formatReports(report, 'json')) as { files: unknown[]; summary: unknown };
    expect(printed.files).toEqual([JSON.parse(JSON.stringify(report))]);
    expect(printed.summary).toEqual({ error: 1, warning: 0, info: 0 });
  });

  it('is printed from a copy, too', () => {
    expect(formatReports(structuredClone(report), 'unix')).toBe(formatReports(report, 'unix'));
  });
});

describe('checkProject', () => {
  const config = readConfig({ size: { width: '60mm' }, layers: [{ from: 'a.svg' }, { from: 'b.svg' }] });

  it('checks the files that the layers name', () => {
    const { files, missing } = checkProject({ 'a.svg': RING, 'c.svg': RING }, { config });
    expect(Object.keys(files)).toEqual(['a.svg']);
    expect(missing).toEqual(['b.svg']);
    expect(files['a.svg']).toBeInstanceOf(StencilReport);
    expect(checkProject(new Map([['b.svg', RING]]), { config }).missing).toEqual(['a.svg']);
  });

  it('needs layers', () => {
    sentenceOf(() => checkProject({ 'a.svg': RING }, { config: DEFAULT_CONFIG }));
    sentenceOf(() => checkProject({ 'a.svg': RING }, {}));
    sentenceOf(() => checkProject(5 as never, { config }));
  });
});

describe('checkEach', () => {
  const texts = ['a', 'b', 'c'].map((name): [string, string] => [`${name}.svg`, RING]);

  it('gives each report as soon as it is there, and says how far it is', async () => {
    const told: [number, string][] = [];
    const seen: string[] = [];
    for await (const { path } of checkEach(texts, { progress: (...now) => told.push(now) })) {
      seen.push(path);
      expect(told.length).toBe(seen.length);
    }
    expect(told).toEqual([
      [1, 'a.svg'],
      [2, 'b.svg'],
      [3, 'c.svg'],
    ]);
  });

  it('is ended between two files by a timer', async () => {
    const seen: string[] = [];
    const run = async () => {
      const ending = new AbortController();
      for await (const { path } of checkEach(texts, { signal: ending.signal })) {
        seen.push(path);
        setTimeout(() => ending.abort());
        await new Promise((settle) => setTimeout(settle, 5));
      }
    };
    await expect(run()).rejects.toMatchObject({ name: 'AbortError' });
    expect(seen).toEqual(['a.svg']);
  });
});

test('an engine of its own checks as check does', () => {
  const engine = createEngine({ memory: 1e6 });
  expect(engine.check(BURIED, { width: 50 }, 'x').toJSON()).toEqual(check(BURIED, { width: 50 }).toJSON());
  sentenceOf(() => createEngine({ memory: -1 }));
});

test('settings that are not understood are said', () => {
  expect(sentenceOf(() => readConfig({ size: { width: 148 } }))).toMatch(/./);
  sentenceOf(() => readConfig('{ "material": "butter" }'));
  expect(readConfig('{ /* as it is */ "size": { "width": "1cm" }, }').width).toBe(10);
});
