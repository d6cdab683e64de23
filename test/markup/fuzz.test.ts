/** Real files, cut and stirred: there is always a tree, and each span lies where it must. */
import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseMarkup, parseRootTag } from '../../src/markup/parse';
import { parsePathData } from '../../src/markup/path-data';
import { allElements } from '../../src/markup/query';
import type { Attribute, ElementNode, MarkupDocument } from '../../src/markup/tree';
import type { Span } from '../../src/text/text';

const FOLDER = new URL('../../node_modules/@mdi/svg/svg/', import.meta.url);

const icons = readdirSync(FOLDER)
  .filter((_, index) => index % 1000 === 0)
  .map((name) => readFileSync(new URL(name, FOLDER), 'utf8'));

const stack =
  '\uFEFF<?xml version="1.0"?>\r\n<!DOCTYPE svg [<!ENTITY ns "http://www.w3.org/2000/svg">' +
  " <!ENTITY st 'fill:#3b4a54'>]>\r\n" +
  '<svg xmlns="&ns;" xmlns:xlink="http://www.w3.org/1999/xlink" viewBox="0 0 148 105">\r\n' +
  '  <title>Reiher 🦩 &amp; Schilf</title>\r\n' +
  '  <style><![CDATA[ path > g { fill: red } ]]></style>\r\n  <!-- tombolo accept thin-bridge: é -->\r\n' +
  '  <g id=\'heron\'\tstyle="&st;">\r\n' +
  '    <path d="M0 0\r\n\tL10 10&#32;z"/><use xlink:href="#heron"/>\r\n  </g>\r\n</svg>\r\n';

const pieces = [
  ...['<', '>', '/', '"', "'", '=', '&', ';', '<!--', '-->', '<![CDATA[', ']]>', '<?', '?>', '</g>', '<g ', ' '],
  ...['<!DOCTYPE [', '\r\n', '🦩', '\ud83e', '\0', '&st;', 'xmlns:a="b"'],
];

const anyText = fc
  .tuple(
    fc.constantFrom(stack, ...icons),
    fc.array(fc.tuple(fc.nat(2000), fc.nat(12), fc.constantFrom('', ...pieces)), { minLength: 1, maxLength: 8 }),
  )
  .map(([text, edits]) =>
    edits.reduce((edited, [at, length, piece]) => {
      const from = at % (edited.length + 1);
      return edited.slice(0, from) + piece + edited.slice(from + length);
    }, text),
  );

function isWithin(inner: Span, outer: Span): boolean {
  return outer.from <= inner.from && inner.from <= inner.to && inner.to <= outer.to;
}

/** What is wrong with the places in a tree; nothing is expected. */
function misplaced(document: MarkupDocument): string[] {
  const wrong: string[] = [];
  const whole = { from: 0, to: document.text.length };
  const check = (fine: boolean, what: string): void => void (fine || wrong.push(what));
  const checkRow = (nodes: readonly { span: Span }[], outer: Span, what: string): void => {
    let done = outer.from;
    for (const { span } of nodes) {
      check(span.from >= done && isWithin(span, outer), what);
      done = span.to;
    }
  };
  checkRow(document.children, whole, 'top level');
  for (const { span } of document.problems) check(isWithin(span, whole), 'problem');
  for (const element of allElements(document)) {
    const { span, startTag, endTag, nameSpan, attributes, children, name } = element;
    check(isWithin(startTag, span) && isWithin(nameSpan, startTag) && startTag.from === span.from, `${name} start`);
    check(document.text.slice(nameSpan.from, nameSpan.to) === name, `${name} name`);
    check(endTag === undefined || (endTag.to === span.to && endTag.from >= startTag.to), `${name} end`);
    checkRow(attributes, { from: nameSpan.to, to: startTag.to }, `${name} attributes`);
    checkRow(children, { from: startTag.to, to: endTag?.from ?? span.to }, `${name} children`);
    check(
      children.every(({ parent }) => parent === element),
      `${name} parent`,
    );
    for (const one of attributes) check(isAttributeRight(one, element), `${name} ${one.name}`);
  }
  return wrong;
}

function isAttributeRight(one: Attribute, owner: ElementNode): boolean {
  let last = one.valueSpan.from;
  for (let index = 0; index <= one.value.length; index += 1) {
    const offset = one.textOffset(index);
    if (offset < last || offset > one.valueSpan.to) return false;
    last = offset;
  }
  const { owner: found, span, nameSpan, valueSpan } = one;
  return found === owner && last === valueSpan.to && isWithin(valueSpan, span) && isWithin(nameSpan, span);
}

function expectPlaced(text: string): void {
  expect(misplaced(parseMarkup(text))).toEqual([]);
}

describe('any text', () => {
  it('gives a tree with all spans nested and in order', () => {
    fc.assert(fc.property(anyText, expectPlaced), { numRuns: 3000 });
  });

  it('of pieces alone, too', () => {
    const anyPieces = fc
      .array(fc.constantFrom('a', 'x="1"', ...pieces), { maxLength: 30 })
      .map((parts) => parts.join(''));
    fc.assert(fc.property(anyPieces, expectPlaced), { numRuns: 5000 });
  });

  it('has the root tag, read alone, that it has in the tree', () => {
    const tagOf = (root: ElementNode | undefined) =>
      root && { name: root.name, attributes: root.attributes.map(({ name, value, span }) => ({ name, value, span })) };
    fc.assert(
      fc.property(
        fc.oneof(
          anyText,
          fc.array(fc.constantFrom(...pieces)).map((some) => some.join('a')),
        ),
        (text) => {
          expect(tagOf(parseRootTag(text))).toEqual(tagOf(parseMarkup(text).root));
        },
      ),
      { numRuns: 500 },
    );
  });

  it('cut off anywhere gives the elements before the cut', () => {
    const whole = [...allElements(parseMarkup(stack))];
    for (let length = 0; length <= stack.length; length += 1) {
      const document = parseMarkup(stack.slice(0, length));
      expect(misplaced(document)).toEqual([]);
      const complete = whole.filter(({ startTag }) => startTag.to <= length).map(({ name }) => name);
      const found = [...allElements(document)].map(({ name }) => name);
      expect(found.slice(0, complete.length)).toEqual(complete);
    }
  });

  it('with one quote taken out keeps the elements of all other tags', () => {
    for (const icon of ['<svg><path d="M0 0" fill="red"/>\n<g id="a"><rect x="1" y="2"/></g>\n<circle r="3"/></svg>']) {
      const names = [...allElements(parseMarkup(icon))].map(({ name }) => name);
      for (let at = icon.indexOf('"'); at >= 0; at = icon.indexOf('"', at + 1)) {
        const broken = icon.slice(0, at) + icon.slice(at + 1);
        expect(
          [...allElements(parseMarkup(broken))].map(({ name }) => name),
          broken,
        ).toEqual(names);
      }
    }
  });
});

describe('any path data', () => {
  it('gives spans in order, and numbers that are what is written', () => {
    const numbers = ['0', '1', '12.5', '-3', '.5', '1e-3', '123456789012345678'];
    const parts = [...'MmLlHhVvCcSsQqTtAaZz', ...numbers, ',', ' ', '\n', '#', '🦩'];
    const anyData = fc.array(fc.constantFrom(...parts), { maxLength: 60 }).map((written) => `M0 0${written.join('')}`);
    fc.assert(
      fc.property(anyData, (data) => {
        const { commands, error } = parsePathData(data);
        let done = 0;
        for (const { span, values, valueSpans } of commands) {
          expect(span.from).toBeGreaterThanOrEqual(done);
          values.forEach((value, index) => {
            const place = valueSpans[index]!;
            expect(place.from).toBeGreaterThanOrEqual(done);
            expect(Number(data.slice(place.from, place.to))).toBe(value);
            done = place.to;
          });
          done = span.to;
        }
        if (error !== undefined) expect(isWithin(error.span, { from: done, to: data.length })).toBe(true);
        else expect(data.slice(done).trim()).toBe('');
      }),
      { numRuns: 2000 },
    );
  });

  it('reads every number as the nearest double', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), fc.nat(12), (number, digits) => {
        for (const written of [String(number), number.toExponential(digits)]) {
          if (!Number.isFinite(Number(written))) continue;
          expect(parsePathData(`M0 ${written}`).commands[0]!.values[1]).toBe(Number(written));
        }
      }),
      { numRuns: 3000 },
    );
  });
});
