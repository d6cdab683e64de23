import { Parser } from 'htmlparser2';
import { expect, it as test } from 'vitest';
import { formatJunit } from '../../src/format/junit';
import { file, finding, input } from './made-files';

interface Element {
  readonly name: string;
  readonly attributes: Record<string, string>;
}

function elementsOf(xml: string): Element[] {
  const found: Element[] = [];
  const parser = new Parser(
    { onopentag: (name, attributes) => void found.push({ name, attributes }) },
    { xmlMode: true },
  );
  parser.end(xml);
  return found;
}

test('errors and warnings fail, a sound file passes', () => {
  const torn = file([finding(), finding({ severity: 'hint' })]);
  const found = elementsOf(formatJunit(input([torn, file([], { path: 'sun.svg' })])));
  const suites = found.filter(({ name }) => name === 'testsuite').map(({ attributes }) => attributes);
  expect(suites).toEqual([
    { name: 'heron.svg', tests: '1', failures: '1', errors: '0' },
    { name: 'sun.svg', tests: '1', failures: '0', errors: '0' },
  ]);
  expect(found.filter(({ name }) => name === 'failure').map(({ attributes }) => attributes.type)).toEqual([
    'thin-bridge',
  ]);
});

test('what could not be run is an error', () => {
  const xml = formatJunit(input([], { failures: ['a.svg: permission denied'] }));
  expect(elementsOf(xml).find(({ name }) => name === 'error')?.attributes).toEqual({
    message: 'a.svg: permission denied',
  });
});

test('names are escaped, and what XML cannot hold is taken out', () => {
  const xml = formatJunit(input([file([finding({ message: 'a<b>&"c"\u0001\ud800' })], { path: '<&".svg' })]));
  const [, suite, , failure] = elementsOf(xml);
  expect(suite?.attributes.name).toBe('<&".svg');
  expect(failure?.attributes.message).toMatch(/^a<b>&"c"/);
  expect(xml).not.toMatch(/[\u0000-\u0008]|\p{Cs}/u);
});
