/** What the artist is asked before a drawing becomes a stencil. Escape at any question ends it all. */
import { l10n, window } from 'vscode';
import { DEFAULT_MATERIAL, MATERIALS, type Material } from '../../config/material';
import type { Kerf, NewConfig } from '../../config/new-config';
import type { CuttingTool } from '../../config/types';
import { parseLength } from '../../config/values';
import type { Beginning } from '../../protocol/index';
import { likelyWidth, withUnit } from './lengths';

export interface Answers extends Omit<NewConfig, 'width'> {
  /** With its unit. */
  readonly width: string;
}

/** @returns undefined where a question was left with Escape */
export async function askForStencil(beginning: Beginning): Promise<Answers | undefined> {
  const width = await askWidth(beginning);
  if (width === undefined) return undefined;
  const material = await askMaterial();
  if (material === undefined) return undefined;
  const tool = await askTool(material.figures);
  if (tool === undefined) return undefined;
  if (tool === 'knife') return { width, material: material.name, tool };
  const kerf = await askKerf(material.figures);
  return kerf && { width, material: material.name, tool, kerf };
}

/** @returns a length with its unit */
export async function askWidth({ width, sizeStated }: Beginning): Promise<string | undefined> {
  const value = likelyWidth(width, sizeStated);
  const asked = l10n.t('Finished width of the artwork (for example 148mm). The height keeps its ratio.');
  const answer = await window.showInputBox({
    title: l10n.t('Set up as stencil (1 of 3): size'),
    prompt: sizeStated ? `${asked} ${l10n.t('The drawing says {0}.', value)}` : asked,
    value,
    ignoreFocusOut: true,
    validateInput: (text) =>
      (parseLength(withUnit(text)) ?? 0) > 0
        ? undefined
        : l10n.t('Enter a length, such as 148mm or 6in. A number alone is taken as mm.'),
  });
  return answer === undefined ? undefined : withUnit(answer);
}

interface NamedMaterial {
  readonly name: string;
  readonly figures: Material;
}

function noteOn(laser: Material['laser']): string {
  if (laser === 'ask') return l10n.t('; laser: ask your workshop first');
  return laser === 'never' ? l10n.t('; never with a laser') : '';
}

async function askMaterial(): Promise<NamedMaterial | undefined> {
  const known = Object.entries(MATERIALS).map(([name, figures]): NamedMaterial => ({ name, figures }));
  const usualFirst = known.sort((a, b) => Number(b.name === DEFAULT_MATERIAL) - Number(a.name === DEFAULT_MATERIAL));
  const items = usualFirst.map((material) => {
    const { title, thickness, bridge, opening, laser } = material.figures;
    return {
      material,
      label: capitalised(title),
      description: `${thickness} mm`,
      detail: l10n.t('Bridges from {0} mm, openings from {1} mm{2}', bridge, opening, noteOn(laser)),
    };
  });
  const picked = await window.showQuickPick(items, {
    title: l10n.t('Set up as stencil (2 of 3): material'),
    placeHolder: l10n.t('What are the sheets made of?'),
    ignoreFocusOut: true,
    matchOnDetail: true,
  });
  return picked?.material;
}

const capitalised = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

async function askTool({ title, laser }: Material): Promise<CuttingTool | undefined> {
  const never = laser === 'never';
  const knife = {
    tool: 'knife' as const,
    label: l10n.t('Knife'),
    description: l10n.t('No fumes'),
    detail: l10n.t('By hand or by machine.'),
  };
  const beam = {
    tool: 'laser' as const,
    label: l10n.t('Laser'),
    description: never ? l10n.t('Never with {0}', title) : l10n.t('Never leave it unattended'),
    detail: never
      ? l10n.t('It gives off hydrogen chloride.')
      : l10n.t("Its manual and your workshop's rules decide what it may cut."),
  };
  const picked = await window.showQuickPick(never ? [knife, beam] : [beam, knife], {
    title: l10n.t('Set up as stencil (3 of 3): tool'),
    placeHolder: l10n.t('What cuts the sheets?'),
    ignoreFocusOut: true,
  });
  return picked?.tool;
}

/** The figure is that of the material; who knows a better one writes it into `tombolo.json`. */
async function askKerf({ kerf: width }: Material): Promise<Kerf | undefined> {
  const kerf = `${width}mm`;
  const allowed = {
    compensated: true,
    label: l10n.t('The cutting program allows for it'),
    description: l10n.t('usual'),
    detail: l10n.t('It moves each line by half the beam: sizes come out as drawn.'),
  };
  const bare = {
    compensated: false,
    label: l10n.t('Lines are cut as drawn'),
    description: '',
    detail: l10n.t('Openings come out {0} mm wider, bridges {0} mm narrower: this is counted.', width),
  };
  const picked = await window.showQuickPick([allowed, bare], {
    title: l10n.t('Set up as stencil: kerf of the laser'),
    placeHolder: l10n.t('The beam takes away about {0} mm. Who allows for it?', width),
    ignoreFocusOut: true,
  });
  return picked && { kerf, compensated: picked.compensated };
}
