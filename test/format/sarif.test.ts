import { pathToFileURL } from 'node:url';
import type { Log } from 'sarif';
import { describe, expect, it } from 'vitest';
import { ALL_METAS } from '../../src/engine/check/known-checks';
import { formatSarif } from '../../src/format/sarif';
import { file, finding, input, range } from './made-files';

function run(...files: ReturnType<typeof file>[]): Log['runs'][number] {
  const log = JSON.parse(formatSarif(input(files))) as Log;
  expect(log.version).toBe('2.1.0');
  return log.runs[0]!;
}

describe('formatSarif', () => {
  it('lists every check as a rule, found or not', () => {
    const { rules } = run().tool.driver;
    expect(rules?.map(({ id }) => id)).toEqual([...ALL_METAS.map(({ id }) => id), 'unreadable-config']);
    const said = new Map(rules?.map(({ id, shortDescription }) => [id, shortDescription?.text]));
    for (const { id, summary } of ALL_METAS) expect(said.get(id)).toBe(summary);
  });

  it('counts columns in UTF-16 code units, from one, the end one past the last', () => {
    const { columnKind, results } = run(file([finding()]));
    expect(columnKind).toBe('utf16CodeUnits');
    expect(results?.[0]?.locations?.[0]?.physicalLocation).toEqual({
      artifactLocation: { uri: 'heron.svg', uriBaseId: 'SRCROOT' },
      region: { startLine: 5, startColumn: 13, endLine: 5, endColumn: 41 },
    });
  });

  it('each result points to its rule', () => {
    const { tool, results } = run(file([finding(), finding({ check: 'buried-opening', severity: 'hint' })]));
    const ids = results?.map(({ ruleIndex }) => tool.driver.rules?.[ruleIndex!]?.id);
    expect(ids).toEqual(['thin-bridge', 'buried-opening']);
    expect(results?.map(({ level }) => level)).toEqual(['warning', 'note']);
  });

  it('related places and mends', () => {
    const related = [{ message: 'holds this island', range: range(6, 2, 3, 300), at: undefined }];
    const edits = [{ range: range(4, 12, 2, 210), text: 'L 3 4' }];
    const mends = [{ title: 'Widen to 0.80 mm', preferred: true, safe: false, edits }];
    const [result] = run(file([finding({ related, mends })])).results ?? [];
    expect(result?.relatedLocations).toEqual([
      {
        id: 0,
        message: { text: 'holds this island' },
        physicalLocation: {
          artifactLocation: { uri: 'heron.svg', uriBaseId: 'SRCROOT' },
          region: { startLine: 7, startColumn: 3, endLine: 7, endColumn: 6 },
        },
      },
    ]);
    expect(result?.fixes).toEqual([
      {
        description: { text: 'Widen to 0.80 mm' },
        artifactChanges: [
          {
            artifactLocation: { uri: 'heron.svg', uriBaseId: 'SRCROOT' },
            replacements: [
              {
                deletedRegion: { startLine: 5, startColumn: 13, endLine: 5, endColumn: 15 },
                insertedContent: { text: 'L 3 4' },
              },
            ],
          },
        ],
      },
    ]);
  });

  it('a detail stands beneath the message, none of it taken for Markdown', () => {
    const detail = 'Set limits.bridge, or *widen* it.';
    const [told, plain] = run(file([finding({ detail }), finding()])).results ?? [];
    expect(told?.message.text).toBe('Bridge 0.42 mm wide; 0.80 mm is the least.');
    expect(told?.message.markdown).toMatch(/^Bridge .*\n\nSet limits\\\.bridge, or \\\*widen\\\* it\\\.$/);
    expect(plain?.message.markdown).toBeUndefined();
  });

  it('paths become URIs', () => {
    const uris = run(
      file([], { path: 'marsh trail/#1 heron.svg' }),
      file([], { path: '/posts/sun.svg' }),
    ).artifacts?.map(({ location }) => location?.uri);
    expect(uris).toEqual(['marsh%20trail/%231%20heron.svg', 'file:///posts/sun.svg']);
  });

  it('a program that draws it is a related place, or the first with --at-generator', () => {
    const at = { line: 6, character: 12 };
    const place = { path: 'gen.mjs', range: { start: at, end: at } };
    const caller = { path: 'main.mjs', range: { start: at, end: at } };
    const drawn = finding({ from: { ...place, drawn: 'reed2, drawn here', callers: [caller] } });
    const uris = (atGenerator: boolean) => {
      const log = JSON.parse(formatSarif(input([file([drawn])], { atGenerator }))) as Log;
      const { locations = [], relatedLocations = [] } = log.runs[0]!.results![0]!;
      return [...locations, ...relatedLocations].map((each) => each.physicalLocation?.artifactLocation?.uri);
    };
    expect(uris(false)).toEqual(['heron.svg', 'gen.mjs', 'main.mjs']);
    expect(uris(true)).toEqual(['gen.mjs', 'heron.svg', 'main.mjs']);
  });

  it('says where relative paths start, and what each check looks for', () => {
    const { originalUriBaseIds, tool } = run(file([]));
    expect(originalUriBaseIds?.SRCROOT?.uri).toBe(pathToFileURL(`${process.cwd()}/`).href);
    for (const rule of tool.driver.rules ?? []) {
      expect(rule.fullDescription?.text).toMatch(/\S[.!?]$/);
      expect(rule.help?.text).toMatch(/\S[.!?]$/);
    }
  });

  it('a run that failed looks failed, and keeps what was found', () => {
    const failures = ['reeds.svg: permission denied'];
    const log = JSON.parse(formatSarif(input([file([finding()])], { failures }))) as Log;
    expect(log.runs[0]?.results).toHaveLength(1);
    expect(log.runs[0]?.invocations).toEqual([
      {
        executionSuccessful: false,
        toolExecutionNotifications: [{ level: 'error', message: { text: 'reeds.svg: permission denied' } }],
      },
    ]);
    expect(run(file([finding()])).invocations).toEqual([{ executionSuccessful: true }]);
  });

  it('a finding keeps its fingerprint when lines move, and no two have the same', () => {
    const prints = (...findings: ReturnType<typeof finding>[]) =>
      run(file(findings)).results?.map(({ partialFingerprints }) => partialFingerprints?.['checkLayerPlace/v1']);
    const [first] = prints(finding()) ?? [];
    expect(prints(finding({ range: range(90, 1, 3, 4000) }))).toEqual([first]);
    const others = prints(finding(), finding(), finding({ layer: 'sky' }), finding({ at: { x: 90, y: 9 } })) ?? [];
    expect(new Set(others).size).toBe(4);
    expect(others[0]).toBe(first);
  });
});
