/** Islands that later layers paint over are cut away: one, those of a layer, or those of the file. */

import type { Finding, Subject } from '../../../checks/finding';
import { coverInWords } from '../../../checks/later-paint';
import { mapResult, type Result, refuse } from '../../../report/refusal';
import type { Report } from '../../../report/report';
import type { Sheet } from '../../../sheet/types';
import { quoted } from '../../../text/wording';
import { type CutAway, coveredIslands, cutCoveredIsland, cutCoveredIslands } from '../covered/islands';
import type { FixKind, ProvenChange } from '../kind';

/** Characters that names may take in a title. */
const ROOM = 40;

const FACTS = { safe: false, effects: [] } as const;

export const cutCoveredIslandKind: FixKind = {
  ...FACTS,
  kind: 'cut-covered-island',
  scope: 'place',
  preferred: true,
  offer: (_, finding) => {
    const island = covered(finding);
    return island && `Cut it away: ${coverInWords(island.cover, ROOM)}`;
  },
  prove: (report, finding) => {
    const island = covered(finding);
    return island && mapResult(cutCoveredIsland(report, island.sheet, island.piece), changeOf);
  },
};

export const cutCoveredLayer: FixKind = {
  ...FACTS,
  kind: 'cut-covered-layer',
  scope: 'layer',
  preferred: false,
  offer: (report, { subject }) => {
    if (subject?.kind !== 'island') return undefined;
    const { sheet } = subject;
    const number = coveredIslands(report, sheet).length;
    return number > 1 ? titleOf(number, `in layer ${quoted([sheet.layer.name], ROOM)[0]}`) : undefined;
  },
  prove: (report, { subject }, title) =>
    subject?.kind === 'island' ? cutAll(report, [subject.sheet], title) : undefined,
};

export const cutCoveredFile: FixKind = {
  ...FACTS,
  kind: 'cut-covered-file',
  scope: 'file',
  spare: 1,
  preferred: false,
  offer: (report, { subject }) => {
    if (subject?.kind !== 'island') return undefined;
    const numbers = report.sheets.map((sheet) => coveredIslands(report, sheet).length).filter((number) => number > 0);
    const sum = numbers.reduce((all, each) => all + each, 0);
    return numbers.length > 1 ? titleOf(sum, 'in this file') : undefined;
  },
  prove: (report, _, title) => cutAll(report, report.sheets, title),
};

type CoveredIsland = Required<Extract<Subject, { kind: 'island' }>>;

function covered({ subject }: Finding): CoveredIsland | undefined {
  return subject?.kind === 'island' && subject.cover ? { ...subject, cover: subject.cover } : undefined;
}

function titleOf(number: number, where: string): string {
  return `Cut away all ${number} islands ${where} that later layers cover`;
}

/** The title says so where some of them could not be. */
function cutAll(report: Report, sheets: readonly Sheet[], title: string): Result<ProvenChange> {
  const { cut, left } = cutCoveredIslands(report, sheets);
  if (!cut) return refuse(left[0]?.reason ?? 'Later layers cover none of the islands.');
  const done = cut.cuts.reduce((sum, { islands }) => sum + islands.size, 0);
  const change = changeOf(cut);
  return left.length === 0 ? change : { ...change, title: title.replace('all ', `${done} of the `) };
}

function changeOf({ edits, brings, cuts }: CutAway): ProvenChange {
  return {
    edits,
    brings,
    cutAway: cuts.flatMap(({ sheet: { layer }, islands }) =>
      [...islands.keys()].map(({ polygon }) => ({ layer: layer.name, layerId: layer.id, place: polygon })),
    ),
  };
}
