/** Begin a Stencil Here: three questions, and a `tombolo.json` beside the drawing; or only a mark in the drawing. */
import * as vscode from 'vscode';
import { DEFAULT_MATERIAL, MATERIALS, type Material } from '../config/material';
import { type NewConfig, newConfigText } from '../config/new-config';
import type { CuttingTool } from '../config/types';
import { CONFIG_NAME } from '../config/types';
import { parseLength } from '../config/values';
import type { Beginning } from '../protocol/index';

/** What the artist is told at each question. */
const DECLINE = 'Escape: no tombolo.json, only a mark in this drawing.';

/**
 * Asks, and writes the project file.
 * @returns false, with nothing written, where a question was declined or there is a project file by now
 */
export async function beginProject(drawing: vscode.Uri, beginning: Beginning): Promise<boolean> {
  // Elsewhere than on a disk no project file is looked for.
  if (drawing.scheme !== 'file') return false;
  const answers = await ask(beginning);
  return answers !== undefined && write(vscode.Uri.joinPath(drawing, '..', CONFIG_NAME), newConfigText(answers));
}

async function ask(beginning: Beginning): Promise<NewConfig | undefined> {
  const width = await askWidth(beginning);
  if (width === undefined) return undefined;
  const material = await askMaterial();
  if (material === undefined) return undefined;
  const tool = await askTool(MATERIALS[material] as Material);
  if (tool === undefined) return undefined;
  const asStated = beginning.sizeStated && Math.abs((parseLength(width) ?? 0) - beginning.width) < 0.005;
  return { width: asStated ? undefined : width, material, tool };
}

function askWidth({ width, sizeStated }: Beginning): Thenable<string | undefined> {
  const known = `${Number(width.toFixed(2))}mm`;
  const said = sizeStated ? `The drawing says ${known}.` : 'The drawing does not say.';
  return vscode.window.showInputBox({
    title: 'Begin a stencil (1 of 3): size',
    prompt: `How wide is the artwork cut? ${said} ${DECLINE}`,
    value: known,
    ignoreFocusOut: true,
    validateInput: (text) =>
      (parseLength(text) ?? 0) > 0 ? undefined : 'A length with its unit, such as 148mm or 6in.',
  });
}

const ALLOWED: Readonly<Record<Material['laser'], string>> = {
  usual: '',
  ask: '; laser: ask your workshop first',
  never: '; never with a laser',
};

async function askMaterial(): Promise<string | undefined> {
  const names = [DEFAULT_MATERIAL, ...Object.keys(MATERIALS).filter((name) => name !== DEFAULT_MATERIAL)];
  const items = names.map((name) => {
    const { title, thickness, bridge, opening, laser } = MATERIALS[name] as Material;
    return {
      name,
      label: title,
      description: `${thickness} mm`,
      detail: `Bridges from ${bridge} mm, openings from ${opening} mm${ALLOWED[laser]}`,
    };
  });
  const picked = await vscode.window.showQuickPick(items, {
    title: 'Begin a stencil (2 of 3): material',
    placeHolder: `What are the sheets made of? ${DECLINE}`,
    ignoreFocusOut: true,
    matchOnDetail: true,
  });
  return picked?.name;
}

async function askTool({ title, laser }: Material): Promise<CuttingTool | undefined> {
  const knife = { tool: 'knife' as const, label: 'Knife', detail: 'By hand or by machine: no fumes.' };
  const fumes =
    laser === 'never'
      ? `Never with ${title}: it gives off hydrogen chloride.`
      : "Never leave it unattended; the machine's manual and the workshop's rules decide what it may cut.";
  const beam = { tool: 'laser' as const, label: 'Laser', detail: fumes };
  const picked = await vscode.window.showQuickPick(laser === 'never' ? [knife, beam] : [beam, knife], {
    title: 'Begin a stencil (3 of 3): tool',
    placeHolder: `What cuts the sheets? ${DECLINE}`,
    ignoreFocusOut: true,
  });
  return picked?.tool;
}

/** One step of undo. Never writes over a file that is there. */
async function write(file: vscode.Uri, text: string): Promise<boolean> {
  const change = new vscode.WorkspaceEdit();
  change.createFile(file, { overwrite: false, ignoreIfExists: false, contents: Buffer.from(text) });
  if (!(await vscode.workspace.applyEdit(change))) return false;
  await vscode.window.showTextDocument(await vscode.workspace.openTextDocument(file), { preview: false });
  return true;
}
