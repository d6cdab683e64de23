/** How large a pixel is on the artist's screen: a setting of the user, for all folders. */
import * as vscode from 'vscode';

const [SECTION, KEY] = ['tombolo.bench', 'pixelsPerInch'];

/** CSS: an inch of a screen of which nothing is known. */
const USUAL = 96;

/** CSS pixels to the inch. */
export function screenPixelsPerInch(): number {
  const stated: unknown = vscode.workspace.getConfiguration(SECTION).get(KEY);
  return typeof stated === 'number' && Number.isFinite(stated) && stated > 0 ? stated : USUAL;
}

export async function keepScreen(pixelsPerInch: number): Promise<void> {
  await vscode.workspace.getConfiguration(SECTION).update(KEY, pixelsPerInch, vscode.ConfigurationTarget.Global);
}

export function onScreenChanged(heard: () => void): vscode.Disposable {
  return vscode.workspace.onDidChangeConfiguration((event) => {
    if (event.affectsConfiguration(`${SECTION}.${KEY}`)) heard();
  });
}
