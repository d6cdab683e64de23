/** With Node.js: the server is a process, programs are watched, pictures are separated in a thread. */
import { mkdir, rm } from 'node:fs/promises';
import * as vscode from 'vscode';
import { LanguageClient, TransportKind } from 'vscode-languageclient/node';
import { ProgramTasks } from '../programs/program-tasks';
import { watchProgram } from '../programs/watch-program';
import { Separating } from '../separating/separating';
import { activeResource } from '../svg-documents';
import type { ExtensionHost } from './host';

export const NODE_HOST: ExtensionHost = {
  server(context, options) {
    const marks = vscode.Uri.joinPath(context.storageUri ?? context.globalStorageUri, 'marks').fsPath;
    const server = { module: context.asAbsolutePath('dist/server.cjs'), transport: TransportKind.ipc };
    return {
      client: new LanguageClient('tombolo', 'Tombolo', server, options),
      marks,
      // What watches of another session have left is of no use any more.
      async prepare() {
        await rm(marks, { recursive: true, force: true });
        await mkdir(marks, { recursive: true });
      },
    };
  },
  tools(context, { client, bench, programs, log }) {
    const tasks = new ProgramTasks(client, context.asAbsolutePath('dist/cli.cjs'));
    const watch = vscode.commands.registerCommand('tombolo.watchProgram', async (given?: unknown) => {
      const program = given instanceof vscode.Uri && given.scheme !== 'webview-panel' ? given : undefined;
      const uri = program ?? bench.focused ?? activeResource();
      if (uri) await watchProgram(uri, { tasks, programs, bench });
    });
    return [tasks, watch, new Separating(context.extensionUri, log)];
  },
};
