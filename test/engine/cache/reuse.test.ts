/** What an edit makes the engine work out again, by count. */
import { describe, expect, it } from 'vitest';
import { ALL_CHECKS } from '../../../src/checks/all';
import { readConfig } from '../../../src/engine/check/known-checks';
import { createEngine, type Engine } from '../../../src/engine/engine';
import { fixesFor } from '../../../src/engine/index';
import { applyEdits } from '../../../src/text/text';
import { ring, sheet, square } from '../project-files';

const FILE_CHECKS = ALL_CHECKS.filter(({ meta }) => meta.reads === 'file').length;
const STACK_CHECKS = ALL_CHECKS.length - FILE_CHECKS;

/** What `work` has the engine work out, by the names of the nodes; without those that were all known. */
function worked(engine: Engine, work: () => void): Record<string, number> {
  const before = engine.counts();
  work();
  const counts = [...engine.counts()].map(([name, { misses }]) => [name, misses - (before.get(name)?.misses ?? 0)]);
  return Object.fromEntries(counts.filter(([, misses]) => misses !== 0));
}

const layer = (i: number, side = 4) => `<g id="layer${i}">${square(2 + 5 * i, 5, side)}</g>`;
const eight = (...changed: string[]) =>
  sheet(
    Array.from({ length: 8 }, (_, i) => changed.find((each) => each.includes(`layer${i}"`)) ?? layer(i)).join('\n'),
  );

const configOf = (config: object) => readConfig(JSON.stringify(config)).config;

describe('one file of eight layers', () => {
  it('is worked out once', () => {
    const engine = createEngine();
    expect(worked(engine, () => engine.check(eight()))).toMatchObject({
      ...{ markup: 1, drawing: 1, sheet: 8, file: 1, stack: 1, seams: 1 },
      ...{ 'file check': FILE_CHECKS, 'stack check': STACK_CHECKS, findings: 1 },
    });
    expect(worked(engine, () => engine.check(eight()))).toEqual({});
  });

  it('has one sheet measured again after an edit in the second layer', () => {
    const engine = createEngine();
    engine.check(eight());
    expect(worked(engine, () => engine.check(eight(layer(1, 3))))).toMatchObject({
      ...{ markup: 1, drawing: 1, sheet: 1, seams: 1 },
      ...{ 'file check': FILE_CHECKS, 'stack check': STACK_CHECKS },
    });
  });

  it('has none measured again after an edit that moves no line, nor anything after it is undone', () => {
    const engine = createEngine();
    engine.check(eight());
    const renamed = worked(engine, () => engine.check(eight(layer(1).replace('<g', '<!-- the second -->\n<g'))));
    expect(renamed).toMatchObject({ markup: 1, drawing: 1 });
    expect(Object.keys(renamed)).not.toContain('sheet');
    expect(Object.keys(renamed)).not.toContain('seams');
    expect(worked(engine, () => engine.check(eight()))).toEqual({});
  });

  it('has nothing measured nor checked again under other severities', () => {
    const engine = createEngine();
    engine.check(eight());
    const config = configOf({ checks: { 'thin-bridge': 'error' }, accept: { 'unstated-size': 'as it is' } });
    expect(worked(engine, () => engine.check(eight(), { config }))).toEqual({ findings: 1 });
  });

  it('has all of it measured again under other limits', () => {
    const engine = createEngine();
    engine.check(eight());
    const config = configOf({ limits: { bridge: '1.1mm' } });
    const again = worked(engine, () => engine.check(eight(), { config }));
    expect(again).toMatchObject({ sheet: 8, 'file check': FILE_CHECKS });
    expect(Object.keys(again)).not.toContain('markup');
  });

  it('keeps to its bound, and finds the same where it had to forget', () => {
    const engine = createEngine({ limit: 1 });
    const found = engine.check(eight()).complete.map(({ message }) => message);
    expect(worked(engine, () => engine.check(eight()))).toMatchObject({ sheet: 8 });
    expect(engine.check(eight()).complete.map(({ message }) => message)).toEqual(found);
  });
});

describe('a project of eight files', () => {
  const names = Array.from({ length: 8 }, (_, i) => `${i}.svg`);
  const texts = new Map(names.map((name, i) => [name, sheet(square(2 + 5 * i, 5, 4))]));
  const settings = { config: configOf({ layers: names.map((from) => ({ from })) }) };

  it('has the checks of the edited file run, and those that read the stack', () => {
    const engine = createEngine();
    engine.checkProject(texts, settings);
    const edited = new Map(texts).set('2.svg', sheet(square(12, 5, 3)));
    expect(worked(engine, () => engine.checkProject(edited, settings))).toMatchObject({
      ...{ markup: 1, sheet: 1, file: 1, stack: 1, seams: 1 },
      ...{ 'file check': FILE_CHECKS, 'stack check': 8 * STACK_CHECKS },
    });
  });

  it('has nothing measured within a file when the layers change places', () => {
    const engine = createEngine();
    engine.checkProject(texts, settings);
    const config = configOf({ layers: names.toReversed().map((from) => ({ from })) });
    const again = worked(engine, () => engine.checkProject(texts, { config }));
    expect(again).toMatchObject({ stack: 1, seams: 1, 'stack check': 8 * STACK_CHECKS });
    for (const node of ['markup', 'sheet', 'file', 'file check']) expect(Object.keys(again)).not.toContain(node);
  });
});

describe('two documents of one engine', () => {
  it('each go on from their own last state', () => {
    const engine = createEngine();
    const [a, b] = [sheet(ring(5, 5)), sheet(ring(25, 25))];
    engine.check(a, {}, 'a.svg');
    engine.check(b, {}, 'b.svg');
    const edited = a.replace('</svg>', `${square(40, 40, 5)}</svg>`);
    const [before, after] = [engine.check(a, {}, 'a.svg'), engine.check(edited, {}, 'a.svg')];
    expect(after.sheets[0]?.openings[0]).toBe(before.sheets[0]?.openings[0]);
  });
});

describe('a fix that was proven', () => {
  it('leaves nothing to be worked out of the edited text', () => {
    const engine = createEngine();
    const text = sheet(ring(10, 10));
    const report = engine.check(text);
    const [island] = report.findings.filter(({ check }) => check === 'floating-island');
    const bridged = applyEdits(text, (island && fixesFor(report, island).fixes[0]?.edits) ?? []);
    expect(bridged).not.toBe(text);
    expect(worked(engine, () => engine.check(bridged))).toEqual({});
    expect(engine.check(bridged).complete.map(({ check }) => check)).not.toContain('floating-island');
  });

  it('is not proven again when it is asked for again, of the same report or of one on the same text', () => {
    const engine = createEngine();
    const text = sheet(ring(10, 10));
    const report = engine.check(text);
    const first = report.findings.map((finding) => fixesFor(report, finding));
    let again: unknown;
    const asked = worked(engine, () => {
      const same = engine.check(text);
      again = same.findings.map((finding) => fixesFor(same, finding));
    });
    expect(asked).toEqual({});
    expect(again).toEqual(first);
  });

  it('leaves the last state of the text what the next one is worked out from', () => {
    const engine = createEngine();
    const text = sheet(`${ring(10, 10)}${square(40, 40, 5)}`);
    const report = engine.check(text);
    for (const finding of report.findings) fixesFor(report, finding);
    const edited = engine.check(text.replace('</svg>', '<path d="M1 1h1v1z"/></svg>'));
    expect(report.sheets[0]?.openings.every((opening) => edited.sheets[0]?.openings.includes(opening))).toBe(true);
  });
});
