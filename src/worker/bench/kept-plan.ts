/** Bridges for all islands of a drawing as a plan, by which each new build of it can be given the same. */
import { bridgeIslands, keptBridgeOf } from '../../engine/index';
import type { KeptPlan } from '../../protocol/programs';
import type { CheckedDocument } from '../documents/checked-document';

/** Places behind the point of a millimetre. */
const DIGITS = 1e4;

export function keptPlan({ report }: CheckedDocument): KeptPlan {
  const { plan, refusals } = bridgeIslands(report);
  const bridges = plan.flatMap((bridge) => {
    const kept = keptBridgeOf(report, bridge);
    return kept ? [{ layer: bridge.layer, ...kept }] : [];
  });
  const rounded = (_key: string, value: unknown) =>
    typeof value === 'number' ? Math.round(value * DIGITS) / DIGITS : value;
  const text = `${JSON.stringify({ version: 1, bridges }, rounded, 2)}\n`;
  return { text, bridges: bridges.length, refusals: refusals.map(({ message }) => message) };
}
