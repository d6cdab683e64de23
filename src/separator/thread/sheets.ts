/** The texts of the files that a separation is written to. */
import { readConfig } from '../../engine/index';
import type { PictureDials, SheetsProject } from '../../protocol/separating';
import { layersAsSvg, type Separation } from '../../separate/index';
import { hashOfText } from '../../text/hash';
import { lookedOver } from '../project/bridged';
import { projectConfig } from '../project/config-text';
import { statedDials } from '../project/dials';

export interface Sheets {
  readonly drawing: string;
  readonly config: string;
  readonly bridges: number;
  /** Islands that are left. */
  readonly islands: number;
  /** Layers that are cut as two sheets. */
  readonly twoSheets: readonly string[];
}

export function sheetsOf(
  separation: Separation,
  dials: PictureDials,
  { file, picture, before }: SheetsProject,
): Sheets {
  const project = { width: dials.width, ground: dials.ground, file };
  const settings = { picture, ...statedDials(dials) };
  const draft = projectConfig(before, { ...project, settings: { ...settings, files: {} } });
  const { config } = readConfig(draft);
  // Whoever waits can stop it.
  const looked = lookedOver(layersAsSvg(separation).text, { config, budget: Infinity }, dials.bridges);
  const files = { [file]: hashOfText(looked.text) };
  return {
    drawing: looked.text,
    config: projectConfig(before, { ...project, settings: { ...settings, files } }),
    bridges: looked.bridges,
    islands: looked.islands,
    twoSheets: looked.twoSheets,
  };
}
