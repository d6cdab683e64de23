import { beforeEach, describe, expect, it, vi } from 'vitest';
import type { FileOutcome } from '../../../src/cli/check/file-check';
import { ToldInOrder } from '../../../src/cli/check/told-in-order';
import type { FileResult } from '../../../src/cli/check/unit-check';
import { Host } from '../../../src/cli/host';

describe('ToldInOrder', () => {
  const said: string[] = [];
  const host = new Host();
  vi.spyOn(host, 'say').mockImplementation((line) => said.push(line));
  vi.spyOn(host, 'endWith').mockImplementation(() => undefined);
  const told = (files: readonly string[]) => new ToldInOrder(files, host, ({ name }) => said.push(`done ${name}`));

  beforeEach(() => said.splice(0));

  it('tells of a file at once where those before it are done', () => {
    const order = told(['sun.svg', 'reeds.svg']);
    order.take(unit('sun.svg'), result(outcome('sun.svg')));
    expect(said).toEqual(['done sun.svg']);
  });

  it('lets a file wait for those that were named before it', () => {
    const order = told(['sun.svg', 'reeds.svg', 'heron.svg']);
    order.take(unit('heron.svg'), result(outcome('heron.svg')));
    order.take(unit('reeds.svg'), result(outcome('reeds.svg', ['reeds.svg: slow'])));
    expect(said).toEqual([]);
    order.take(unit('sun.svg'), result(outcome('sun.svg')));
    expect(said).toEqual(['done sun.svg', 'reeds.svg: slow', 'done reeds.svg', 'done heron.svg']);
    expect(order.outcomes.map(({ name }) => name)).toEqual(['sun.svg', 'reeds.svg', 'heron.svg']);
  });

  it('tells of the files of a project where each was named, and of what failed in its turn', () => {
    const order = told(['sun.svg', 'gone.svg', 'reeds.svg']);
    order.take(unit('sun.svg', 'reeds.svg'), result(outcome('sun.svg'), outcome('reeds.svg')));
    expect(said).toEqual(['done sun.svg']);
    const line = 'tombolo: gone.svg: no such file';
    order.take(unit('gone.svg'), result({ failure: { words: 'gone.svg: no such file', line } }));
    expect(said).toEqual(['done sun.svg', line, 'done reeds.svg']);
    expect(order.outcomes).toHaveLength(2);
  });
});

function unit(...files: string[]) {
  return { files, project: undefined };
}

function result(...files: FileResult[]) {
  return { files, configs: [] };
}

function outcome(name: string, remarks: readonly string[] = []): FileOutcome {
  const checked = { path: name, layers: [], findings: [] } as unknown as FileOutcome['checked'];
  return { checked, configPath: undefined, name, passed: { count: 0, entries: [] }, remarks };
}
