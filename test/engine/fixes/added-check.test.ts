/** What must hold when a check is added: by its folder and one line, it takes no fix away and is known everywhere. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import type { Log } from 'sarif';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import type * as Engine from '../../../src/engine/index';
import type { ReportedFinding } from '../../../src/report/finding-id';
import { input } from '../../format/made-files';
import { isThorough } from '../../thorough';
import { longBridge } from './long-bridge';

const ALL = '../../../src/checks/all';
const demo = (name: string) => readFileSync(path.resolve(__dirname, '../../../media/demo', name), 'utf8');

/** An island of 24 mm in an opening of 40 mm: its bridges are 8 mm long. */
const wide =
  '<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="100mm" viewBox="0 0 100 100">' +
  '<path fill-rule="evenodd" d="M10 10h40v40h-40zM18 18h24v24h-24z"/></svg>';

/** Milliseconds: two engines are read. */
const LOADING = 60_000;
/** Milliseconds: every fix of a drawing is proven, by both. */
const PROVING = 300_000;
/** What is compared must not depend on how busy the machine is. */
const budget = Infinity;

let before: typeof Engine;
let after: typeof Engine;

/** The engine twice: as it is, and with one line more in the list of checks. */
beforeAll(async () => {
  before = await import('../../../src/engine/index');
  vi.resetModules();
  vi.doMock(ALL, async (original) => {
    const { ALL_CHECKS } = await original<typeof import('../../../src/checks/all')>();
    return { ALL_CHECKS: [...ALL_CHECKS, longBridge] };
  });
  after = await import('../../../src/engine/index');
}, LOADING);

afterAll(() => {
  vi.doUnmock(ALL);
  vi.resetModules();
});

type Fixes = readonly (readonly [string, readonly string[]])[];

/** The kinds of fix that are proven for each finding that the checks of old have. */
function fixesIn(engine: typeof Engine, reports: readonly Engine.Report[]): Fixes {
  const old = ({ check }: ReportedFinding) => check !== longBridge.meta.id;
  return reports.flatMap((report) =>
    report.findings
      .filter(old)
      .map((finding) => [finding.message, engine.fixesFor(report, finding).fixes.map(({ kind }) => kind)] as const),
  );
}

const alone = (engine: typeof Engine, text: string) => {
  const { config } = engine.readConfig(demo('tombolo.json'));
  return [engine.check(text, { config, budget })];
};

function trail(engine: typeof Engine): readonly Engine.Report[] {
  const { config } = engine.readConfig(demo('trail/tombolo.json'));
  const texts = engine.projectFiles(config).map((name) => [name, demo(`trail/${name}`)] as const);
  return [...engine.checkProject(new Map(texts), { config, budget }).files.values()];
}

describe('a check that is added', () => {
  it('runs, and finds what the fixes bring', () => {
    const [report] = alone(after, wide);
    const [fix] = after.fixesFor(report!, report!.findings[0]!).fixes;
    const now = after.check(after.applyEdits(wide, fix?.edits ?? []));
    expect(now.findings.map(({ check }) => check)).toContain('long-bridge');
    expect(before.check(now.text).findings).toEqual([]);
  });

  it('takes no fix from a wide island, and each fix says what it brings', () => {
    const kinds = fixesIn(before, alone(before, wide));
    expect(kinds[0]?.[1]).toContain('bridge-island');
    expect(fixesIn(after, alone(after, wide))).toEqual(kinds);
    const [report] = alone(after, wide);
    const [fix] = after.fixesFor(report!, report!.findings[0]!).fixes;
    expect(fix?.title).toMatch(/^Bridge this island \(.*\); leaves a long bridge$/);
    expect(fix?.brings[0]).toEqual({ check: 'long-bridge', message: expect.stringContaining('mm long') });
  });

  it.each(['numeral-post.svg', ...(isThorough ? ['sun.svg', 'waymarker.svg'] : [])])(
    'takes no fix from %s of the demo',
    (name) => {
      const kinds = fixesIn(before, alone(before, demo(name)));
      expect(kinds.length).toBeGreaterThan(0);
      expect(fixesIn(after, alone(after, demo(name)))).toEqual(kinds);
    },
    PROVING,
  );

  it.runIf(isThorough)(
    'takes no fix from the project of the demo',
    () => {
      const kinds = fixesIn(before, trail(before));
      expect(kinds).toHaveLength(4);
      expect(fixesIn(after, trail(after))).toEqual(kinds);
    },
    PROVING,
  );

  it('is in the schema, in the SARIF rules and in the table of the README', async () => {
    const { schemaText, tableRows } = await import('../../../src/build/check-docs');
    const { properties, definitions } = JSON.parse(schemaText()) as {
      properties: Record<'checks' | 'accept', { properties: Record<string, { description: string }> }>;
      definitions: { checkId: { anyOf: { enum?: string[] }[] } };
    };
    const { id, summary } = longBridge.meta;
    expect(properties.checks.properties[id]?.description).toBe(summary);
    expect(properties.accept.properties[id]?.description).toContain(summary);
    expect(definitions.checkId.anyOf[0]?.enum).toContain(id);
    expect(tableRows()).toContain(
      '| [long-bridge](src/checks/long-bridge/README.md) | a long tie sags, and paint creeps under it | |',
    );
    const { formatSarif } = await import('../../../src/format/sarif');
    const log = JSON.parse(formatSarif(input([]))) as Log;
    expect(log.runs[0]?.tool.driver.rules).toContainEqual(
      expect.objectContaining({ id, shortDescription: { text: summary } }),
    );
  });

  it('can be set and accepted in tombolo.json, and by a comment', () => {
    const text = '{"checks": {"long-bridge": "error"}, "accept": {"long-bridge": "it is taped"}}';
    expect(after.readConfig(text).problems).toEqual([]);
    expect(before.readConfig(text).problems).toHaveLength(2);
    const comment = wide.replace('<path', '<!-- tombolo accept long-bridge: taped --><path');
    const messages = after.check(comment).findings.map(({ message }) => message);
    expect(messages.join()).not.toContain('There is no check');
  });
});
