import { expect, test } from 'vitest';
import { circlesOf } from './circles';

const graph = (edges: Readonly<Record<string, string>>) =>
  new Map(Object.entries(edges).map(([node, targets]) => [node, new Set(targets)]));

test.each([
  ['a line', { a: 'b', b: 'c', c: '' }, []],
  ['two ways to one place', { a: 'bc', b: 'd', c: 'd', d: '' }, []],
  ['a node that leads to itself', { a: 'a' }, [['a']]],
  ['a circle met in its middle', { x: 'b', a: 'b', b: 'c', c: 'ad', d: '' }, [['a', 'b', 'c']]],
  [
    'two circles with a bridge',
    { a: 'b', b: 'ac', c: 'd', d: 'c' },
    [
      ['c', 'd'],
      ['a', 'b'],
    ],
  ],
  ['circles that share a node', { a: 'bc', b: 'a', c: 'a' }, [['a', 'b', 'c']]],
])('finds what there is in %s', (_, edges, circles) => {
  expect(circlesOf(graph(edges))).toEqual(circles);
});
