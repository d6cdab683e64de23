/** Groups of things whose boxes touch, directly or through others. */

import Flatbush from 'flatbush';
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Box } from '../base/polygon-types';
import { growBox } from '../base/ring';
import { BoxPool } from './box-pool';

/** Indices of the boxes, grouped; groups in the order of their first member, members ascending. */
export function clusterBoxes(boxes: readonly Box[], margin = 0): number[][] {
  if (boxes.length < 2) return boxes.map((_, only) => [only]);
  const pool = new BoxPool(boxes);
  const isPlaced = new Uint8Array(boxes.length);
  const clusters: number[][] = [];
  for (let first = 0; first < boxes.length; first += 1) {
    if (isPlaced[first] === 1) continue;
    isPlaced[first] = 1;
    const members = [first];
    // The list grows while it is walked.
    for (const member of members) {
      pool.take(growBox(defined(boxes[member]), margin), (other) => {
        if (isPlaced[other] === 1) return;
        isPlaced[other] = 1;
        members.push(other);
      });
    }
    clusters.push(members.length > 1 ? members.sort((a, b) => a - b) : members);
  }
  return clusters;
}

/** Over at least one box. */
export function indexBoxes(boxes: readonly Box[]): Flatbush {
  const index = new Flatbush(boxes.length);
  checkpoint(boxes.length);
  for (const box of boxes) index.add(box.minX, box.minY, box.maxX, box.maxY);
  index.finish();
  return index;
}

export function findRoot(parents: Int32Array, member: number): number {
  let root = member;
  while (parents[root] !== root) {
    const above = defined(parents[root]);
    parents[root] = defined(parents[above]);
    root = above;
  }
  return root;
}

/** The smaller root stays the root. */
export function uniteSets(parents: Int32Array, a: number, b: number): void {
  const first = findRoot(parents, a);
  const second = findRoot(parents, b);
  if (first < second) parents[second] = first;
  else parents[first] = second;
}

export function groupsOf(parents: Int32Array): number[][] {
  const groups = new Map<number, number[]>();
  for (let member = 0; member < parents.length; member += 1) {
    checkpoint();
    const root = findRoot(parents, member);
    const group = groups.get(root);
    if (group) group.push(member);
    else groups.set(root, [member]);
  }
  return [...groups.values()];
}
