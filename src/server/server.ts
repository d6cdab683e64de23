/** Wires the checker and the engine's worker to a language server connection. */
import {
  type CodeAction,
  CodeActionKind,
  type Connection,
  DidChangeConfigurationNotification,
  type InitializeParams,
  type InitializeResult,
  MessageType,
  ShowMessageNotification,
  TextDocumentSyncKind,
  TextDocuments,
} from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { CHECK_AGAIN, CHECK_FILE, CHECKED, type DocumentParams, FIX_SAFE } from '../protocol/index';
import { noticeText } from '../text/notice';
import { handleBenchRequests } from './bench/bench-handlers';
import type { CheckerOutput } from './documents/checker-surroundings';
import type { KnownDocument } from './documents/known-document';
import { readSettings } from './documents/settings';
import { isConfigUri, StencilChecker } from './documents/stencil-checker';
import { EngineClient } from './engine/engine-client';
import { BRIDGE_CHANGES, codeActions, FIX_ALL } from './features/code-actions';
import { hoverAt } from './features/hover';
import { resolveAction, resolveAll } from './features/resolve-action';
import { safeFixes } from './features/safe-fixes';
import { documentSymbols } from './features/symbols';
import type { Platform } from './host/platform';
import { programActions } from './programs/program-actions';
import { ProgramFeatures } from './programs/program-features';
import { Programs, type ProgramsOutput } from './programs/programs';

/** What is served, and with what. */
export interface Server {
  readonly connection: Connection;
  readonly documents: TextDocuments<TextDocument>;
  readonly checker: StencilChecker;
  readonly engine: EngineClient;
  readonly programs: Programs;
  readonly programFeatures: ProgramFeatures;
}

/** What the editor says at the start that it can do. */
interface EditorSupport {
  /** It can be offered features later, for documents of other languages. */
  registers: boolean;
}

/** @param platform what it stands on: a process or a worker */
export function serve(connection: Connection, platform: Platform): void {
  const documents = new TextDocuments(TextDocument);
  const log = (message: string) => connection.console.log(message);
  const { files, workspace, pageOf } = platform;
  const engine: EngineClient = new EngineClient(platform.startEngine, {
    offers: (facts) => checker.offered(facts),
    restarted: (lost) => checker.engineRestarted(lost),
    log,
  });
  const editor: EditorSupport = { registers: false };
  const told: ProgramsOutput = {
    diagnostics: (uri, diagnostics) => void connection.sendDiagnostics({ uri, diagnostics }),
    programs: (list) => programFeatures.tell(list, editor.registers),
    drawn: (uris) => uris.forEach((uri) => checker.drawn(uri)),
    pageOf,
  };
  const programs = new Programs(platform.programFiles, told, platform.watchMarks);
  const programFeatures = new ProgramFeatures(connection, programs, engine);
  const outlet: CheckerOutput = {
    diagnostics: (uri, version, diagnostics) =>
      void connection.sendDiagnostics(version === undefined ? { uri, diagnostics } : { uri, version, diagnostics }),
    checked: (checked) => void connection.sendNotification(CHECKED, checked),
    log,
    pageOf,
  };
  const checker: StencilChecker = new StencilChecker(documents, engine, outlet, { files, workspace, programs });
  documents.onDidChangeContent(({ document }) => checker.changed(document));
  documents.onDidSave(({ document }) => checker.saved(document));
  documents.onDidClose(({ document }) => checker.closed(document));
  files.follow?.((uri) => {
    if (!isConfigUri(uri)) checker.drawingChanged(uri);
    // The check that asked for it may be under way, so that no project is known yet that names it.
    checker.configChanged();
  });
  connection.onDidChangeWatchedFiles(({ changes }) => {
    for (const { uri } of changes) files.changed?.(uri);
    if (changes.some(({ uri }) => isConfigUri(uri))) checker.configChanged();
    for (const { uri } of changes) if (!isConfigUri(uri)) checker.drawingChanged(uri);
  });
  connection.onShutdown(() => checker.dispose());
  const server = { connection, documents, checker, engine, programs, programFeatures };
  answerInitialize(server, editor);
  answerFeatures(server);
  handleBenchRequests(connection, checker, engine);
  connection.onRequest(CHECK_AGAIN, async ({ uri }: DocumentParams) => {
    await checker.checkNow(uri);
    return null;
  });
  connection.onRequest(CHECK_FILE, ({ uri }: DocumentParams) => checker.checkFile(uri));
  connection.onRequest(FIX_SAFE, ({ uri }: DocumentParams) =>
    safeFixes(uri, { engine, current: (each) => checker.current(each) }),
  );
  documents.listen(connection);
  connection.listen();
}

function initializeResult(): InitializeResult {
  return {
    capabilities: {
      textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental, save: true },
      documentSymbolProvider: true,
      hoverProvider: true,
      codeActionProvider: {
        codeActionKinds: [CodeActionKind.QuickFix, BRIDGE_CHANGES, FIX_ALL],
        resolveProvider: true,
      },
    },
    serverInfo: { name: 'tombolo' },
  };
}

/** Takes the settings from the client: those sent at the start, then whatever it says when it announces a change. */
function answerInitialize(server: Server, editor: EditorSupport): void {
  const { connection, checker, programs } = server;
  let [asks, watchesFolders] = [false, false];
  connection.onInitialize(({ initializationOptions, capabilities, ...params }: InitializeParams) => {
    checker.workspace.open(params);
    watchesFolders = capabilities.workspace?.workspaceFolders === true;
    checker.configure(readSettings(initializationOptions));
    asks = capabilities.workspace?.configuration ?? false;
    const { codeAction, hover } = capabilities.textDocument ?? {};
    editor.registers = Boolean(hover?.dynamicRegistration && codeAction?.dynamicRegistration);
    const marks = marksFolder(initializationOptions);
    if (marks !== undefined) programs.follow(marks);
    const resolves = codeAction?.resolveSupport?.properties.includes('edit') ?? false;
    answerCodeActions(server, {
      resolves,
      disables: codeAction?.disabledSupport ?? false,
      goesTo: hasGoTo(initializationOptions),
    });
    return initializeResult();
  });
  connection.onInitialized(() => {
    if (asks) void connection.client.register(DidChangeConfigurationNotification.type, { section: 'tombolo' });
    if (watchesFolders) {
      connection.workspace.onDidChangeWorkspaceFolders(({ added, removed }) => {
        checker.workspace.change(
          added.map(({ uri }) => uri),
          removed.map(({ uri }) => uri),
        );
        checker.configChanged();
      });
    }
  });
  connection.onDidChangeConfiguration(async ({ settings }) => {
    const sent: unknown = asks ? await connection.workspace.getConfiguration('tombolo') : settings?.tombolo;
    checker.configure(readSettings(sent));
  });
}

/** What the client can do with code actions. */
interface ActionSupport {
  /** It asks for the edits of the action that is chosen. */
  readonly resolves: boolean;
  /** It can show actions that cannot be had, with the reason. */
  readonly disables: boolean;
  /** It has the command that puts the caret somewhere. */
  readonly goesTo: boolean;
}

const hasGoTo = (options: unknown): boolean => (options as { goTo?: unknown } | undefined)?.goTo === true;

/** The folder that watched programs leave their marks in. */
function marksFolder(options: unknown): string | undefined {
  const { marks } = (options ?? {}) as { readonly marks?: unknown };
  return typeof marks === 'string' ? marks : undefined;
}

const withoutCommand = ({ command: _theirs, ...action }: CodeAction): CodeAction => action;

function answerCodeActions(server: Server, { resolves, disables, goesTo }: ActionSupport): void {
  const { connection, checker, engine, programs } = server;
  const sources = { engine, current: (uri: string) => checker.current(uri) };
  connection.onCodeAction((params, token) => {
    const { uri } = params.textDocument;
    // All that is offered there are commands of an editor that has ours.
    if (programs.isProgram(uri)) return goesTo ? programActions(programs, params) : [];
    return answer(server, uri, [], async (known, live) => {
      const actions = await codeActions({ known, live, engine }, params, token);
      const shown = resolves ? actions : await resolveAll(actions, sources, token);
      const listed = disables ? shown : shown.filter(({ disabled }) => !disabled);
      return goesTo ? listed : listed.map(withoutCommand);
    });
  });
  connection.onCodeActionResolve(async (action: CodeAction) => {
    const resolved = await resolveAction(action, sources);
    if (!resolved.edit && !action.disabled) {
      const message = noticeText(`${action.title}: ${reasonFor(resolved)}`);
      await connection.sendNotification(ShowMessageNotification.type, { type: MessageType.Info, message });
    }
    return goesTo ? resolved : withoutCommand(resolved);
  });
}

function reasonFor({ disabled }: CodeAction): string {
  return disabled?.reason ?? 'Another of the fixes that are offered here already does the same.';
}

function answerFeatures(server: Server): void {
  const { connection, engine, programs, programFeatures } = server;
  connection.onDocumentSymbol(({ textDocument: { uri } }) =>
    answer(server, uri, null, (known, live) => documentSymbols(known, live)),
  );
  connection.onHover(({ textDocument: { uri }, position }) => {
    if (programs.isProgram(uri)) return programFeatures.hover(uri, position.line);
    return answer(server, uri, null, async (known, live) => {
      return (await hoverAt(known, live, live.offsetAt(position), engine)) ?? null;
    });
  });
}

/** Never rejects: what goes wrong is logged, and the answer is that of a document that is no stencil. */
async function answer<T>(
  { connection, checker, documents }: Server,
  uri: string,
  otherwise: T,
  from: (known: KnownDocument, live: TextDocument) => T | Promise<T>,
): Promise<T> {
  try {
    const known = await checker.facts(uri);
    const live = documents.get(uri);
    return known && live ? await from(known, live) : otherwise;
  } catch (error) {
    connection.console.error(`${uri}: ${error instanceof Error ? error.stack : String(error)}`);
    return otherwise;
  }
}
