/** What `cutter` says in `tombolo.json`: the tool, its bed, its kerf, and how fast it moves. */
import type { Node } from 'jsonc-parser';
import {
  decodeBoolean,
  decodeFields,
  decodeLength,
  decodeOneOf,
  decodePositive,
  decodePositiveLength,
  type ReportProblem,
} from './decode';
import type { Config, CuttingTool } from './types';
import { parseAcceleration, parseJerk, parseSpeed } from './values';

type CutterKey = 'tool' | 'bed' | 'kerf' | 'compensated' | 'speed' | 'acceleration' | 'corner' | 'jerk';
type MutableCutter = { -readonly [K in CutterKey]: Config[K] };

/** @param config gets what is stated; what is not keeps its default */
export function decodeCutter(node: Node, config: MutableCutter, report: ReportProblem): void {
  decodeFields(node, 'cutter', report, {
    tool: (value) => {
      config.tool = decodeOneOf<CuttingTool>(['laser', 'knife'], 'tool')(value, report) ?? config.tool;
    },
    bed: (value) => {
      config.bed = decodeBed(value, report);
    },
    kerf: (value) => {
      config.kerf = decodeLength(value, report);
    },
    compensated: (value) => {
      config.compensated = decodeBoolean(value, report) ?? config.compensated;
    },
    speed: (value) => {
      config.speed = speed(value, report);
    },
    acceleration: (value) => {
      config.acceleration = acceleration(value, report);
    },
    corner: (value) => {
      config.corner = speed(value, report);
    },
    jerk: (value) => {
      config.jerk = jerk(value, report);
    },
  });
}

const speed = decodePositive(parseSpeed, 'a speed with its unit in double quotes, such as "20mm/s"');
const acceleration = decodePositive(
  parseAcceleration,
  'an acceleration with its unit in double quotes, such as "500mm/s²"',
);

const jerk = decodePositive(parseJerk, 'a jerk with its unit in double quotes, such as "10000mm/s³"');

function decodeBed(node: Node, report: ReportProblem): readonly [number, number] | undefined {
  if (node.type !== 'array' || node.children?.length !== 2) {
    return void report(node, 'The bed is two lengths, such as ["300mm", "200mm"].');
  }
  const [width, height] = node.children.map((side) => decodePositiveLength(side, report));
  return width !== undefined && height !== undefined ? [width, height] : undefined;
}
