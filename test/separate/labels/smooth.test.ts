import { describe, expect, it } from 'vitest';
import { smoothLabels } from '../../../src/separate/labels/smooth';
import type { Rgb } from '../../../src/separate/raster';
import { painted } from '../pictures';

const BLACK: Rgb = [20, 20, 20];
const WHITE: Rgb = [240, 240, 240];
const ORANGE: Rgb = [230, 120, 20];

describe('smoothed labels', () => {
  it('are those of the nearest colour, also where all are far', () => {
    const picture = painted(60, 60, (x) => (x < 30 ? ORANGE : BLACK));
    for (const colours of [
      [BLACK, WHITE],
      [WHITE, BLACK],
    ]) {
      const { labels } = smoothLabels(picture, colours, 2);
      expect(labels[30 * 60 + 10]).toBe(colours.indexOf(WHITE));
      expect(labels[30 * 60 + 50]).toBe(colours.indexOf(BLACK));
    }
  });

  it('have no grain: a glint wins nothing round it', () => {
    const glint = painted(60, 60, (x, y) => (x === 30 && y === 30 ? WHITE : BLACK));
    expect(new Set(smoothLabels(glint, [BLACK, WHITE], 2).labels)).toEqual(new Set([0]));
  });
});
