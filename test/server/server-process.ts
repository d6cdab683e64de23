/** The built language server in a process of its own, spoken to over its standard streams as an editor would. */
import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import {
  type CodeAction,
  createProtocolConnection,
  type Diagnostic,
  type ProtocolConnection,
  type PublishDiagnosticsParams,
  StreamMessageReader,
  StreamMessageWriter,
  type TextDocumentClientCapabilities,
  type TextDocumentContentChangeEvent,
} from 'vscode-languageserver-protocol/node';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { URI } from 'vscode-uri';
import type { Checked } from '../../src/protocol/index';

const WAIT = 20_000;

export class ServerProcess {
  readonly published: PublishDiagnosticsParams[] = [];
  readonly checked: Checked[] = [];
  readonly logged: string[] = [];
  /** What the user was told. */
  readonly shown: string[] = [];
  private readonly listeners = new Set<() => void>();
  private readonly documents = new Map<string, TextDocument>();
  private settings: unknown = { delay: 20 };
  private settingsTaken: () => void = () => undefined;

  readonly folder: string;
  private readonly child: ChildProcess;
  readonly connection: ProtocolConnection;

  private constructor(folder: string, child: ChildProcess, connection: ProtocolConnection) {
    this.folder = folder;
    this.child = child;
    this.connection = connection;
  }

  /**
   * @param serverFile what `buildServer` gave
   * @param textDocument what the editor can do; by default it takes no answers that are completed later
   * @param folder goes when the server is stopped; by default a new one
   * @param options more that the editor says of itself
   */
  static async start(
    serverFile: string,
    textDocument: TextDocumentClientCapabilities = {},
    folder: string = mkdtempSync(path.join(tmpdir(), 'tombolo-server-test-')),
    options: object = {},
  ): Promise<ServerProcess> {
    const child = spawn(process.execPath, [serverFile, '--stdio'], { stdio: ['pipe', 'pipe', 'inherit'] });
    const connection = createProtocolConnection(
      new StreamMessageReader(child.stdout),
      new StreamMessageWriter(child.stdin),
    );
    const server = new ServerProcess(folder, child, connection);
    server.listen();
    await connection.sendRequest('initialize', {
      processId: process.pid,
      rootUri: URI.file(folder).toString(),
      initializationOptions: { ...(server.settings as object), ...options },
      capabilities: {
        workspace: { configuration: true, didChangeConfiguration: { dynamicRegistration: true } },
        textDocument,
      },
    });
    await connection.sendNotification('initialized', {});
    return server;
  }

  private listen(): void {
    const keep =
      <T>(list: T[]) =>
      (item: T) => {
        list.push(item);
        for (const listener of this.listeners) listener();
      };
    this.connection.onNotification('textDocument/publishDiagnostics', keep(this.published));
    this.connection.onNotification('tombolo/checked', keep(this.checked));
    this.connection.onNotification('window/logMessage', ({ message }: { message: string }) => {
      keep(this.logged)(message);
    });
    this.connection.onNotification('window/showMessage', ({ message }: { message: string }) => {
      keep(this.shown)(message);
    });
    this.connection.onRequest('client/registerCapability', () => null);
    this.connection.onRequest('workspace/configuration', () => {
      this.settingsTaken();
      return [this.settings];
    });
    this.connection.listen();
  }

  async stop(): Promise<void> {
    await this.connection.sendRequest('shutdown');
    const ended = new Promise((resolve) => this.child.once('exit', resolve));
    await this.connection.sendNotification('exit');
    await ended;
    rmSync(this.folder, { recursive: true, force: true });
  }

  /** Ends it as the system would. The folder stays. */
  async kill(): Promise<void> {
    const ended = new Promise((resolve) => this.child.once('exit', resolve));
    this.child.kill('SIGKILL');
    await ended;
    this.connection.dispose();
  }

  get pid(): number | undefined {
    return this.child.pid;
  }

  get alive(): boolean {
    return this.child.exitCode === null && this.child.signalCode === null;
  }

  uri(name: string): string {
    return URI.file(path.join(this.folder, name)).toString();
  }

  write(name: string, text: string): void {
    writeFileSync(path.join(this.folder, name), text);
  }

  /** Settles when the server has taken them. */
  async set(settings: unknown): Promise<void> {
    this.settings = settings;
    const asked = new Promise<void>((resolve) => {
      this.settingsTaken = resolve;
    });
    await this.connection.sendNotification('workspace/didChangeConfiguration', { settings: {} });
    await asked;
    // What is asked next is heard after the answer.
    await this.connection.sendRequest('tombolo/checkAgain', { uri: this.uri('none.svg') });
  }

  async open(name: string, text: string): Promise<TextDocument> {
    const uri = this.uri(name);
    const document = TextDocument.create(uri, 'xml', 1, text);
    this.documents.set(uri, document);
    await this.connection.sendNotification('textDocument/didOpen', {
      textDocument: { uri, languageId: 'xml', version: 1, text },
    });
    return document;
  }

  /** Sends the changes with the next version, and makes them in `document` too. */
  async change(document: TextDocument, contentChanges: TextDocumentContentChangeEvent[]): Promise<void> {
    const version = document.version + 1;
    TextDocument.update(document, contentChanges, version);
    await this.connection.sendNotification('textDocument/didChange', {
      textDocument: { uri: document.uri, version },
      contentChanges,
    });
  }

  async close(document: TextDocument): Promise<void> {
    await this.connection.sendNotification('textDocument/didClose', { textDocument: { uri: document.uri } });
  }

  /** Waits for something that comes with a notification. */
  async until<T>(what: string, find: () => T | undefined): Promise<T> {
    return new Promise((resolve, reject) => {
      const timer = setTimeout(() => {
        this.listeners.delete(look);
        reject(new Error(`Waited in vain for ${what}. Logged: ${this.logged.join('\n')}`));
      }, WAIT);
      const look = () => {
        const found = find();
        if (found === undefined) return;
        clearTimeout(timer);
        this.listeners.delete(look);
        resolve(found);
      };
      this.listeners.add(look);
      look();
    });
  }

  /** The diagnostics published for the present version of a document, when its run is done. */
  async diagnostics({ uri, version }: TextDocument): Promise<Diagnostic[]> {
    await this.until(`a run on ${uri} at version ${version}`, () =>
      this.checked.find((run) => run.uri === uri && run.version === version),
    );
    return this.until(
      `diagnostics of ${uri} at version ${version}`,
      () => this.published.findLast((sent) => sent.uri === uri && sent.version === version)?.diagnostics,
    );
  }

  /** What the lightbulb lists where the caret rests. */
  actionsAt(document: TextDocument, offset: number): Promise<CodeAction[]> {
    const start = document.positionAt(offset);
    return this.connection.sendRequest('textDocument/codeAction', {
      textDocument: { uri: document.uri },
      range: { start, end: start },
      context: { diagnostics: [], triggerKind: 2 },
    });
  }

  actions(document: TextDocument, diagnostic: Diagnostic, only?: string[]): Promise<CodeAction[]> {
    return this.connection.sendRequest('textDocument/codeAction', {
      textDocument: { uri: document.uri },
      range: diagnostic.range,
      context: { diagnostics: [diagnostic], ...(only && { only }) },
    });
  }
}

/** An editor that asks for the edits of the action that is chosen, and shows those that cannot be had. */
export const RESOLVES: TextDocumentClientCapabilities = {
  codeAction: { resolveSupport: { properties: ['edit'] }, dataSupport: true, disabledSupport: true },
};
