/** How long checks of pictures of two sizes take, and by what power they grow, beside @resvg/resvg-js's time to paint one. */
import { Resvg } from '@resvg/resvg-js';
import { check } from '../../src/engine/index';
import { growth, time } from './measure';

export function row(name: string, sizes: readonly [number, number], make: (count: number) => string): void {
  const [few, many] = sizes.map((size) => ({ size, svg: make(size) })) as [Sized, Sized];
  const [first, last] = [few, many].map(({ size, svg }) => ({ size, time: time(() => check(svg)) })) as [Timed, Timed];
  const renderer = time(() => new Resvg(many.svg, { fitTo: { mode: 'width', value: 1024 } }).render().asPng());
  console.log(
    `check of ${many.size} ${name}: ${last.time.toFixed(1)} ms, growth exponent from ${few.size}: ` +
      `${growth(first, last).toFixed(2)}; resvg ${renderer.toFixed(1)} ms`,
  );
}

interface Sized {
  readonly size: number;
  readonly svg: string;
}

interface Timed {
  readonly size: number;
  readonly time: number;
}
