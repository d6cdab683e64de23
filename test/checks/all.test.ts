/**
 * Every check is whole: its folder, its page with all headings, its place in the list, and what is made of its words.
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { makeSchema } from '../../src/build/bundles.mjs';
import { schemaText, tableRows } from '../../src/build/check-docs';
import { ALL_CHECKS } from '../../src/checks/all';
import type { StackStencil } from '../../src/checks/check';
import { SEVERITIES } from '../../src/config/check-id';
import { limitsOf } from '../../src/config/limits';
import { MATERIALS } from '../../src/config/material';
import { configSchema } from '../../src/config/schema';
import { checkProject } from '../../src/engine/check/check-project';
import { ALL_METAS, readConfig } from '../../src/engine/check/known-checks';
import { projectFiles } from '../../src/engine/check/project-layers';
import { sourcesOf } from '../../src/sheet/source-index';

const root = path.resolve(__dirname, '../..');
const schema = configSchema(ALL_METAS);
const folder = path.resolve(__dirname, '../../src/checks');
const folders = readdirSync(folder, { withFileTypes: true })
  .filter((each) => each.isDirectory())
  .map(({ name }) => name);

describe('the checks', () => {
  it('are those that have a folder', () => {
    expect(ALL_CHECKS.map(({ meta }) => meta.id).sort()).toEqual(folders.sort());
  });

  it.each(folders)('%s has its code, its tests and a page with all headings', (id) => {
    expect(existsSync(path.join(folder, id, 'check.ts'))).toBe(true);
    expect(existsSync(path.join(__dirname, id, 'check.test.ts'))).toBe(true);
    const page = readFileSync(path.join(folder, id, 'README.md'), 'utf8');
    expect(page.match(/^#+ .*/gm)).toEqual([
      `# ${id}`,
      '## Why it matters',
      '## How to fix it',
      '## Limits of the check',
    ]);
  });

  it('say what a change brings that they come of, as the end of a sentence', () => {
    const unlike = ALL_METAS.filter(({ outcome }) => !/^(leave|make|bring|take) [^.]*[^.\s]$/.test(outcome));
    expect(unlike.map(({ id }) => id)).toEqual([]);
  });

  it('and the materials are the ones the schema knows', () => {
    const ids = ALL_METAS.map(({ id }) => id);
    expect(Object.keys(schema.properties.checks.properties)).toEqual(ids);
    const unacceptable = ['unreadable-markup', 'unreadable-path', 'unused-acceptance', 'unfinished', 'internal'];
    expect(Object.keys(schema.properties.accept.properties)).toEqual(ids.filter((id) => !unacceptable.includes(id)));
    expect(schema.definitions.checkId.anyOf[0].enum).toEqual(ids);
    expect(schema.definitions.checkId.anyOf[0].enumDescriptions).toEqual(ALL_METAS.map(({ summary }) => summary));
    expect(schema.definitions.severity.anyOf[0]?.enum).toEqual([...SEVERITIES, 'off']);
    expect(schema.properties.material.anyOf[0]?.enum).toEqual(Object.keys(MATERIALS));
    // Draft 7 ignores whatever stands beside a $ref, descriptions too.
    expect(JSON.stringify(schema)).not.toMatch(/"\$ref":"[^"]*",|,"\$ref":/);
  });

  it('are in the schema that ships', async () => {
    const made = await makeSchema();
    expect(path.basename(made.path)).toBe('tombolo.schema.json');
    expect(made.contents).toBe(schemaText());
    expect(JSON.parse(made.contents)).toEqual(schema);
  });

  it('are in the table of the README, in their own words', () => {
    const readme = readFileSync(path.join(root, 'README.md'), 'utf8');
    const rows = readme.match(/^\| \[[\w-]+\]\(src\/checks\/.*\|$/gm);
    expect(rows?.sort()).toEqual(tableRows().sort());
    expect(rows).toHaveLength(ALL_CHECKS.length);
  });

  it('that read their file alone do not look at the stack', () => {
    const demo = path.join(root, 'media/demo/trail');
    const { config } = readConfig(readFileSync(path.join(demo, 'tombolo.json'), 'utf8'));
    const texts = projectFiles(config).map((name) => [name, readFileSync(path.join(demo, name), 'utf8')] as const);
    const project = checkProject(new Map(texts), { config });
    const looks = new Set<string>();
    for (const [file, { drawing, sheets }] of project.files) {
      for (const { meta, run } of ALL_CHECKS) {
        const stencil: StackStencil = {
          ...{ drawing, sheets, config, file, limits: limitsOf(config), sources: sourcesOf },
          get stack() {
            looks.add(meta.id);
            return project.stack;
          },
        };
        expect([...run(stencil)].length).toBeGreaterThanOrEqual(0);
      }
    }
    const saySo = ALL_CHECKS.filter(({ meta }) => meta.reads === 'stack').map(({ meta }) => meta.id);
    expect([...looks].sort()).toEqual(saySo.sort());
  });
});
