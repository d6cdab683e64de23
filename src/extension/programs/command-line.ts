/** How programs that draw are run: what stands in a task, and the words that it starts. */
import path from 'node:path';

/** As tasks.json has it. */
export interface ProgramTask {
  readonly type: typeof TASK_TYPE;
  /** The program that runs, without arguments: `node`, `python3`. */
  readonly command: string;
  readonly args?: readonly string[];
  /** Relative to the workspace folder, which it is by default. */
  readonly cwd?: string;
}

export const TASK_TYPE = 'tombolo';

/** What runs a file, by how its name ends. */
const RUNNERS: Readonly<Record<string, readonly string[]>> = {
  '.js': ['node'],
  '.mjs': ['node'],
  '.cjs': ['node'],
  '.ts': ['npx', 'tsx'],
  '.mts': ['npx', 'tsx'],
  '.cts': ['npx', 'tsx'],
  '.jsx': ['npx', 'tsx'],
  '.tsx': ['npx', 'tsx'],
  '.py': ['python3'],
};

/** Where Python is not called by its version. */
const WINDOWS_PYTHON = ['python'];

/**
 * @param file relative to the workspace folder, with slashes
 * @param folder that the program runs in, in the same way; empty for the workspace folder itself
 * @returns undefined for what is no program
 */
export function taskFor(file: string, folder: string, platform: string): ProgramTask | undefined {
  const kind = path.posix.extname(file).toLowerCase();
  const [command, ...words] = kind === '.py' && platform === 'win32' ? WINDOWS_PYTHON : (RUNNERS[kind] ?? []);
  if (command === undefined) return undefined;
  const args = [...words, path.posix.relative(folder, file)];
  return { type: TASK_TYPE, command, args, ...(folder !== '' && { cwd: folder }) };
}

/** What is needed beside a task to run it. */
export interface Surroundings {
  /** Whether the user trusts what lies in the workspace: nothing of it runs before. */
  readonly isTrusted: boolean;
  /** The command line that is bundled with the extension. */
  readonly cli: string;
  /** Where the marks of its runs go. */
  readonly marks: string;
}

/** @returns the arguments of Node.js; undefined where the task may not run, or says nothing that could */
export function watchWords(task: Readonly<Record<string, unknown>>, around: Surroundings): string[] | undefined {
  const { command, args = [] } = task;
  if (!around.isTrusted || typeof command !== 'string' || command === '' || !isWords(args)) return undefined;
  return [around.cli, 'watch', '--marks', around.marks, '--', command, ...args];
}

function isWords(args: unknown): args is readonly string[] {
  return Array.isArray(args) && args.every((word) => typeof word === 'string');
}

/** Whether two tasks run the same. */
export function isSameTask(a: Readonly<Record<string, unknown>>, b: ProgramTask): boolean {
  const plain = ({ command, args = [], cwd = '' }: Readonly<Record<string, unknown>>) =>
    JSON.stringify([command, args, cwd]);
  return plain(a) === plain({ ...b });
}
