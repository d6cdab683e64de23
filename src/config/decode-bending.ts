/** What `tombolo.json` says of the sheet's stiffness and of the can. */
import type { Node } from 'jsonc-parser';
import { type Decoder, decodeFields, decodePositive, decodePositiveLength } from './decode';
import type { Config, Droop } from './types';
import { parseBendingStiffness, parseForce, parseGrammage } from './values';

/** Of its length: what hangs lower than that is off the formula by more than a twentieth. */
const MOST_DROOP = 1 / 4;

const oneStiffness = decodePositive(
  parseBendingStiffness,
  'a bending stiffness with its unit in double quotes, such as "6.75mN·m"',
);
const grammage = decodePositive(parseGrammage, 'a weight with its unit in double quotes, such as "240g/m²"');
const force = decodePositive(parseForce, 'a force with its unit in double quotes, such as "0.04N"');

/** One for both ways of the grain, or both: nobody knows which way a tongue lies, so the less stiff one counts. */
export const decodeBendingStiffness: Decoder<number> = (node, report) => {
  if (node.type !== 'array') return oneStiffness(node, report);
  const [along, across, ...more] = (node.children ?? []).map((child) => oneStiffness(child, report));
  if (node.children?.length !== 2 || more.length > 0) {
    return void report(node, 'These are two figures, along and across the grain.');
  }
  return along !== undefined && across !== undefined ? Math.min(along, across) : undefined;
};

export const decodeDroop: Decoder<Droop> = (node, report) => {
  const read: { length?: number | undefined; by?: number | undefined; grammage?: number | undefined } = {};
  decodeFields(node, 'droop', report, {
    length: (value) => {
      read.length = decodePositiveLength(value, report);
    },
    by: (value) => {
      read.by = decodePositiveLength(value, report);
    },
    grammage: (value) => {
      read.grammage = grammage(value, report);
    },
  });
  const { length, by } = read;
  if (node.type !== 'object') return undefined;
  if (length === undefined || by === undefined) return void reportMissing(node, report);
  if (by > MOST_DROOP * length) {
    return void report(node, 'The strip droops by more than a quarter of its length: let less of it hang over.');
  }
  return { length, by, grammage: read.grammage };
};

/** What is there but wrong was reported. */
function reportMissing(node: Node, report: Parameters<Decoder<Droop>>[1]): void {
  const names = node.children?.map((property) => property.children?.[0]?.value) ?? [];
  if (!names.includes('length') || !names.includes('by')) {
    report(node, 'A droop needs "length", what hangs over the edge, and "by", how much lower the end hangs.');
  }
}

export const decodeSpray: Decoder<Config['spray']> = (node, report) => {
  const spray: { distance?: number; thrust?: number } = {};
  decodeFields(node, 'spray', report, {
    distance: (value) => {
      const decoded = decodePositiveLength(value, report);
      if (decoded !== undefined) spray.distance = decoded;
    },
    thrust: (value) => {
      const decoded = force(value, report);
      if (decoded !== undefined) spray.thrust = decoded;
    },
  });
  return spray;
};
