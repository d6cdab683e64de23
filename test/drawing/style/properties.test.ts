import { describe, expect, it } from 'vitest';
import { PROPERTIES, type PropertyName, parseFontSize } from '../../../src/drawing/style/properties';

const read = (name: PropertyName, text: string): unknown => PROPERTIES[name].parse(text);

describe('values', () => {
  it.each([
    ['opacity', '.5', 0.5],
    ['opacity', '150%', 1],
    ['opacity', '-1', 0],
    ['fill-rule', ' EvenOdd ', 'evenodd'],
    ['visibility', 'collapse', 'hidden'],
    ['stroke-linejoin', 'arcs', 'arcs'],
    ['stroke-miterlimit', '1', 1],
    ['display', 'inline', 'shown'],
    ['overflow', 'auto', 'visible'],
    ['overflow', 'scroll', 'hidden'],
    ['clip-path', 'none', null],
    ['clip-path', 'url("#a")', { target: '#a' }],
    ['clip-path', 'polygon(0 0)', 'shape'],
    ['marker-end', 'url( #a )', { target: '#a' }],
    ['mask', 'url(#m)', true],
    ['mask', 'none', false],
    ['paint-order', 'stroke', 'stroke-first'],
    ['paint-order', 'fill stroke', 'fill-first'],
    ['paint-order', 'markers stroke', 'stroke-first'],
    ['stroke-dasharray', 'none', []],
    ['stroke-dasharray', '0,0', []],
    ['stroke-width', '2mm', { value: 2, unit: 'mm' }],
    ['transform-box', 'fill-box', 'fill-box'],
    [
      'transform-origin',
      'top left',
      [
        { value: 0, unit: '%' },
        { value: 0, unit: '%' },
      ],
    ],
    [
      'transform-origin',
      '5px',
      [
        { value: 5, unit: 'px' },
        { value: 50, unit: '%' },
      ],
    ],
    ['fill', 'url(#a) none', { kind: 'server', target: '#a', fallback: { kind: 'none' } }],
    ['fill', 'context-fill', { kind: 'context', of: 'fill' }],
    ['fill', '#CD853F icc-color(x, 1)', { kind: 'colour', colour: { hex: '#cd853f', alpha: 1 } }],
    ['stop-color', 'rgb(0 128 0 / 50%)', { kind: 'colour', colour: { hex: '#008000', alpha: 0.5 } }],
  ] as const)('%s: %s', (name, text, expected) => {
    expect(read(name, text)).toEqual(expected);
  });

  it.each([
    ['opacity', 'half'],
    ['fill-rule', 'odd'],
    ['stroke-miterlimit', '.5'],
    ['stroke-width', '-1'],
    ['stroke-dasharray', '1 -2'],
    ['stroke-dasharray', 'a'],
    ['fill', 'rgb(a)'],
    ['fill', ''],
    ['transform-origin', 'middle'],
    ['paint-order', 'paint'],
    ['visibility', 'no'],
    ['marker-end', 'arrow'],
    ['fill', 'red blue'],
  ] as const)('%s refuses %s', (name, text) => {
    expect(read(name, text)).toBeUndefined();
  });

  it('font sizes', () => {
    expect(['12', '2em', '150%', 'large', 'larger', '-1', 'x'].map((text) => parseFontSize(text, 10))).toEqual([
      12,
      20,
      15,
      18,
      12,
      undefined,
      undefined,
    ]);
  });
});
