/** The artist's own materials in `tombolo.json`. */
import type { Node } from 'jsonc-parser';
import {
  decodeEntries,
  decodeFields,
  decodeLength,
  decodeOneOf,
  decodePositive,
  decodePositiveLength,
  decodeWord,
  type ReportProblem,
} from './decode';
import { type Material, type MaterialFigures, ownMaterial } from './material';
import { parseDensity, parseStiffness } from './quantity';

type Mutable<T> = { -readonly [K in keyof T]: T[K] };

/** A material without a readable thickness is left out. */
export function decodeMaterials(node: Node, report: ReportProblem): Record<string, Material> {
  const materials: [string, Material][] = [];
  decodeEntries(node, 'materials', report, (key, name, value) => {
    const material = decodeMaterial(name, value, report);
    if (material) materials.push([name, material]);
    else if (value.type === 'object' && !hasKey(value, 'thickness')) {
      report(key, `The material "${name}" needs "thickness", such as "0.3mm"; it is left out.`);
    }
  });
  return Object.fromEntries(materials);
}

function hasKey({ children = [] }: Node, name: string): boolean {
  return children.some((property) => property.children?.[0]?.value === name);
}

function decodeMaterial(name: string, node: Node, report: ReportProblem): Material | undefined {
  const figures: Mutable<Partial<MaterialFigures>> = {};
  const set = <K extends keyof MaterialFigures>(key: K, value: MaterialFigures[K] | undefined): void => {
    if (value !== undefined) figures[key] = value;
  };
  decodeFields(node, 'a material', report, {
    title: (value) => set('title', decodeWord(value, report)),
    thickness: (value) => set('thickness', decodePositiveLength(value, report)),
    stiffness: (value) => set('stiffness', stiffness(value, report)),
    density: (value) => set('density', density(value, report)),
    bridge: (value) => set('bridge', decodeLength(value, report)),
    opening: (value) => set('opening', decodeLength(value, report)),
    kerf: (value) => set('kerf', decodeLength(value, report)),
    laser: (value) => set('laser', decodeOneOf<Material['laser']>(['usual', 'ask', 'never'])(value, report)),
  });
  const { thickness } = figures;
  return thickness === undefined ? undefined : ownMaterial({ title: name, ...figures, thickness });
}

const stiffness = decodePositive(parseStiffness, 'a stiffness with its unit in double quotes, such as "3000MPa"');
const density = decodePositive(parseDensity, 'a density with its unit in double quotes, such as "800kg/m³"');
