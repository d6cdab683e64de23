/** Bridges for one island: the usual ones, and other plans where they are others. */
import type { Finding } from '../../../checks/finding';
import { isRefusal, type Result, refuse } from '../../../report/refusal';
import type { Report } from '../../../report/report';
import {
  BRIDGING_EFFECTS,
  type BridgePlanChoice,
  type VerifiedBridges,
  verifyBridges,
  verifyIslandBridges,
} from '../bridge-islands';
import { bridgesAsChange } from '../bridges-as-change';
import type { FixKind, ProvenChange } from '../kind';

/** What all of them have in common. */
const FACTS = { scope: 'place', safe: false, effects: BRIDGING_EFFECTS } as const;

export const bridgeIsland: FixKind = {
  ...FACTS,
  kind: 'bridge-island',
  preferred: true,
  offer: (_, finding) => (islandOf(finding) ? 'Bridge this island' : undefined),
  prove: (report, finding, title) => bridgesAsChange(usual(report, finding), title),
};

export const bridgeIslandShortest: FixKind = {
  ...FACTS,
  kind: 'bridge-island-shortest',
  preferred: false,
  offer: (_, finding) => (islandOf(finding) ? 'Bridge it at the shortest place' : undefined),
  prove: (report, finding, title) => otherPlan(report, finding, title, { count: 1, shortestOnly: true }),
};

export const bridgeIslandTwo: FixKind = {
  ...FACTS,
  kind: 'bridge-island-two',
  preferred: false,
  offer: (_, finding) => (islandOf(finding) ? 'Bridge it on two opposite sides' : undefined),
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
  const preferred = usual(report, finding);
  if (!island || (!isRefusal(preferred) && preferred.bridges.length === choice.count)) return undefined;
  return bridgesAsChange(verifyBridges(report, island.sheet, [island.piece], choice), title);
}
