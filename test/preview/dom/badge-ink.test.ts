import fc from 'fast-check';
import { expect, test } from 'vitest';
import { inkOn, luminance, type Rgb } from '../../../src/preview/dom/badge-ink';

const channel = fc.integer({ min: 0, max: 255 });
const INKS = { '#000000': 0, '#ffffff': 1 } as const;

test('ink stands out from any colour by 4.5 : 1', () => {
  fc.assert(
    fc.property(fc.tuple(channel, channel, channel), (colour: Rgb) => {
      const [paint, ink] = [luminance(colour), INKS[inkOn(colour)]];
      expect((Math.max(paint, ink) + 0.05) / (Math.min(paint, ink) + 0.05)).toBeGreaterThan(4.5);
    }),
  );
});

test('is the luminance of the standard', () => {
  expect(luminance([255, 255, 255])).toBeCloseTo(1, 9);
  expect(luminance([255, 0, 0])).toBeCloseTo(0.2126, 9);
  expect(luminance([119, 119, 119])).toBeCloseTo(0.1845, 3);
});
