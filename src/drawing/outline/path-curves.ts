/** The curves of path data. */
import type { PathError } from '../../markup/path-commands';
import { readPathData } from '../../markup/path-data';
import type { OutlineBuilder } from './outline-builder';
import { PathPen } from './path-pen';

/** Gives the curves of path data to the builder, in user units, up to the first error, which it returns. */
export function tracePath(data: string, builder: OutlineBuilder): PathError | undefined {
  const pen = new PathPen(builder);
  return readPathData(data, ({ letter, values, from, to }) => {
    builder.setPlace(from, to);
    pen.follow(letter, values);
  });
}
