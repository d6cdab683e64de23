/** What is made of the checks' own words when the package is built: the schema that ships, and the README's table. */
import type { CheckMeta } from '../checks/meta';
import { configSchema } from '../config/schema';
import { ALL_METAS } from '../engine/check/known-checks';

/** The text of `tombolo.schema.json`. */
export function schemaText(checks: readonly CheckMeta[] = ALL_METAS): string {
  return `${JSON.stringify(configSchema(checks), null, 2)}\n`;
}

/** The rows of the README's table of findings, in Markdown, one for each check that has a row. */
export function tableRows(checks: readonly CheckMeta[] = ALL_METAS): string[] {
  return checks.flatMap(({ id, row }) =>
    row ? [`| [${id}](src/checks/${id}/README.md) | ${row.wrong} | ${row.click === '' ? '' : `${row.click} `}|`] : [],
  );
}
