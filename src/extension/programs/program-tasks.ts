/** Tasks of type `tombolo`: each watches a program that the user has named, in trusted workspaces only. */
import path from 'node:path';
import * as vscode from 'vscode';
import { hashOfText } from '../../text/hash';
import type { ServerClient } from '../server-client';
import { TASK_TYPE, watchWords } from './command-line';

export class ProgramTasks implements vscode.TaskProvider, vscode.Disposable {
  private readonly client: ServerClient;
  private readonly cli: string;
  private readonly listeners: vscode.Disposable[];

  /** @param cli the bundled command line */
  constructor(client: ServerClient, cli: string) {
    this.client = client;
    this.cli = cli;
    this.listeners = [
      vscode.tasks.registerTaskProvider(TASK_TYPE, this),
      vscode.tasks.onDidStartTask(({ execution }) => {
        if (execution.task.definition.type === TASK_TYPE) void this.client.start();
      }),
      // A watch that was killed could not take its marks away.
      vscode.tasks.onDidEndTask(({ execution: { task } }) => {
        if (task.definition.type === TASK_TYPE) void this.removeMarks(task);
      }),
    ];
  }

  /** None is made up: what is not configured does not run. */
  provideTasks(): vscode.Task[] {
    return [];
  }

  resolveTask(task: vscode.Task): vscode.Task | undefined {
    return this.taskOf(task.definition, task.scope, task.name);
  }

  /** @returns undefined where it may not run */
  taskOf(definition: vscode.TaskDefinition, scope: vscode.Task['scope'], name: string): vscode.Task | undefined {
    const marks = this.marksOf(definition, scope);
    const words = watchWords(definition, { isTrusted: vscode.workspace.isTrusted, cli: this.cli, marks });
    if (!words) return undefined;
    const where = typeof definition.cwd === 'string' ? definition.cwd : '';
    const root = folderOf(scope);
    const cwd = root === undefined ? where : path.resolve(root, where);
    // The editor's own Node.js; where that is an Electron, it is told to be one.
    const options = { env: { ELECTRON_RUN_AS_NODE: '1' }, ...(cwd !== '' && { cwd }) };
    const execution = new vscode.ProcessExecution(process.execPath, words, options);
    const task = new vscode.Task(
      definition,
      scope ?? vscode.TaskScope.Workspace,
      name,
      'Tombolo',
      execution,
      '$tombolo-watch',
    );
    task.isBackground = true;
    task.presentationOptions = { reveal: vscode.TaskRevealKind.Silent, showReuseMessage: false };
    return task;
  }

  private marksOf(definition: vscode.TaskDefinition, scope: vscode.Task['scope']): string {
    const { command, args, cwd } = definition;
    const name = hashOfText(JSON.stringify([folderOf(scope) ?? '', command, args, cwd]));
    return path.join(this.client.marks ?? '', `${name}.json`);
  }

  private async removeMarks({ definition, scope }: vscode.Task): Promise<void> {
    const marks = vscode.Uri.file(this.marksOf(definition, scope));
    await vscode.workspace.fs.delete(marks).then(
      () => undefined,
      () => undefined,
    );
  }

  dispose(): void {
    for (const listener of this.listeners) listener.dispose();
  }
}

function folderOf(scope: vscode.Task['scope']): string | undefined {
  if (typeof scope === 'object') return scope.uri.fsPath;
  return vscode.workspace.workspaceFolders?.[0]?.uri.fsPath;
}
