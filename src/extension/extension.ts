/** The entry where there is Node.js: on a desktop, or on the machine that a browser or an editor is connected to. */
import type * as vscode from 'vscode';
import { NODE_HOST } from './host/node-host';
import { start } from './start';

export function activate(context: vscode.ExtensionContext): void {
  start(context, NODE_HOST);
}
