/** Chains of straight edges that cross each other. */
import Flatbush from 'flatbush';
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import { crossFrom } from '../../geometry/base/vector';

/** The numbers of the chains that cross another one, or themselves. Chains that only meet in an end do not cross. */
export function crossingOf(chains: readonly Float64Array[]): Set<number> {
  const count = chains.reduce((sum, chain) => sum + Math.max(0, chain.length / 2 - 1), 0);
  const crossing = new Set<number>();
  if (count === 0) return crossing;
  const owner = new Int32Array(count);
  const start = new Int32Array(count);
  const index = new Flatbush(count);
  let edge = 0;
  chains.forEach((chain, number) => {
    for (let at = 0; at + 3 < chain.length; at += 2, edge += 1) {
      owner[edge] = number;
      start[edge] = at;
      const [x1, y1, x2, y2] = edgeAt(chain, at);
      index.add(Math.min(x1, x2), Math.min(y1, y2), Math.max(x1, x2), Math.max(y1, y2));
    }
  });
  index.finish();
  for (let one = 0; one < count; one += 1) {
    checkpoint(40);
    const [x1, y1, x2, y2] = edgeAt(defined(chains[defined(owner[one])]), defined(start[one]));
    const [a, b] = [
      { x: x1, y: y1 },
      { x: x2, y: y2 },
    ];
    const box = [Math.min(x1, x2), Math.min(y1, y2), Math.max(x1, x2), Math.max(y1, y2)] as const;
    index.search(...box, (other) => {
      if (other <= one) return false;
      const [x3, y3, x4, y4] = edgeAt(defined(chains[defined(owner[other])]), defined(start[other]));
      const [c, d] = [
        { x: x3, y: y3 },
        { x: x4, y: y4 },
      ];
      if (crossFrom(a, b, c) * crossFrom(a, b, d) < 0 && crossFrom(c, d, a) * crossFrom(c, d, b) < 0) {
        crossing.add(defined(owner[one]));
        crossing.add(defined(owner[other]));
      }
      return false;
    });
  }
  return crossing;
}

function edgeAt(chain: Float64Array, at: number): [number, number, number, number] {
  return [defined(chain[at]), defined(chain[at + 1]), defined(chain[at + 2]), defined(chain[at + 3])];
}
