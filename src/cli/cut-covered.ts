/** `tombolo bridge --cut-covered`: islands that later layers paint over are cut away, the others bridged. */
import { count } from '../config/values';
import { type CutAway, coveredIslands, cutCoveredIslands, type Report } from '../engine/index';
import { tidy, tidyPoint } from '../format/tidy';

/** What became of the covered islands before the others are bridged. */
export interface CoveredWork {
  /** On the text without them: what there is to bridge is found in it. */
  readonly report: Report;
  /** For `--plan`. */
  readonly cutAway: readonly object[];
  /** "3 islands cut away", for what is said in the end; empty where there were none. */
  readonly done: string;
  /** Sentences that are told beside. */
  readonly notes: readonly string[];
  /** What `tombolo check` will say of the result and did not say before. */
  readonly brings: readonly string[];
}

/** @param layer the only one whose islands are asked for, by name */
export function cutCovered(report: Report, layer: string | undefined): CoveredWork {
  const { cut, left } = cutCoveredIslands(report, sheetsOf(report, layer));
  const cutAway = cut ? plainCuts(cut) : [];
  return {
    report: cut?.after ?? report,
    cutAway,
    done: cutAway.length > 0 ? `${count(cutAway.length, 'island')} cut away, as later layers cover them` : '',
    notes: left.map(({ sheet, reason }) => `layer "${sheet.layer.name}": bridged, not cut away: ${reason}`),
    brings: cut?.brings.map(({ message }) => message) ?? [],
  };
}

/** Where they are bridged like the others: that they need not be. */
export function uncutNotes(report: Report, layer: string | undefined): string[] {
  const covered = sheetsOf(report, layer).reduce((sum, sheet) => sum + coveredIslands(report, sheet).length, 0);
  if (covered === 0) return [];
  const which =
    covered === 1
      ? '1 island is covered by later layers and needs'
      : `${covered} islands are covered by later layers and need`;
  return [`${which} no bridge: --cut-covered cuts ${covered === 1 ? 'it' : 'them'} away instead`];
}

function sheetsOf({ sheets }: Report, layer: string | undefined): Report['sheets'] {
  return layer === undefined ? sheets : sheets.filter((sheet) => sheet.layer.name === layer);
}

/** Places in sheet mm, the island by a point of it. */
function plainCuts({ cuts }: CutAway): object[] {
  return cuts.flatMap(({ sheet, islands }) =>
    [...islands.keys()].map(({ label, area }) => ({ layer: sheet.layer.name, at: tidyPoint(label), area: tidy(area) })),
  );
}
