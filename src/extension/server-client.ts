/** The language server as the rest of the extension sees it: started when first needed, in a process of its own. */
import * as vscode from 'vscode';
import { LanguageClient, RevealOutputChannelOn, TransportKind } from 'vscode-languageclient/node';
import {
  BEGIN,
  type Beginning,
  BRIDGE_AT,
  BRIDGE_ISLANDS,
  BRIDGE_PLAN,
  type BridgedIslands,
  CHECK_AGAIN,
  CHECK_FILE,
  CHECKED,
  type Checked,
  FIX_SAFE,
  type FileChecked,
  type MarkedShape,
  type PreviewStack,
  type SafeFixes,
  SHAPE_AT,
  STACK,
  type VersionedEdits,
  WRAP_PATHS,
} from '../protocol/index';
import { DROP_LAYER_PLAN, LAYER_PLAN, LAYER_SKETCH, PLAN_GHOST } from '../protocol/layer-plan';
import { PART, PART_AT } from '../protocol/parts';
import type { BenchRequest } from '../protocol/requests';
import { BRIDGE_GHOST, CHANGE_BRIDGE, STANDING_BRIDGES } from '../protocol/standing-bridges';
import {
  BEST_ORDER,
  type BestOrderAnswer,
  NECKS,
  REORDER,
  type Reordering,
  type ReorderParams,
  SLIP,
  SWEEP,
} from '../protocol/views';
import { CONFIG, SVG } from './svg-documents';

/** The requests that answer the questions of the bench's page. */
const METHODS: Readonly<Partial<Record<BenchRequest['kind'], string>>> = {
  necks: NECKS,
  slip: SLIP,
  sweep: SWEEP,
  bestOrder: BEST_ORDER,
  partAt: PART_AT,
  part: PART,
  bridgeAt: BRIDGE_AT,
  bridgePlan: BRIDGE_PLAN,
  standingBridges: STANDING_BRIDGES,
  bridgeGhost: BRIDGE_GHOST,
  changeBridge: CHANGE_BRIDGE,
  layerSketch: LAYER_SKETCH,
  layerPlan: LAYER_PLAN,
  dropLayerPlan: DROP_LAYER_PLAN,
  planGhost: PLAN_GHOST,
};

export class ServerClient implements vscode.Disposable {
  private readonly client: LanguageClient;
  private readonly watcher = vscode.workspace.createFileSystemWatcher('**/{tombolo.json,*.svg}');
  private readonly checkedEmitter = new vscode.EventEmitter<Checked>();
  private starting: Promise<void> | undefined;

  /** Fires after each run of the checks. */
  readonly onChecked = this.checkedEmitter.event;

  readonly log: vscode.LogOutputChannel;

  constructor(context: vscode.ExtensionContext, log: vscode.LogOutputChannel) {
    this.log = log;

    const server = { module: context.asAbsolutePath('dist/server.cjs'), transport: TransportKind.ipc };
    this.client = new LanguageClient('tombolo', 'Tombolo', server, {
      documentSelector: [...SVG, ...CONFIG],
      outputChannel: log,
      revealOutputChannelOn: RevealOutputChannelOn.Never,
      initializationOptions: { ...vscode.workspace.getConfiguration('tombolo'), goTo: true },
      synchronize: { fileEvents: this.watcher },
    });
    this.client.onNotification(CHECKED, (checked: Checked) => this.checkedEmitter.fire(checked));
  }

  /** Starts the server unless it runs. Never rejects: a failure is logged, and requests then answer undefined. */
  async start(): Promise<void> {
    this.starting ??= this.client.start().catch((error: unknown) => {
      this.log.error(`The server did not start: ${String(error)}`);
    });
    await this.starting;
  }

  stack(uri: vscode.Uri): Promise<PreviewStack | undefined> {
    return this.ask(STACK, uri);
  }

  shapeAt(uri: vscode.Uri, offset: number): Promise<MarkedShape | undefined> {
    return this.ask(SHAPE_AT, uri, { offset });
  }

  /** What the bench's page asks. */
  answer(uri: vscode.Uri, { kind, ...question }: BenchRequest): Promise<unknown> {
    const method = Object.hasOwn(METHODS, kind) ? METHODS[kind] : undefined;
    return method ? this.ask(method, uri, question) : Promise.resolve(undefined);
  }

  reorder(uri: vscode.Uri, { version, layer, to }: Omit<ReorderParams, 'uri'>): Promise<Reordering | undefined> {
    return this.ask(REORDER, uri, { version, layer, to });
  }

  bestOrder(uri: vscode.Uri): Promise<BestOrderAnswer | undefined> {
    return this.ask(BEST_ORDER, uri);
  }

  /** @param width how wide the artwork is to be cut: then the edits that write it into the file are among the answer */
  beginning(uri: vscode.Uri, width?: string): Promise<Beginning | undefined> {
    return this.ask(BEGIN, uri, width === undefined ? {} : { width });
  }

  /** @param cutCovered whether islands that later layers paint over are cut away instead */
  bridgeIslands(uri: vscode.Uri, cutCovered = false): Promise<BridgedIslands | undefined> {
    return this.ask(BRIDGE_ISLANDS, uri, { cutCovered });
  }

  wrapPaths(uri: vscode.Uri): Promise<VersionedEdits | undefined> {
    return this.ask(WRAP_PATHS, uri);
  }

  safeFixes(uri: vscode.Uri): Promise<SafeFixes | undefined> {
    return this.ask(FIX_SAFE, uri);
  }

  checkFile(uri: vscode.Uri): Promise<FileChecked | undefined> {
    return this.ask(CHECK_FILE, uri);
  }

  /** Ends the server and starts it anew; what is open is checked again. */
  async restart(): Promise<void> {
    if (!this.starting) return this.start();
    await this.starting;
    this.starting = this.client.restart().catch((error: unknown) => {
      this.log.error(`The server did not start: ${String(error)}`);
    });
    await this.starting;
  }

  async checkAgain(uri: vscode.Uri): Promise<void> {
    await this.ask(CHECK_AGAIN, uri);
  }

  private async ask<T>(method: string, uri: vscode.Uri, more: object = {}): Promise<T | undefined> {
    await this.start();
    try {
      const address = this.client.code2ProtocolConverter.asUri(uri);
      return (await this.client.sendRequest<T | null>(method, { uri: address, ...more })) ?? undefined;
    } catch (error) {
      this.log.error(`${method}: ${String(error)}`);
      return undefined;
    }
  }

  dispose(): void {
    this.watcher.dispose();
    this.checkedEmitter.dispose();
    if (this.starting) void this.client.dispose().catch(() => undefined);
  }
}
