// A page for each check: its own words, an example before and after, and the commands.
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { root } from '../build/bundles.mjs';

const SEVERITY = { error: 'error', warning: 'warning', info: 'information', hint: 'hint' };

export function checkPages({ CHECKS, checkExample }, here) {
  const readme = readFileSync(path.join(root, 'README.md'), 'utf8');
  // As the README tells them: what comes up most stands first.
  const placeOf = ({ id }) => readme.indexOf(`| [${id}]`);
  const shown = CHECKS.filter(({ wrong }) => wrong !== undefined).sort((a, b) => placeOf(a) - placeOf(b));
  const examples = new Map(shown.map(({ id }) => [id, checkExample(filesOf(id, path.join(here, 'examples')))]));
  const pages = shown.flatMap((check, order) => {
    const example = examples.get(check.id);
    return [
      { path: `checks/${check.id}.md`, contents: page(check, example, order) },
      { path: `checks/${check.id}/before.svg`, contents: example.before.picture },
      { path: `checks/${check.id}/after.svg`, contents: example.after.picture },
    ];
  });
  return [
    ...pages,
    { path: 'checks/index.md', contents: overview(shown) },
    { path: 'checks/unreadable-config.md', contents: configPage() },
  ];
}

function filesOf(id, folder) {
  const read = (name) =>
    existsSync(path.join(folder, name)) ? readFileSync(path.join(folder, name), 'utf8') : undefined;
  return {
    id,
    before: read(`${id}.svg`),
    after: read(`${id}.fixed.svg`),
    config: read(`${id}.json`),
    configAfter: read(`${id}.fixed.json`),
  };
}

/** The words of the check's own page, with links as they lie on the site. */
function wordsOf(file) {
  return readFileSync(path.join(root, file), 'utf8')
    .replace(/^# .*\n/, '')
    .replace(/\]\(\.\.\/([\w-]+)\/README\.md\)/g, '](/checks/$1/)')
    .replaceAll('](../../../media/', '](/media/');
}

function page({ id, summary, severity }, example, order) {
  const [lead = '', ...rest] = wordsOf(`src/checks/${id}/README.md`).trim().split('\n\n');
  return `---
title: ${id}
description: ${JSON.stringify(summary)}
section: checks
order: ${order}
permalink: checks/${id}/index.html
---

<p class="lead">${lead}</p>

<p class="tag ${severity}">${SEVERITY[severity]} by default</p>

<div class="pair">
<figure><img src="/checks/${id}/before.svg" alt="Before: ${escaped(example.message)}"><figcaption>Before</figcaption></figure>
<figure><img src="/checks/${id}/after.svg" alt="After: nothing is found any more"><figcaption>After${
    example.fix ? `: <strong>${escaped(example.fix)}</strong>` : ', by hand'
  }</figcaption></figure>
</div>

\`\`\`text
${example.message}
\`\`\`

${rest.join('\n\n')}

## The command

\`\`\`sh
tombolo check drawing.svg --only ${id}
tombolo check --explain ${id}
\`\`\`

${looksTheSame(example) ? 'Both look the same: what differs stands in the file.\n\n<details open>' : '<details>'}
<summary>The drawing of the example, before and after</summary>

${source(example.before, 'Before')}

${example.before.text === example.after.text && example.before.config === example.after.config ? '' : source(example.after, 'After')}

</details>
`;
}

const looksTheSame = ({ before, after }) => before.picture === after.picture;

function source({ text, config }, when) {
  const settings = config === undefined ? '' : `\n\n\`\`\`json\n${config.trim()}\n\`\`\``;
  return `${when}:\n\n\`\`\`xml\n${text.trim()}\n\`\`\`${settings}`;
}

function overview(checks) {
  const rows = checks.map(({ id, wrong, click }) => `| [${id}](/checks/${id}/) | ${wrong} | ${click} |`);
  return `---
title: What it finds
description: Each check, what goes wrong in card and paint, and what one click does about it.
section: checks
order: -1
permalink: checks/index.html
---

Every finding says the fact, the measure and the limit, and stands at the very commands of your file that draw it.

| check | what goes wrong in card and paint | one click |
|---|---|---|
${rows.join('\n')}

What cannot be understood of \`tombolo.json\` is told as [unreadable-config](/checks/unreadable-config/).
`;
}

function configPage() {
  return `---
title: unreadable-config
description: Something in tombolo.json that is not understood.
permalink: checks/unreadable-config/index.html
---

${wordsOf('src/config/README.md')}
All keys: [tombolo.json](/config/).
`;
}

const escaped = (text) => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('"', '&quot;');
