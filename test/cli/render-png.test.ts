import { describe, expect, it, test } from 'vitest';
import { pixelWidth, renderPng } from '../../src/cli/render-png';

describe('pixelWidth', () => {
  it('takes 10 pixels to the mm, fewer for what is larger than 600 mm', () => {
    expect(pixelWidth({ width: 148, height: 105, scale: undefined })).toBe(1480);
    expect(pixelWidth({ width: 1200, height: 300, scale: undefined })).toBe(6000);
    expect(pixelWidth({ width: 300, height: 1200, scale: undefined })).toBe(1500);
  });

  it('refuses too many pixels and none at all', () => {
    expect(() => pixelWidth({ width: 148, height: 105, scale: 200 })).toThrow(/29600 × 21000 pixels.*smaller --scale/);
    expect(() => pixelWidth({ width: 148, height: 105, scale: 0.001 })).toThrow(/larger --scale/);
    expect(() => pixelWidth({ width: 0, height: 0, scale: undefined })).toThrow(/no pixels/);
  });
});

test('renderPng writes the size into the header (PNG specification, section 11.2.2: IHDR)', async () => {
  const svg = '<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="40mm" viewBox="0 0 60 40"/>';
  const png = await renderPng(svg, { width: 60, height: 40, scale: 4 });
  expect(png.subarray(0, 8).toString('hex')).toBe('89504e470d0a1a0a');
  expect([png.readUInt32BE(16), png.readUInt32BE(20)]).toEqual([240, 160]);
});
