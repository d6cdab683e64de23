/** How the extension comes to a server, wherever that runs. */
import type { ExtensionContext } from 'vscode';
import type { BaseLanguageClient, LanguageClientOptions } from 'vscode-languageclient';

/** What comes to a server of the host's kind. */
export interface ServerHost {
  /** Loads the client, which is large, and makes one of a server that is not started yet. */
  connect(context: ExtensionContext, options: LanguageClientOptions): Promise<ServerConnection>;
  /** The folder, outside of the workspace, that watched programs leave their marks in; none where none can run. */
  marks?(context: ExtensionContext): string;
}

export interface ServerConnection {
  readonly client: BaseLanguageClient;
  /** Called before each start. */
  prepare?(): Promise<void>;
}
