import { describe, expect, it } from 'vitest';
import { parseAspectRatio, parseViewBoxAttribute } from '../../../src/drawing/viewport/viewport';

describe('parseViewBoxAttribute', () => {
  it('four numbers, however they are divided', () => {
    expect(parseViewBoxAttribute(' 0,-1 2.5 , 3')).toEqual({ x: 0, y: -1, width: 2.5, height: 3 });
    expect(parseViewBoxAttribute('0-1.5.5 3')).toEqual({ x: 0, y: -1.5, width: 0.5, height: 3 });
  });

  it.each(['', '0 0 1', '0 0 1 2 3', '0 0 -1 1', 'a b c d', '0 0 1px 1', '0 0 1 1e999'])('refuses %j', (text) => {
    expect(parseViewBoxAttribute(text)).toBeUndefined();
  });
});

describe('parseAspectRatio', () => {
  it.each([
    ['none', undefined, false],
    ['xMidYMid', { x: 0.5, y: 0.5 }, false],
    ['xMinYMax slice', { x: 0, y: 1 }, true],
    ['defer xMaxYMin meet', { x: 1, y: 0 }, false],
  ])('%j', (text, align, slice) => {
    expect(parseAspectRatio(text)).toEqual({ align, slice });
  });

  it.each(['', 'xMid', 'XMIDYMID', 'xMidYMid cover', 'slice'])('refuses %j', (text) => {
    expect(parseAspectRatio(text)).toBeUndefined();
  });
});
