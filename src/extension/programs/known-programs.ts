/** The programs whose drawings are known: as the server tells of them. */
import * as vscode from 'vscode';
import type { Programs } from '../../protocol/programs';
import type { ServerClient } from '../server-client';

const KEY = 'tombolo.isProgram';

export class KnownPrograms implements vscode.Disposable {
  private readonly drawings = new Map<string, readonly string[]>();
  private readonly changed = new vscode.EventEmitter<void>();
  private readonly listeners: vscode.Disposable[];

  /** Fires when programs or drawings are known that were not before, or are no more. */
  readonly onChanged = this.changed.event;

  constructor(client: ServerClient) {
    this.listeners = [
      this.changed,
      client.onPrograms((programs) => this.take(programs)),
      vscode.window.onDidChangeActiveTextEditor(() => this.tellMenus()),
    ];
  }

  /** The drawings of a program. */
  drawingsOf(program: vscode.Uri): vscode.Uri[] {
    return (this.drawings.get(program.toString()) ?? []).map((uri) => vscode.Uri.parse(uri));
  }

  /** Whether a program draws what is in a file. */
  draws(program: vscode.Uri, drawing: vscode.Uri): boolean {
    return this.drawings.get(program.toString())?.includes(drawing.toString()) ?? false;
  }

  /** Whether some program draws what is in a file. */
  isDrawing(file: vscode.Uri): boolean {
    return [...this.drawings.values()].some((drawings) => drawings.includes(file.toString()));
  }

  private take({ programs }: Programs): void {
    this.drawings.clear();
    for (const { uri, drawings } of programs) this.drawings.set(vscode.Uri.parse(uri).toString(), drawings.map(normal));
    this.tellMenus();
    this.changed.fire();
  }

  private tellMenus(): void {
    const uri = vscode.window.activeTextEditor?.document.uri;
    void vscode.commands.executeCommand('setContext', KEY, uri !== undefined && this.drawings.has(uri.toString()));
  }

  dispose(): void {
    for (const listener of this.listeners) listener.dispose();
  }
}

/** As the editor writes addresses. */
const normal = (uri: string): string => vscode.Uri.parse(uri).toString();
