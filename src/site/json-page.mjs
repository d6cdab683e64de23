// What `tombolo check --format json` prints, key by key, with an example that is made when the pages are.
import { spawnSync } from 'node:child_process';
import path from 'node:path';

export function jsonPage(command, here) {
  const words = [command, 'check', 'thin-bridge.svg', '--format', 'json', '--mends'];
  const { stdout } = spawnSync(process.execPath, words, { cwd: path.join(here, 'examples'), encoding: 'utf8' });
  // One finding with one fix shows every key.
  const report = JSON.parse(stdout);
  for (const file of report.files) {
    file.findings = file.findings.slice(0, 1);
    for (const finding of file.findings) {
      finding.mends = finding.mends.slice(0, 1);
      finding.related = finding.related.slice(0, 1);
    }
  }
  return `---
title: JSON output
description: What tombolo check --format json prints, for programs.
section: reference
order: 4
permalink: json/index.html
---

\`\`\`sh
tombolo check --format json --output-file findings.json
\`\`\`

One object. Its shape is a contract: keys are added, never changed or taken away.

| key | is |
|---|---|
| \`version\` | 1 |
| \`files\` | each file that was checked, with \`path\`, \`size\` in mm, \`layers\` and \`findings\` |
| \`summary\` | how many findings there are of each severity |
| \`errors\` | what could not be read or worked out; then the run ended with 2, and the other files are there all the same |
| \`passedByBaseline\` | how many findings the baseline let pass |

Of a finding:

| key | is |
|---|---|
| \`check\`, \`severity\` | the check's name, and \`error\`, \`warning\`, \`info\` or \`hint\` |
| \`message\`, \`detail\` | the fact with its measure and limit; why, and every cure |
| \`layer\` | the name of its layer |
| \`range\` | where it stands in the text: \`line\` and \`character\` from zero, \`from\` and \`to\` in UTF-16 units |
| \`at\` | its place on the sheet, in mm from the upper left corner |
| \`measure\` | \`value\`, \`limit\` and \`unit\` |
| \`related\` | other places that belong to it |
| \`from\` | the line of a program that drew it, where that is known |
| \`mends\` | with \`--mends\`: fixes that were proven, each with its \`edits\` |
| \`refusals\` | fixes that were tried and cannot be made, with the reason |

\`\`\`json
${JSON.stringify(report, null, 2)}
\`\`\`
`;
}
