import * as vscode from 'vscode';

/** Asks again until there is an answer, or fails by name. */
export async function until<T>(what: string, get: () => T | undefined | false, limit = 30_000): Promise<T> {
  for (const end = Date.now() + limit; Date.now() < end; await new Promise((resolve) => setTimeout(resolve, 25))) {
    const answer = get();
    if (answer) return answer;
  }
  throw new Error(`Waited in vain for ${what}.`);
}

export function findings(uri: vscode.Uri): vscode.Diagnostic[] {
  return vscode.languages.getDiagnostics(uri).filter(({ source }) => source === 'tombolo');
}

export function codeOf({ code }: vscode.Diagnostic): string {
  return String(typeof code === 'object' ? code.value : code);
}

export async function open(name: string): Promise<vscode.TextEditor> {
  const [folder] = vscode.workspace.workspaceFolders ?? [];
  if (!folder) throw new Error('No folder is open.');
  const document = await vscode.workspace.openTextDocument(vscode.Uri.joinPath(folder.uri, name));
  return vscode.window.showTextDocument(document, { preview: false });
}

export const islandIn = (uri: vscode.Uri): Promise<vscode.Diagnostic> =>
  until('an island', () => findings(uri).find((found) => codeOf(found) === 'floating-island'));

export const noIslandIn = (uri: vscode.Uri): Promise<boolean> =>
  until('no island', () => !findings(uri).some((found) => codeOf(found) === 'floating-island'));

/** The editor drops the question when another extension registers a provider meanwhile: then it is asked again. */
export function quickFixes(uri: vscode.Uri, range: vscode.Range): Promise<vscode.CodeAction[]> {
  return codeActions(uri, range, vscode.CodeActionKind.QuickFix);
}

/** So many of the actions are given their edits, as when they are chosen. */
const RESOLVED = 30;

export async function codeActions(
  uri: vscode.Uri,
  range: vscode.Range,
  kind: vscode.CodeActionKind,
  tries = 5,
): Promise<vscode.CodeAction[]> {
  const again = async () => {
    await new Promise((resolve) => setTimeout(resolve, 300));
    return codeActions(uri, range, kind, tries - 1);
  };
  try {
    const actions: vscode.CodeAction[] = await vscode.commands.executeCommand(
      'vscode.executeCodeActionProvider',
      uri,
      range,
      kind.value,
      RESOLVED,
    );
    // The editor gives an empty list, too, where it cancelled the question itself.
    return actions.length === 0 && tries > 1 ? await again() : actions;
  } catch (error) {
    if (tries === 1 || !(error instanceof Error) || error.name !== 'Canceled') throw error;
    return again();
  }
}

/** All that hovers tell of a place, as one text. */
export async function hoverText(uri: vscode.Uri, at: vscode.Position): Promise<string> {
  const hovers: vscode.Hover[] = await vscode.commands.executeCommand('vscode.executeHoverProvider', uri, at);
  return hovers
    .flatMap(({ contents }) => contents)
    .map((each) => (typeof each === 'string' ? each : each.value))
    .join();
}
