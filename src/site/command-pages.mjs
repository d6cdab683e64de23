// The command line's own help, command by command.
import { execFileSync } from 'node:child_process';

export function commandPages(command) {
  const help = (...words) =>
    execFileSync(process.execPath, [command, ...words, '--help'], {
      encoding: 'utf8',
      env: { ...process.env, NO_COLOR: '1', COLUMNS: '100' },
    }).trim();
  const whole = help();
  const [, listed = ''] = /\nCommands:\n([\s\S]*?)\n\n/.exec(whole) ?? [];
  const names = [...listed.matchAll(/^ {2}(\w+) /gm)].map(([, name]) => name);
  const parts = names.map((name) => `## tombolo ${name}\n\n\`\`\`text\n${help(name)}\n\`\`\``);
  return `---
title: Command line
description: Every command of tombolo with its options.
section: reference
order: 3
permalink: commands/index.html
---

\`\`\`text
${whole}
\`\`\`

${parts.join('\n\n')}
`;
}
