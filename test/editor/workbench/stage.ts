/** One VS Code server and one browser for all files of a run: vitest starts them before the first and ends them. */
import type { TestProject } from 'vitest/node';
import { serveBrowser } from '../../../src/build/host/browser.mjs';
import { startHost } from '../../../src/build/host/host.mjs';
import { root } from './root';

export interface Stage {
  readonly port: number;
  readonly token: string;
  /** The folder that holds everything the server writes; it goes with the server. */
  readonly state: string;
  /** Where the browser is reached. */
  readonly browser: string;
  /** The extension that is driven; undefined where it is installed. */
  readonly developmentPath: string | undefined;
}

declare module 'vitest' {
  interface ProvidedContext {
    readonly stage: Stage;
  }
}

interface StageOptions {
  /** Holds installed extensions; without it the extension runs from the sources' `dist`. */
  readonly extensionsDir?: string;
  /** A folder that holds another build of the extension. */
  readonly developmentPath?: string;
  /** Of the user. */
  readonly settings?: Readonly<Record<string, unknown>>;
}

export async function raiseStage({ provide }: TestProject, options: StageOptions = {}): Promise<() => Promise<void>> {
  const { extensionsDir } = options;
  const host = await startHost(options);
  const browser = await serveBrowser();
  const { port, token, state } = host;
  // TOMBOLO_EXTENSION names a folder with another build of the extension.
  const built = process.env.TOMBOLO_EXTENSION ?? options.developmentPath ?? root;
  const developmentPath = extensionsDir === undefined ? built : undefined;
  provide('stage', { port, token, state, browser: browser.wsEndpoint(), developmentPath });
  return async () => {
    await browser.close();
    await host.stop();
  };
}

export default (project: TestProject): Promise<() => Promise<void>> => raiseStage(project);
