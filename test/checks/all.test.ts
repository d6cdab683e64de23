/** Every check is whole: its folder, its page with all headings, its place in the list and in the schema. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { ALL_CHECKS } from '../../src/checks/all';
import { CHECK_IDS, SEVERITIES, UNACCEPTABLE } from '../../src/config/check-id';
import { MATERIALS } from '../../src/config/material';
import schema from '../../src/config/tombolo.schema.json';

const folder = path.resolve(__dirname, '../../src/checks');
const folders = readdirSync(folder, { withFileTypes: true })
  .filter((each) => each.isDirectory())
  .map(({ name }) => name);

describe('the checks', () => {
  it('are those that have a folder', () => {
    expect(ALL_CHECKS.map(({ id }) => id).sort()).toEqual(folders.sort());
  });

  it.each(folders)('%s has its code, its tests and a page with all headings', (id) => {
    expect(existsSync(path.join(folder, id, 'check.ts'))).toBe(true);
    expect(existsSync(path.join(__dirname, id, 'check.test.ts'))).toBe(true);
    const page = readFileSync(path.join(folder, id, 'README.md'), 'utf8');
    expect(page.match(/^#+ .*/gm)).toEqual([
      `# ${id}`,
      '## Why it matters',
      '## How to mend it',
      '## Limits of the check',
    ]);
  });

  it('and the materials are the ones the schema knows', () => {
    expect(Object.keys(schema.properties.checks.properties).sort()).toEqual([...CHECK_IDS].sort());
    expect(Object.keys(schema.properties.accept.properties).sort()).toEqual(
      CHECK_IDS.filter((id) => !UNACCEPTABLE.includes(id)).sort(),
    );
    expect(schema.definitions.checkId.anyOf[0]?.enum).toEqual(CHECK_IDS);
    expect(schema.definitions.severity.anyOf[0]?.enum).toEqual([...SEVERITIES, 'off']);
    expect(schema.properties.material.anyOf[0]?.enum).toEqual(Object.keys(MATERIALS));
    // Draft 7 ignores whatever stands beside a $ref, descriptions too.
    expect(JSON.stringify(schema)).not.toMatch(/"\$ref":"[^"]*",|,"\$ref":/);
  });
});
