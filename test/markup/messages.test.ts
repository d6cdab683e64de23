/** What is told of markup, path data and lists that cannot be read: one short line each, however long the names are. */
import { describe, expect, it } from 'vitest';
import { parseTransformList } from '../../src/drawing/viewport/transform-list';
import { parseViewBoxNumbers, readPoints } from '../../src/markup/number-lists';
import { parseMarkup } from '../../src/markup/parse';
import { parsePathData } from '../../src/markup/path-data';

const LONGEST = 120;
const LONG = 'the-marsh-trail-from-the-weir-to-the-old-sluice-second-copy-of-layer-with-the-heron-and-the-reeds';
const DIGITS = '7'.repeat(150);

const MARKUP: readonly string[] = [
  '',
  'reeds',
  '<!-- reeds -->',
  '<svg/>reeds',
  `<svg><${LONG}></svg>`,
  `<svg><${LONG} fill</svg>`,
  `<svg ${LONG}/>`,
  `<svg ${LONG}=7/>`,
  `<svg ${LONG}="7/>`,
  `<svg ${LONG}="" ${LONG}=""/>`,
  `<svg ${LONG}:a=""/>`,
  `<svg xlink:href=""/>`,
  `<svg/><${LONG}/>`,
  `<svg></${LONG}></svg>`,
  `<${LONG}><svg></ ${LONG}>`,
  `<svg></svg ${LONG}>`,
  `<${LONG}></${LONG}`,
  `<${LONG}`,
  `<svg 7${LONG}=""/>`,
  '<svg a="<"/>',
  '<svg a=""b=""/>',
  '<svg / a=""/>',
  '<svg>< ]]> &</svg>',
  `<svg>&${LONG}; &#x1; &${LONG.slice(0, 50)};</svg>`,
  `<!DOCTYPE svg [<!ENTITY a "&a;"><!ENTITY far SYSTEM "far.txt">]><svg>&a;&far;</svg>`,
  '<!DOCTYPE svg',
  '<svg><!ELEMENT a></svg>',
  '<svg/><!-- a -- b -->',
  '<svg/><!-- a',
  '<svg><![CDATA[ a',
  '<svg/><?xml version="1.0"?>',
  '<svg/><?reeds',
  '<svg></>',
  '<svg>\u0001</svg>',
];

const PATHS: readonly string[] = [
  'L0 0',
  `${DIGITS} 0`,
  '#',
  'M0 0 L 20,20,30',
  'M0 0,',
  'M0 0 R 20',
  `M0 0z${DIGITS}`,
  'M0 0A1 1 0 0',
  'M0 0A1 1 🐦',
  'M0 0A1 1 0 2 0 5 5',
  'M0 0C1 1 2 2 3',
  'M0 0L1e999 0',
];

const TRANSFORMS: readonly string[] = [
  `${LONG}(1)`,
  '(1)',
  'rotate 7',
  'rotate(1',
  'rotate(1 2)',
  'matrix(1 2 3)',
  'translate(1 x)',
  'translate(🐦)',
];

const broken: readonly (readonly [string, readonly string[]])[] = [
  ...MARKUP.map((text) => [text, parseMarkup(text).problems.map(({ message }) => message)] as const),
  ...PATHS.map((text) => [text, told(parsePathData(text))] as const),
  ...TRANSFORMS.map((text) => [text, told(parseTransformList(text))] as const),
  ...['1 2', '1 2 3 x', '0 0 -1 1', '0 0 1,'].map((text) => [text, told(parseViewBoxNumbers(text))] as const),
  ...[DIGITS.slice(0, 60), '1 2 🐦'].map((text) => [text, told(readPoints(text))] as const),
];

function told({ error }: { readonly error?: { readonly message: string } | undefined }): string[] {
  return error ? [error.message] : [];
}

describe('messages of what cannot be read', () => {
  it.each(broken)('%j', (_, messages) => {
    expect(messages).not.toEqual([]);
    for (const message of messages) {
      expect(message.length).toBeLessThanOrEqual(LONGEST);
      expect(message).toMatch(/^[^\n“”‘’]*\.$/);
    }
  });
});
