/** Wires the checker to a language server connection. */
import path from 'node:path';
import {
  CodeActionKind,
  type Connection,
  DidChangeConfigurationNotification,
  type InitializeParams,
  type InitializeResult,
  TextDocumentSyncKind,
  TextDocuments,
} from 'vscode-languageserver/node';
import { TextDocument } from 'vscode-languageserver-textdocument';
import {
  BEGIN,
  BRIDGE_AT,
  BRIDGE_ISLANDS,
  BRIDGE_PLAN,
  type BridgeAnswer,
  type BridgeAtParams,
  type BridgedIslands,
  type BridgePlanParams,
  CHECK_AGAIN,
  CHECKED,
  type DocumentParams,
  type PlaceParams,
  SHAPE_AT,
  STACK,
} from '../protocol/index';
import { checkPages } from './documents/check-pages';
import type { CheckedDocument } from './documents/checked-document';
import { readSettings } from './documents/settings';
import { isConfigUri, StencilChecker } from './documents/validator';
import { BRIDGE_CHANGES } from './features/bridge-refactors';
import { codeActions, FIX_ALL } from './features/code-actions';
import { documentSymbols, hoverAt } from './features/symbols-and-hover';
import { beginningFor } from './preview/begin';
import { bridgeOfferAt, bridgePlan } from './preview/bridge-requests';
import { handlePartRequests } from './preview/hit-handlers';
import { previewStackOf } from './preview/preview-model';
import { shapeAt } from './preview/shape-at';
import { handleViewRequests } from './preview/view-handlers';

/** @param folder where the server's own files are: `checks/<id>.md` */
export function serve(connection: Connection, folder: string): void {
  const documents = new TextDocuments(TextDocument);
  const checker = new StencilChecker(documents, {
    diagnostics: (uri, version, diagnostics) =>
      void connection.sendDiagnostics(version === undefined ? { uri, diagnostics } : { uri, version, diagnostics }),
    checked: (checked) => void connection.sendNotification(CHECKED, checked),
    log: (message) => connection.console.log(message),
    pageOf: checkPages(path.join(folder, 'checks')),
  });
  documents.onDidChangeContent(({ document }) => checker.changed(document));
  documents.onDidSave(({ document }) => checker.saved(document));
  documents.onDidClose(({ document }) => checker.closed(document));
  connection.onDidChangeWatchedFiles(({ changes }) => {
    if (changes.some(({ uri }) => isConfigUri(uri))) checker.configChanged();
    for (const { uri } of changes) if (!isConfigUri(uri)) checker.drawingChanged(uri);
  });
  connection.onShutdown(() => checker.dispose());
  const client: ClientAbilities = { showsDisabled: false };
  followSettings(connection, checker, client);
  answerRequests(connection, checker, client);
  handleViewRequests(connection, { current: (uri) => checker.current(uri), openText: (uri) => documents.get(uri) });
  documents.listen(connection);
  connection.listen();
}

/** What the client says that it can do, once it has said so. */
interface ClientAbilities {
  /** Shows actions that are not to be had, with the reason. */
  showsDisabled: boolean;
}

function initializeResult(): InitializeResult {
  return {
    capabilities: {
      textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental, save: true },
      documentSymbolProvider: true,
      hoverProvider: true,
      codeActionProvider: { codeActionKinds: [CodeActionKind.QuickFix, BRIDGE_CHANGES, FIX_ALL] },
    },
    serverInfo: { name: 'tombolo' },
  };
}

/** Takes the settings from the client: those sent at the start, then whatever it says when it announces a change. */
function followSettings(connection: Connection, checker: StencilChecker, client: ClientAbilities): void {
  let asks = false;
  connection.onInitialize(({ initializationOptions, capabilities }: InitializeParams) => {
    checker.settings = readSettings(initializationOptions);
    asks = capabilities.workspace?.configuration ?? false;
    client.showsDisabled = capabilities.textDocument?.codeAction?.disabledSupport ?? false;
    return initializeResult();
  });
  connection.onInitialized(() => {
    if (asks) void connection.client.register(DidChangeConfigurationNotification.type, { section: 'tombolo' });
  });
  connection.onDidChangeConfiguration(async ({ settings }) => {
    const sent: unknown = asks ? await connection.workspace.getConfiguration('tombolo') : settings?.tombolo;
    checker.settings = readSettings(sent);
  });
}

function answerRequests(connection: Connection, checker: StencilChecker, client: ClientAbilities): void {
  /** Never rejects: what goes wrong is logged, and the answer is that of an unknown document. */
  const answer = <T>(uri: string, otherwise: T, from: (checked: CheckedDocument) => T): T => {
    try {
      const checked = checker.current(uri);
      return checked ? from(checked) : otherwise;
    } catch (error) {
      connection.console.error(`${uri}: ${error instanceof Error ? error.stack : String(error)}`);
      return otherwise;
    }
  };
  connection.onCodeAction(async (params, token) => {
    const { uri } = params.textDocument;
    const checked = answer(uri, undefined, (found) => (found.stencil ? found : undefined));
    if (!checked) return [];
    return codeActions(checked, params, token, client.showsDisabled).catch((error: unknown) => {
      connection.console.error(`${uri}: ${error instanceof Error ? error.stack : String(error)}`);
      return [];
    });
  });
  connection.onDocumentSymbol(({ textDocument: { uri } }) =>
    answer(uri, null, (checked) => (checked.stencil ? documentSymbols(checked) : null)),
  );
  connection.onHover(({ textDocument: { uri }, position }) =>
    answer(uri, null, (checked) => (checked.stencil && hoverAt(checked, checked.document.offsetAt(position))) || null),
  );
  connection.onRequest(STACK, ({ uri }: DocumentParams) => answer(uri, null, previewStackOf));
  connection.onRequest(SHAPE_AT, ({ uri, offset }: PlaceParams) => {
    // A moving caret never makes a check: the bench asks again when the next one is done.
    const known = checker.known(uri);
    return (known && shapeAt(known.report.drawing, offset)) ?? null;
  });
  handlePartRequests(connection, (uri) => checker.known(uri));
  connection.onRequest(CHECK_AGAIN, ({ uri }: DocumentParams) => {
    checker.checkNow(uri);
    return null;
  });
  connection.onRequest(BEGIN, ({ uri }: DocumentParams) => answer(uri, null, beginningFor));
  connection.onRequest(BRIDGE_ISLANDS, ({ uri }: DocumentParams) => answer(uri, null, bridged));
  connection.onRequest<BridgeAnswer, void>(BRIDGE_AT, (params: BridgeAtParams) =>
    answer<BridgeAnswer>(params.uri, null, (checked) => bridgeOfferAt(checked, params)),
  );
  connection.onRequest<BridgeAnswer, void>(BRIDGE_PLAN, (params: BridgePlanParams) =>
    answer<BridgeAnswer>(params.uri, null, (checked) => bridgePlan(checked, params)),
  );
}

function bridged(checked: CheckedDocument): BridgedIslands | null {
  const { edits, bridges, refusals } = checked.bridgeIslands();
  return { version: checked.version, edits, bridges, refusals: refusals.map(({ message }) => message) };
}
