/** Layers and findings have names of their own, by which hosts ask about them. */
import { describe, expect, it } from 'vitest';
import { check, findingById } from '../../../src/engine/index';
import type { Report } from '../../../src/report/report';
import { project, ring, sheet, square } from '../project-files';

const twoSkies = sheet(`<g><title>sky</title>${ring(4, 4)}</g><g><title>sky</title>${ring(30, 30)}${ring(4, 40)}</g>`);

const idsOf = ({ findings }: Report, check: string) =>
  findings.filter((finding) => finding.check === check).map(({ id }) => id);

describe('layers', () => {
  it('of one name have ids of their own, and their findings say which', () => {
    const { sheets, findings } = check(twoSkies);
    expect(sheets.map(({ layer }) => layer.id)).toEqual(['#0', '#1']);
    const islands = findings.filter((finding) => finding.check === 'floating-island');
    expect(islands.map(({ layer, layerId }) => `${layer} ${layerId}`).sort()).toEqual(['sky #0', 'sky #1', 'sky #1']);
  });

  it('of a file that two entries name are counted through', () => {
    const files = { 'a.svg': sheet(`<g id="one">${square(4, 4, 9)}</g><g id="two">${square(30, 30, 9)}</g>`) };
    const { stack } = project(files, [{ from: 'a.svg#two' }, { from: 'a.svg#one' }]);
    expect(stack.layers.map(({ sheet: { layer } }) => `${layer.name} ${layer.id}`)).toEqual([
      'two a.svg#0',
      'one a.svg#1',
    ]);
  });
});

describe('findings', () => {
  it('have ids of their own, the same for the same text under the same settings', () => {
    const report = check(twoSkies);
    const ids = report.complete.map(({ id }) => id);
    expect(ids.length).toBeGreaterThan(2);
    expect(new Set(ids).size).toBe(ids.length);
    expect(check(twoSkies).complete.map(({ id }) => id)).toEqual(ids);
    const others = [check(`${twoSkies} `), check(twoSkies, { width: 61 })];
    for (const other of others) for (const { id } of other.complete) expect(ids).not.toContain(id);
  });

  const layers = [{ from: 'a.svg' }, { from: 'b.svg' }];
  const a = sheet(ring(10, 10) + square(30, 30, 10));
  const before = project({ 'a.svg': a, 'b.svg': sheet(square(40, 30, 10)) }, layers);
  const after = project({ 'a.svg': a, 'b.svg': sheet(square(40.1, 30, 10) + ring(4, 44)) }, layers, before);
  const ofA = (of: typeof before) => of.files.get('a.svg') as Report;

  it('keep them while other files change, unless they lie between the files', () => {
    expect(idsOf(ofA(before), 'floating-island')).toHaveLength(1);
    expect(idsOf(ofA(after), 'floating-island')).toEqual(idsOf(ofA(before), 'floating-island'));
    const between = (of: typeof before) => ofA(of).findings.filter(({ related }) => related.some(({ file }) => file));
    expect(between(before).length).toBeGreaterThan(0);
    expect(between(after).length).toBeGreaterThan(0);
    const old = new Set(between(before).map(({ id }) => id));
    for (const { id } of between(after)) expect(old).not.toContain(id);
  });

  it('are found by them, from any report of the project, in the file that they lie in', () => {
    const [id] = idsOf(ofA(before), 'floating-island');
    const found = findingById(after.files.get('b.svg') as Report, id!);
    expect(found?.report).toBe(ofA(after));
    expect(found?.finding.check).toBe('floating-island');
  });

  it('are not found once their text has changed', () => {
    const [id] = idsOf(check(twoSkies), 'floating-island');
    expect(findingById(check(twoSkies), id!)?.finding.check).toBe('floating-island');
    expect(findingById(check(`${twoSkies} `), id!)).toBeUndefined();
  });
});
