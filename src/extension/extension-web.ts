/** The entry where there is a browser alone. */
import type * as vscode from 'vscode';
import { WEB_HOST } from './host/web-host';
import { start } from './start';

export function activate(context: vscode.ExtensionContext): void {
  start(context, WEB_HOST);
}
