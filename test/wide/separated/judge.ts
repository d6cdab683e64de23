/** A picture, separated and bridged as the command line does it, and what is to be said of its sheets. */

import { readConfig } from '../../../src/engine/index';
import { layersAsSvg, type Picture, separate } from '../../../src/separate/index';
import { lookedOver } from '../../../src/separator/project/bridged';
import { projectConfig } from '../../../src/separator/project/config-text';
import { DIALS } from '../../separate/pictures';
import { besidePicture } from './beside-quantised';
import { bareArea, bareAtSlip, islandsOf, layersOf, type PixelRule, thinPlaces } from './pixels';

export interface Verdict {
  readonly kind: 'photo' | 'drawing';
  readonly layers: number;
  readonly nodes: number;
  readonly alone: number;
  readonly ordered: number;
  readonly bridges: number;
  /** What the check says after bridging, warnings and worse. */
  readonly findings: Readonly<Record<string, number>>;
  /** What is named of it, a line each. */
  readonly left: readonly string[];
  /** By pixels. */
  readonly islands: number;
  readonly thinSheet: number;
  readonly thinOpenings: number;
  /** mm², before bridges, which are bare. */
  readonly bare: number;
  readonly bareAtSlip: number;
  /** Of the print before bridges, 0..1: what differs from the quantised picture, and what of that no clean-up accounts for. */
  readonly differs: number;
  readonly lost: number;
  readonly beside: number;
  /** Seconds of processor time. */
  readonly separating: number;
  readonly bridging: number;
}

const { bridge, opening, slip } = DIALS;

export function judge(picture: Picture, width: number, colours: number): Verdict & { text: string } {
  const start = process.cpuUsage();
  const { detail: _, ...dials } = DIALS;
  const separation = separate(picture, { ...dials, width, colours });
  const separating = secondsSince(start);
  const project = { width, ground: undefined, file: 'picture.svg', settings: { files: {} } };
  const { text } = layersAsSvg(separation);
  const looked = lookedOver(text, { config: readConfig(projectConfig('', project)).config, budget: Infinity }, true);
  const bridging = secondsSince(start) - separating;
  const rule: PixelRule = { fineness: Math.min(16, Math.max(6, Math.round(1600 / width))), bridge, opening, slip };
  const before = layersOf(text, rule);
  const after = layersOf(looked.text, rule);
  const thin = after.map((layer) => thinPlaces(layer, rule));
  return {
    kind: separation.isDrawing ? 'drawing' : 'photo',
    layers: separation.layers.length,
    nodes: separation.nodes,
    ...separation.islands,
    bridges: looked.bridges,
    findings: looked.findings,
    left: looked.left.map(({ check, layer, at }) => `${check} ${layer} ${at?.x.toFixed(1)},${at?.y.toFixed(1)}`),
    islands: sum(after.map(islandsOf)),
    thinSheet: sum(thin.map(({ sheet }) => sheet)),
    thinOpenings: sum(thin.map(({ openings }) => openings)),
    bare: bareArea(before, rule),
    bareAtSlip: bareAtSlip(before, slip, rule),
    ...besidePicture(separation, picture),
    separating,
    bridging,
    text: looked.text,
  };
}

function sum(values: readonly number[]): number {
  return values.reduce((all, value) => all + value, 0);
}

function secondsSince(start: NodeJS.CpuUsage): number {
  const { user, system } = process.cpuUsage(start);
  return (user + system) / 1e6;
}
