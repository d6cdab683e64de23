/** Watch This Program's Drawings: a task for the open program, kept in tasks.json and started, and the bench beside it. */
import path from 'node:path';
import * as vscode from 'vscode';
import { CONFIG_NAME } from '../../config/types';
import type { Bench } from '../bench';
import { isThere } from '../svg-documents';
import { isSameTask, type ProgramTask, TASK_TYPE, taskFor } from './command-line';
import type { KnownPrograms } from './known-programs';
import type { ProgramTasks } from './program-tasks';

const { l10n, window } = vscode;

/** Milliseconds that the first drawing is waited for before the bench is not opened by itself any more. */
const PATIENCE = 60_000;

export interface Watchers {
  readonly tasks: ProgramTasks;
  readonly programs: KnownPrograms;
  readonly bench: Bench;
}

export async function watchProgram(program: vscode.Uri, { tasks, programs, bench }: Watchers): Promise<void> {
  if (!vscode.workspace.isTrusted) return askForTrust();
  const folder = vscode.workspace.getWorkspaceFolder(program);
  const root = folder?.uri ?? vscode.Uri.joinPath(program, '..');
  const file = relative(root, program);
  const task = taskFor(file, relative(root, await runningFolder(program, root)), process.platform);
  if (!task) {
    void window.showWarningMessage(l10n.t('Programs in JavaScript, TypeScript and Python can be watched.'));
    return;
  }
  await vscode.workspace.save(program);
  if (folder) await configure(task, folder);
  if (!isRunning(task)) {
    const scope = folder ?? vscode.TaskScope.Workspace;
    const cwd = { ...task, cwd: folder ? task.cwd : root.fsPath };
    const made = tasks.taskOf(folder ? { ...task } : cwd, scope, labelOf(task));
    if (made) await vscode.tasks.executeTask(made);
  }
  openBenchSoon(program, programs, bench);
}

async function askForTrust(): Promise<void> {
  const manage = l10n.t('Manage Workspace Trust');
  const said = l10n.t('Programs run in trusted workspaces only.');
  if ((await window.showWarningMessage(said, manage)) === manage) {
    await vscode.commands.executeCommand('workbench.trust.manage');
  }
}

const labelOf = ({ args = [] }: ProgramTask): string => l10n.t('Watch {0}', args.at(-1) ?? '');

const relative = (root: vscode.Uri, uri: vscode.Uri): string => path.posix.relative(root.path, uri.path);

/** Where people run it: beside the project file of its language or of its stencil, else in the workspace folder. */
async function runningFolder(program: vscode.Uri, root: vscode.Uri): Promise<vscode.Uri> {
  const names = [CONFIG_NAME, 'package.json', 'pyproject.toml'];
  let folder = vscode.Uri.joinPath(program, '..');
  for (; folder.path.length > root.path.length; folder = vscode.Uri.joinPath(folder, '..')) {
    for (const name of names) if (await isThere(vscode.Uri.joinPath(folder, name))) return folder;
  }
  return root;
}

/** Puts the task into the folder's tasks.json, unless it stands there. */
async function configure(task: ProgramTask, folder: vscode.WorkspaceFolder): Promise<void> {
  const settings = vscode.workspace.getConfiguration('tasks', folder.uri);
  const before = settings.inspect<Record<string, unknown>[]>('tasks')?.workspaceFolderValue ?? [];
  if (before.some((each) => each.type === TASK_TYPE && isSameTask(each, task))) return;
  const entry = { label: labelOf(task), ...task, isBackground: true, problemMatcher: ['$tombolo-watch'] };
  const { WorkspaceFolder } = vscode.ConfigurationTarget;
  await settings.update('version', '2.0.0', WorkspaceFolder);
  await settings.update('tasks', [...before, entry], WorkspaceFolder);
}

function isRunning(task: ProgramTask): boolean {
  return vscode.tasks.taskExecutions.some(
    ({ task: { definition } }) => definition.type === TASK_TYPE && isSameTask(definition, task),
  );
}

/** As soon as it has drawn something. */
function openBenchSoon(program: vscode.Uri, programs: KnownPrograms, bench: Bench): void {
  const open = (): boolean => {
    const [drawing] = programs.drawingsOf(program);
    if (drawing) void bench.openBeside(program, drawing);
    return drawing !== undefined;
  };
  if (open()) return;
  const end = (): void => {
    clearTimeout(timer);
    listener.dispose();
  };
  const listener = programs.onChanged(() => open() && end());
  const timer = setTimeout(end, PATIENCE);
}
