/** In a browser alone: the server is a worker, and has the editor read its files. No program runs here. */
import * as vscode from 'vscode';
import { SENT_FILES, type SentFilesParams, WANTED_FILES, type WantedFiles } from '../../protocol/files';
import type { ExtensionHost } from './host';
import { readWanted } from './wanted-files';

const { l10n, window } = vscode;

/** Of the browser, which the compiler does not know here. */
declare const Worker: new (address: string, options: { readonly name: string }) => { terminate(): void };

export const WEB_HOST: ExtensionHost = {
  server: {
    async connect(context, options) {
      const { BrowserMessageReader, BrowserMessageWriter, LanguageClient } = await import(
        'vscode-languageclient/browser'
      );
      let worker: { terminate(): void } | undefined;
      let address: string | undefined;
      const start = async () => {
        worker?.terminate();
        address ??= await addressOfServer(vscode.Uri.joinPath(context.extensionUri, 'dist'));
        worker = new Worker(address, { name: address });
        // The editor puts workers of its own in the place of the browser's, which the client does not know as such.
        return { reader: new BrowserMessageReader(worker as never), writer: new BrowserMessageWriter(worker as never) };
      };
      const client = new LanguageClient('tombolo', 'Tombolo', start, options);
      client.onNotification(WANTED_FILES, async ({ uris }: WantedFiles) => {
        const sent: SentFilesParams = { files: await readWanted(uris) };
        await client.sendNotification(SENT_FILES, sent).catch(() => undefined);
      });
      context.subscriptions.push({ dispose: () => worker?.terminate() });
      return { client };
    },
  },
  tools: () => [
    absent(
      'tombolo.watchProgram',
      l10n.t('Programs are watched in VS Code on the desktop: none can run in a browser.'),
    ),
    absent('tombolo.separate', l10n.t('Pictures become sheets in VS Code on the desktop, not in a browser.')),
  ],
};

declare global {
  /** The files that the server's text requires: the package has once what several programs are made of. */
  var tomboloBeforeServer: readonly string[];
}

/** Of the text of a worker that may start another of the same text: the files themselves may lie on another host. */
async function addressOfServer(dist: vscode.Uri): Promise<string> {
  const read = (file: string) => vscode.workspace.fs.readFile(vscode.Uri.joinPath(dist, file));
  const modules = await Promise.all(
    globalThis.tomboloBeforeServer.map(async (file) => asModule(file, await read(file))),
  );
  const text = [REQUIRE, ...modules.flat(), await read('server-web.js')];
  return URL.createObjectURL(new Blob(text as never, { type: 'text/javascript' }));
}

/** Text before that of programs, for modules of the older kind. */
const REQUIRE = 'const modules = {}, require = (name) => modules[name];\n';

function asModule(file: string, text: Uint8Array): readonly unknown[] {
  return [
    '(function (module) {\nlet { exports } = module;\n',
    text,
    `\nmodules['./${file}'] = module.exports;\n})({ exports: {} });\n`,
  ];
}

function absent(command: string, said: string): vscode.Disposable {
  return vscode.commands.registerCommand(command, () => void window.showInformationMessage(said));
}
