/** The language server's process. The client says by arguments how it talks to it: `--stdio`, `--node-ipc`, … */
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node';
import { nodePlatform } from './host/node-platform';
import { serve } from './server';

const connection = createConnection(ProposedFeatures.all);

const log = (error: unknown) => {
  connection.console.error(error instanceof Error ? (error.stack ?? error.message) : String(error));
};
process.on('uncaughtException', log);
process.on('unhandledRejection', log);

serve(connection, nodePlatform(__dirname));
