/**
 * The language server as a worker in a browser, and the engine that it asks, as a worker of the same text: so that what
 * both are made of is sent once. Files come from the editor, and no program can run.
 */
import {
  BrowserMessageReader,
  BrowserMessageWriter,
  createConnection,
  ProposedFeatures,
} from 'vscode-languageserver/browser';
import { homepage } from '../../package.json';
import type { FromWorker, ToWorker } from '../protocol/engine-worker';
import { ENGINE_NAME, SENT_FILES, type SentFilesParams, WANTED_FILES } from '../protocol/files';
import { checkAddress } from '../report/check-address';
import type { StartEngine } from '../server/engine/engine-client';
import { serve } from '../server/server';
import { EngineWorker } from '../worker/engine-worker';
import { SentFiles } from './sent-files';
import { WebFolders } from './web-folders';

declare const self: DedicatedWorkerGlobalScope;

// An editor puts words of its own before the names of workers.
if (self.name.endsWith(ENGINE_NAME)) runEngine();
else runServer(self.name.slice(Math.max(0, self.name.indexOf('blob:'))));

function runEngine(): void {
  const worker = new EngineWorker((message) => self.postMessage(message));
  self.addEventListener('message', ({ data }: MessageEvent<ToWorker>) => worker.receive(data));
}

/** @param text the address of this text, which only who started it knows */
function runServer(text: string): void {
  const scope = self as unknown as Worker;
  const connection = createConnection(
    ProposedFeatures.all,
    new BrowserMessageReader(scope),
    new BrowserMessageWriter(scope),
  );
  const files = new SentFiles((uris) => void connection.sendNotification(WANTED_FILES, { uris }));
  connection.onNotification(SENT_FILES, (sent: SentFilesParams) => files.take(sent.files));
  serve(connection, {
    startEngine: engineOf(text),
    pageOf: (check) => checkAddress(homepage, check),
    files,
    workspace: new WebFolders(),
    programFiles: { uriOf: () => undefined, rangeOf: (_uri, { range }) => range },
  });
}

function engineOf(text: string): StartEngine {
  return (hear, ended) => {
    const worker = new Worker(text, { name: ENGINE_NAME });
    worker.onmessage = ({ data }: MessageEvent<FromWorker>) => hear(data);
    worker.onerror = ({ message }) => ended(message);
    return { post: (message) => worker.postMessage(message), end: () => worker.terminate() };
  };
}
