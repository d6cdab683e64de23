/** Which islands each colour has, and which later colours would paint over them. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { LabelMap } from '../raster';
import { type Components, componentsOf, Joined } from './components';

/** What lies in one hole of a colour. */
export interface Hole {
  /** The labels in it. */
  readonly labels: ReadonlySet<number>;
  /** Pixels. */
  readonly size: number;
}

/** For each label the holes of its area: what it surrounds, away from the frame. Each would be an island of its sheet. */
export function holesOf(map: LabelMap, count: number): Hole[][] {
  const components = componentsOf(map);
  const pairs = neighboursOf(map, components);
  return Array.from({ length: count }, (_, label) => holesIn(label, components, pairs));
}

type Pairs = readonly (readonly [number, number])[];

/** Each pair of components that share a border, once. */
function neighboursOf({ width, labels }: LabelMap, { ids, list }: Components): Pairs {
  const keys = new Set<number>();
  const note = (first: number, second: number): void => {
    keys.add(Math.min(first, second) * list.length + Math.max(first, second));
  };
  for (let at = 0, x = 0; at < labels.length; at += 1, x += 1) {
    if (x === width) x = 0;
    if (x === 0) checkpoint(width);
    const id = defined(ids[at]);
    if (x > 0 && ids[at - 1] !== id) note(id, defined(ids[at - 1]));
    if (at >= width && ids[at - width] !== id) note(id, defined(ids[at - width]));
  }
  return [...keys].map((key) => [Math.floor(key / list.length), key % list.length]);
}

function holesIn(label: number, { list }: Components, pairs: Pairs): Hole[] {
  const joined = new Joined();
  for (const _ of list) joined.add();
  for (const [first, second] of pairs) {
    if (list[first]?.label !== label && list[second]?.label !== label) joined.join(first, second);
  }
  const parts = new Map<number, { labels: Set<number>; size: number; touchesFrame: boolean }>();
  list.forEach((component, id) => {
    if (component.label === label) return;
    const root = joined.rootOf(id);
    const part = parts.get(root) ?? { labels: new Set(), size: 0, touchesFrame: false };
    part.labels.add(component.label);
    part.size += component.size;
    part.touchesFrame ||= component.touchesFrame;
    parts.set(root, part);
  });
  return [...parts.values()].filter(({ touchesFrame }) => !touchesFrame);
}
