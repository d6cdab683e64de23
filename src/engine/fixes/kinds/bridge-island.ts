/** Bridges for one island: the usual ones, and other plans where they are others. */
import type { Finding } from '../../../checks/finding';
import { isRefusal, type Result, refuse } from '../../../report/refusal';
import type { Report } from '../../../report/report';
import { verifyBridges, verifyIslandBridges } from '../bridge-islands';
import { islandBridgesAsChange } from '../bridges-as-change';
import type { VerifiedBridges } from '../bridging/cut';
import type { BridgePlanChoice } from '../bridging/plan';
import { BRIDGING_EFFECTS } from '../bridging/together';
import type { FixKind, ProvenChange } from '../kind';

/** What all of them have in common. */
const FACTS = { scope: 'place', safe: false, effects: BRIDGING_EFFECTS } as const;

/** For this island alone, unless it cannot be held without others. */
export const bridgeIsland: FixKind = {
  ...FACTS,
  kind: 'bridge-island',
  // What later layers paint over is better cut away.
  preferred: (finding) => !islandOf(finding)?.cover,
  offer: (_, finding) => (islandOf(finding) ? 'Bridge this island' : undefined),
  prove: (report, finding, title) => {
    const island = islandOf(finding);
    return island && islandBridgesAsChange(usual(report, finding), title, island.piece, false);
  },
};

/** Together with what this island hangs on, so that all of it holds. */
export const bridgeIslandShortest: FixKind = {
  ...FACTS,
  kind: 'bridge-island-shortest',
  spare: 3,
  preferred: false,
  offer: (_, finding) => (islandOf(finding) ? 'Add one bridge at the narrowest gap' : undefined),
  prove: (report, finding, title) => otherPlan(report, finding, title, { count: 1, shortestOnly: true }),
};

/** Likewise. */
export const bridgeIslandTwo: FixKind = {
  ...FACTS,
  kind: 'bridge-island-two',
  spare: 3,
  preferred: false,
  offer: (_, finding) => (islandOf(finding) ? 'Add two opposite bridges' : undefined),
  prove: (report, finding, title) => otherPlan(report, finding, title, { count: 2 }),
};

function islandOf({ subject }: Finding) {
  return subject?.kind === 'island' ? subject : undefined;
}

function usual(report: Report, finding: Finding): Result<VerifiedBridges> {
  const island = islandOf(finding);
  return island ? verifyIslandBridges(report, island.sheet, island.piece) : refuse('There is no island any more.');
}

/** Not needed where the usual bridges are as many. */
function otherPlan(
  report: Report,
  finding: Finding,
  title: string,
  choice: BridgePlanChoice & { readonly count: number },
): Result<ProvenChange> | undefined {
  const island = islandOf(finding);
  if (!island) return undefined;
  const preferred = usual(report, finding);
  const plan = verifyBridges(report, island.sheet, [island.piece], choice);
  const isSame = !isRefusal(preferred) && !isRefusal(plan) && plan.bridges.length === preferred.bridges.length;
  if (isSame && plan.bridges.length === choice.count) return undefined;
  return islandBridgesAsChange(plan, title, island.piece, true);
}
