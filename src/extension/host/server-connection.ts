/** How the extension comes to a server, wherever that runs. */
import type { ExtensionContext } from 'vscode';
import type { BaseLanguageClient, LanguageClientOptions } from 'vscode-languageclient';

/** Makes the client of a server that is not started yet. */
export type Connect = (context: ExtensionContext, options: LanguageClientOptions) => ServerConnection;

export interface ServerConnection {
  readonly client: BaseLanguageClient;
  /** The folder, outside of the workspace, that watched programs leave their marks in; none where none can run. */
  readonly marks?: string;
  /** Called before each start. */
  prepare?(): Promise<void>;
}
