/** How layers are painted, from the JSON of `tombolo.json`. */
import type { Node } from 'jsonc-parser';
import { type Decoder, decodeFields, decodePositive, decodeWord } from './decode';
import type { PaintPlan, PaintSteps } from './types';
import { parseArea } from './values';

type Mutable<T> = { -readonly [Key in keyof T]: T[Key] };

/** More coats than this are a slip of the finger. */
const MOST_COATS = 20;

const coverage = decodePositive(parseArea, 'an area with its unit in double quotes, such as "1.5m²"');

const coats: Decoder<number> = (node, report) => {
  const { value } = node;
  if (typeof value === 'number' && Number.isInteger(value) && value >= 1 && value <= MOST_COATS) return value;
  return void report(node, `Coats are a whole number from 1 to ${MOST_COATS}.`);
};

function stepFields(
  steps: Mutable<PaintSteps>,
  report: Parameters<typeof coats>[1],
): Record<string, (value: Node) => void> {
  return {
    coats: (value) => {
      const decoded = coats(value, report);
      if (decoded !== undefined) steps.coats = decoded;
    },
    wait: (value) => {
      const decoded = decodeWord(value, report);
      if (decoded !== undefined) steps.wait = decoded;
    },
  };
}

export const decodePaint: Decoder<PaintPlan> = (node, report) => {
  const layers: Record<string, PaintSteps> = {};
  const plan: Mutable<PaintPlan> = { layers };
  decodeFields(node, 'paint', report, {
    ...stepFields(plan, report),
    coverage: (value) => {
      const decoded = coverage(value, report);
      if (decoded !== undefined) plan.coverage = decoded;
    },
    layers: (value) => {
      for (const property of value.children ?? []) {
        const [key, own] = property.children ?? [];
        if (!key || !own) continue;
        const steps: Mutable<PaintSteps> = {};
        decodeFields(own, 'the paint of a layer', report, stepFields(steps, report));
        Object.defineProperty(layers, String(key.value), { value: steps, enumerable: true });
      }
    },
  });
  return plan;
};
