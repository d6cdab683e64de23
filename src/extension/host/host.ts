/** What the extension stands on: a desktop or a remote machine with Node.js, or a browser alone. */
import type * as vscode from 'vscode';
import type { Bench } from '../bench';
import type { KnownPrograms } from '../programs/known-programs';
import type { ServerClient } from '../server-client';
import type { ServerHost } from './server-connection';

export interface ExtensionHost {
  readonly server: ServerHost;
  /** Registers what needs programs and threads of Node.js. */
  tools(context: vscode.ExtensionContext, parts: ExtensionParts): vscode.Disposable[];
}

export interface ExtensionParts {
  readonly client: ServerClient;
  readonly bench: Bench;
  readonly programs: KnownPrograms;
  readonly log: vscode.LogOutputChannel;
}
