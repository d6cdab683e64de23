/** The README taken apart: what it shows as commands, programs and settings, and what it names. */
import { readFileSync } from 'node:fs';
import path from 'node:path';

export const ROOT = path.resolve(import.meta.dirname, '../../..');
export const README = readFileSync(path.join(ROOT, 'README.md'), 'utf8');

const FENCE = /^```(\w+)\n([\s\S]*?)^```$/gm;

/** The texts of all blocks in a language. */
export function blocks(language: string, text = README): string[] {
  return [...text.matchAll(FENCE)].filter(([, name]) => name === language).map(([, , content = '']) => content);
}

/** What stands between single backticks, outside of blocks. */
export function inlineCode(text = README): string[] {
  return [...text.replace(FENCE, '').matchAll(/(`+) ?([^`\n]+?) ?\1/g)].map(([, , content = '']) => content);
}

/** Whole command lines, without their comments: of the blocks, and those in sentences that state what they work on. */
export function commandLines(text = README): string[] {
  const shown = blocks('sh', text).flatMap((block) => block.split('\n'));
  const told = inlineCode(text).filter(
    (code) => /^tombolo \w+ .*\w/.test(code) && !/^tombolo \w+ --[\w-]+$/.test(code),
  );
  return [...shown, ...told]
    .filter((line) => line.startsWith('tombolo '))
    .map((line) =>
      line
        .replace(/\s+(?:#\s.*|…)$/, '')
        .replace(/\s+#\s.*$/, '')
        .trim(),
    );
}

/** Settings in sentences: `"kerf": "0.1mm"`, `{ "loose-tongue": "hint" }`. */
export function inlineSettings(text = README): string[] {
  return inlineCode(text)
    .filter((code) => /^[{]? ?"[\w-]+": /.test(code))
    .map((code) => (code.startsWith('{') ? code : `{ ${code} }`));
}

/** Where links and pictures lead, as they are written. */
export function links(text = README): string[] {
  return [...text.replace(FENCE, '').matchAll(/\]\(([^)\s]+)\)/g)].map(([, target = '']) => target);
}

/** The anchors that headings give, as the hosts of repositories make them. */
export function anchors(text = README): string[] {
  return [...text.replace(FENCE, '').matchAll(/^#+ (.+)$/gm)].map(([, heading = '']) =>
    heading
      .toLowerCase()
      .replace(/[^\w\- ]/g, '')
      .replace(/ /g, '-'),
  );
}
