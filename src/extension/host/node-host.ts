/** With Node.js: the server is a process, programs are watched, pictures are separated in a thread. */
import { mkdir, rm } from 'node:fs/promises';
import * as vscode from 'vscode';
import { ProgramTasks } from '../programs/program-tasks';
import { watchProgram } from '../programs/watch-program';
import { Separating } from '../separating/separating';
import { activeResource } from '../svg-documents';
import type { ExtensionHost } from './host';

export const NODE_HOST: ExtensionHost = {
  server: {
    async connect(context, options) {
      const { LanguageClient, TransportKind } = await import('vscode-languageclient/node');
      const server = { module: context.asAbsolutePath('dist/server.cjs'), transport: TransportKind.ipc };
      return {
        client: new LanguageClient('tombolo', 'Tombolo', server, options),
        // What watches of another session have left is of no use any more.
        async prepare() {
          await rm(marksOf(context), { recursive: true, force: true });
          await mkdir(marksOf(context), { recursive: true });
        },
      };
    },
    marks: marksOf,
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

function marksOf(context: vscode.ExtensionContext): string {
  return vscode.Uri.joinPath(context.storageUri ?? context.globalStorageUri, 'marks').fsPath;
}
