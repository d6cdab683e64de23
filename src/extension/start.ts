/** The extension, on whatever host: cheap listeners until a stencil is seen, then the server. */
import * as vscode from 'vscode';
import { CONFIG_NAME } from '../config/types';
import { Bench } from './bench';
import { showPagesBeside } from './check-pages';
import { registerCommands } from './commands';
import type { ExtensionHost } from './host/host';
import { registerDrawingCommands } from './programs/drawing-commands';
import { KnownPrograms } from './programs/known-programs';
import { ServerClient } from './server-client';
import { StatusItem } from './status-item';
import { StencilContext } from './stencil-context';
import { isMarked, isSvg, mayBeStencil, saysWhoDraws } from './svg-documents';

export function start(context: vscode.ExtensionContext, host: ExtensionHost): void {
  const log = vscode.window.createOutputChannel('Tombolo', { log: true });
  const client = new ServerClient(context, host.server, log);
  const programs = new KnownPrograms(client);
  const bench = new Bench(context.extensionUri, client, programs);
  const status = new StatusItem();
  context.subscriptions.push(
    log,
    client,
    bench,
    programs,
    status,
    ...host.tools(context, { client, bench, programs, log }),
    client.onChecked((checked) => status.update(checked)),
    new StencilContext(client),
    showPagesBeside(context.extensionUri, bench),
    ...registerCommands(client, { bench, programs }, context.extension.id),
    ...registerDrawingCommands(client),
    startWhenNeeded(client),
  );
}

/** Starts the server when a document that may be a stencil is open, and stops listening then. */
function startWhenNeeded(client: ServerClient): vscode.Disposable {
  const listeners: vscode.Disposable[] = [];
  const stop = () => listeners.forEach((listener) => listener.dispose());
  const look = async (document: vscode.TextDocument) => {
    if (!(await mayBeStencil(document))) return;
    stop();
    await client.start();
  };
  const lookAtAll = () => vscode.workspace.textDocuments.forEach((document) => void look(document));
  const drawn = async (uri: vscode.Uri) => {
    if (!(await saysWhoDraws(uri))) return;
    stop();
    await client.checkFile(uri);
  };
  const drawings = vscode.workspace.createFileSystemWatcher('**/*.svg', false, false, true);
  const watcher = vscode.workspace.createFileSystemWatcher(`**/${CONFIG_NAME}`, false, true, true);
  listeners.push(
    watcher,
    watcher.onDidCreate(lookAtAll),
    drawings,
    drawings.onDidCreate(drawn),
    drawings.onDidChange(drawn),
    vscode.workspace.onDidOpenTextDocument((document) => void look(document)),
    vscode.workspace.onDidChangeTextDocument(({ document }) => {
      // With every keystroke only the text is looked at, not the disk.
      if (isSvg(document) && isMarked(document)) void look(document);
    }),
  );
  lookAtAll();
  return { dispose: stop };
}
