/** `--explain`: what a check looks for, from its own page. */
import { readFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { defined } from '../../base/defined';
import { RULES } from '../../format/rules';

/** The page in Markdown; where the pages were not installed, its three sentences. */
export async function explanationOf(check: string): Promise<string> {
  try {
    return await readFile(join(dirname(__filename), 'checks', `${check}.md`), 'utf8');
  } catch {
    const { id, summary, why, help } = defined(RULES.find((rule) => rule.id === check));
    return `# ${id}\n\n${[...new Set([summary, why, help])].join('\n\n')}\n`;
  }
}
