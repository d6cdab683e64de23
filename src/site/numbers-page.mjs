// Where each number comes from: the table of materials with its sources, and the strip that says better.
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { root } from '../build/bundles.mjs';

const FIGURES = {
  bridge: 'least bridge, mm',
  opening: 'least opening, mm',
  kerf: 'kerf of a laser, mm',
  thickness: 'thickness, mm',
  stiffness: 'stiffness, MPa',
  density: 'density, kg/m³',
};

export function numbersPage({ STRIP: { widths } }) {
  const read = (name) => JSON.parse(readFileSync(path.join(root, 'src/config', name), 'utf8'));
  const materials = Object.entries(read('materials.json'));
  const names = Object.keys(FIGURES);
  const table = [
    `| material | ${names.map((name) => FIGURES[name]).join(' | ')} | laser |`,
    `|---|${names.map(() => '--:').join('|')}|---|`,
    ...materials.map(
      ([id, each]) => `| \`${id}\`<br>${each.title} | ${names.map((name) => each[name]).join(' | ')} | ${each.laser} |`,
    ),
  ].join('\n');
  const sourced = Object.entries(read('material-sources.json')).flatMap(([id, sources]) =>
    Object.entries(sources)
      .filter(([, source]) => source !== 'common practice, no source')
      .map(([figure, source]) => `| \`${id}\` | ${figure} | ${source} |`),
  );
  return `---
title: Where each number comes from
description: The limits by material with their sources, and a test strip that tells the limits of your own sheet.
section: reference
order: 2
permalink: numbers/index.html
---

Limits come from \`limits\` in \`tombolo.json\`, else from the material. The figures are common practice without a source but where one is
named below, and no standard. Your own sheet, blade or beam, and paint decide: cut the strip.

## A test strip

<figure class="strip"><img src="/files/test-strip.svg" alt="A strip with bridges in the upper row and slots in the lower one, from ${widths[0]} to ${widths.at(-1)} mm"></figure>

1. Take [test-strip.svg](/files/test-strip.svg), or write it with the command below. It holds bridges and slots from
   ${widths[0]} to ${widths.at(-1)} mm.
2. Cut it from the sheet that you will use, with the settings that you will use, and spray through it.
3. Read off the narrowest bridge that held and the narrowest slot that painted cleanly, and write both into \`tombolo.json\`.

\`\`\`sh
tombolo strip --out strip.svg
tombolo strip --bridge 0.7mm --opening 0.5mm
\`\`\`

Never leave a laser unattended, keep a fire extinguisher at hand and the extraction on. The machine's manual, the workshop's rules and
local codes go before anything said here.

## By material

${table}

*ask*: cut it with a laser only where the workshop agrees; workshops differ. *never*: it gives off what harms people or the machine.

## Sources

All figures that are not listed are common practice without a source.

| material | figure | source |
|---|---|---|
${sourced.join('\n')}

## Other figures

- Slip, how far a sheet may land off its place: 0.5 mm for sheets laid by hand against a corner (common practice, no source).
- How far a tongue may lift, and how that is worked out: [loose-tongue](/checks/loose-tongue/).
- What a limit is compared with: [the words and measures](/glossary/).
`;
}
