/** @lezer/xml as a second reader of well-formed files: the same elements at the same places. */
import { readdirSync, readFileSync } from 'node:fs';
import { parser } from '@lezer/xml';
import { expect, test } from 'vitest';
import { parseMarkup } from '../../src/markup/parse';
import { allElements } from '../../src/markup/query';

const FOLDER = new URL('../../node_modules/@mdi/svg/svg/', import.meta.url);
const nested =
  "<?xml version='1.0'?>\n<!-- é -->\n<svg xmlns=\"S\" xmlns:a='A'>\r\n" +
  '<a:g  a:b = \'1>2\'\n c="🦩"><p d="M0 0\n1 1"/><!-- <x/> --></a:g>' +
  '<style><![CDATA[<y/>]]></style ><t>&amp;é</t></svg>\n';

/** Each element as [from, to], each attribute as [from, to, value], in the order of the text. */
function withLezer(text: string): number[][] {
  const found: number[][] = [];
  parser.parse(text).iterate({
    enter({ name, from, to }) {
      if (name === 'Element') found.push([0, from, to]);
      if (name === 'TagName') found.push([1, from, to]);
      if (name === 'AttributeName') found.push([2, from, to]);
      if (name === 'AttributeValue') found.push([3, from + 1, to - 1]);
    },
  });
  return found.sort(inOrder);
}

function withOurs(text: string): number[][] {
  const found: number[][] = [];
  for (const { span, nameSpan, endTag, name, attributes } of allElements(parseMarkup(text))) {
    found.push([0, span.from, span.to], [1, nameSpan.from, nameSpan.to]);
    if (endTag !== undefined) found.push([1, endTag.from + 2, endTag.from + 2 + name.length]);
    for (const { nameSpan: label, valueSpan } of attributes) {
      found.push([2, label.from, label.to], [3, valueSpan.from, valueSpan.to]);
    }
  }
  return found.sort(inOrder);
}

function inOrder(a: number[], b: number[]): number {
  return a[1]! - b[1]! || a[0]! - b[0]!;
}

test('finds the same in a file with most kinds of markup', () => {
  expect(parseMarkup(nested).problems).toEqual([]);
  expect(withOurs(nested)).toEqual(withLezer(nested));
});

test('finds the same in published icons', () => {
  const names = readdirSync(FOLDER).filter((_, index) => index % 25 === 0);
  expect(names.length).toBeGreaterThan(200);
  for (const name of names) {
    const text = readFileSync(new URL(name, FOLDER), 'utf8');
    expect(parseMarkup(text).problems, name).toEqual([]);
    expect(withOurs(text), name).toEqual(withLezer(text));
  }
});
