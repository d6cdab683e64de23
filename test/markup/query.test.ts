import { expect, test } from 'vitest';
import { parseMarkup } from '../../src/markup/parse';
import {
  allElements,
  ancestors,
  attributeOf,
  childElements,
  nodeAt,
  textContent,
  XLINK_NAMESPACE,
} from '../../src/markup/query';

const text =
  `<svg xmlns:l="${XLINK_NAMESPACE}">` +
  '<title>He<b>ro</b>n<![CDATA[!]]></title><!-- c --><use l:href="#a" href="#b"/></svg>';
const document = parseMarkup(text);
const root = document.root!;

test('finds attributes by name and namespace', () => {
  const use = childElements(root)[1]!;
  expect(attributeOf(use, 'href')?.value).toBe('#b');
  expect(attributeOf(use, 'href', XLINK_NAMESPACE)?.value).toBe('#a');
  expect(attributeOf(use, 'x')).toBeUndefined();
});

test('goes over all elements in order, and up again', () => {
  expect([...allElements(document)].map(({ name }) => name)).toEqual(['svg', 'title', 'b', 'use']);
  expect([...ancestors(nodeAt(document, text.indexOf('ro'))!)].map(({ name }) => name)).toEqual(['b', 'title', 'svg']);
});

test('gathers text', () => expect(textContent(root)).toBe('Heron!'));

test('finds the innermost node at each offset', () => {
  for (let offset = 0; offset < text.length; offset += 1) {
    const all = [...allElements(document)].flatMap((element) => [element, ...element.children]);
    const holding = all.filter(({ span }) => span.from <= offset && offset < span.to);
    const innermost = holding.reduce((a, b) => (b.span.to - b.span.from < a.span.to - a.span.from ? b : a));
    expect(nodeAt(document, offset)).toBe(innermost);
  }
  expect(nodeAt(document, text.length)).toBeUndefined();
});

test('reads deep trees without recursion', () => {
  const deep = parseMarkup('<g>'.repeat(50_000) + 'x' + '</g>'.repeat(50_000));
  expect(textContent(deep.root!)).toBe('x');
  expect([...allElements(deep)]).toHaveLength(50_000);
  expect([...ancestors(nodeAt(deep, 150_000)!)]).toHaveLength(50_000);
});
