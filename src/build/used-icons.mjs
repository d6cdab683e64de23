// Of the editor's icons, the style sheets and their font hold those that our pages name: a tenth of them.
import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';

// Its modules have a default export or none, depending on who loads them.
const { Font, Glyph, parse } = createRequire(import.meta.url)('opentype.js');

/** A rule of the icons' style sheet: its name and the code of its character. */
const ICON = /^\.codicon-([\w-]+):before \{ content: "\\([\da-f]+)" \}\n/gm;

/** A word alone in quotation marks, or behind what all icons' classes begin with. */
const NAMED = /(?<=['"]|codicon-)(?!codicon)[a-z][a-z-]*(?=['"]| codicon-)/g;

/**
 * Names of icons that stand in the sources of the pages, in quotation marks or within a class. A word that is no icon there but
 * has the name of one is taken for it.
 * @param root the repository's @param names of all icons there are
 */
export function iconsIn(root, names) {
  const texts = sourcesOf(root).map((file) => readFileSync(file, 'utf8'));
  const words = new Set(texts.flatMap((text) => text.match(NAMED) ?? []));
  return names.filter((name) => words.has(name));
}

function sourcesOf(root) {
  const pages = path.join(root, 'src/preview');
  const names = readdirSync(pages, { recursive: true, encoding: 'utf8' });
  return names.filter((name) => name.endsWith('.ts')).map((name) => path.join(pages, name));
}

/** The code of each icon of a style sheet by its name. */
export function codesOf(css) {
  return new Map([...css.matchAll(ICON)].map(([, name, code]) => [name, Number.parseInt(code, 16)]));
}

/** A font of some of the characters of another one. @param bytes of a TrueType font @param codes of the characters */
export function partOfFont(bytes, codes) {
  const whole = parse(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength));
  const { unitsPerEm, ascender, descender } = whole;
  const none = new Glyph({ name: '.notdef', advanceWidth: unitsPerEm, path: whole.glyphs.get(0).path });
  const glyphs = [...new Set(codes)]
    .sort((a, b) => a - b)
    .map((code) => {
      const { name, advanceWidth, path: outline } = whole.charToGlyph(String.fromCodePoint(code));
      return new Glyph({ name, unicode: code, advanceWidth, path: outline });
    });
  const font = new Font({
    familyName: 'codicon',
    styleName: 'Regular',
    unitsPerEm,
    ascender,
    descender,
    glyphs: [none, ...glyphs],
  });
  return new Uint8Array(font.toArrayBuffer());
}

/** A plugin of esbuild. @param root the repository's */
export function usedIcons(root) {
  let used;
  const read = (css) => {
    const codes = codesOf(css);
    used = new Map(iconsIn(root, [...codes.keys()]).map((name) => [name, codes.get(name)]));
    return used;
  };
  return {
    name: 'used-icons',
    setup({ onLoad }) {
      onLoad({ filter: /codicon\.css$/ }, ({ path: file }) => {
        const css = readFileSync(file, 'utf8');
        const icons = read(css);
        return { contents: css.replace(ICON, (rule, name) => (icons.has(name) ? rule : '')), loader: 'css' };
      });
      onLoad({ filter: /codicon\.ttf$/ }, ({ path: file }) => {
        const icons = used ?? read(readFileSync(file.replace(/ttf$/, 'css'), 'utf8'));
        return { contents: partOfFont(readFileSync(file), [...icons.values()]), loader: 'file' };
      });
    },
  };
}
