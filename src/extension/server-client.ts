/** The language server as the rest of the extension sees it: started when first needed, apart from the extension. */
import * as vscode from 'vscode';
import type { BaseLanguageClient, LanguageClientOptions, RevealOutputChannelOn } from 'vscode-languageclient';
import {
  CUT_FIGURES,
  CUT_FILES,
  CUT_ORDER,
  type CutFigures,
  type CutFilesParams,
  type FilesToWrite,
  JOB_FILES,
} from '../protocol/cutting';
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
import {
  DRAWN_AT,
  DRAWN_BY,
  type DrawnThere,
  KEPT_PLAN,
  type KeptPlan,
  PROGRAMS,
  type ProgramRange,
  type Programs,
} from '../protocol/programs';
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
import type { Span } from '../text/text';
import type { ServerConnection, ServerHost } from './host/server-connection';
import { CONFIG, SVG } from './svg-documents';

/** The requests that answer the questions of the bench's page. */
const METHODS: Readonly<Partial<Record<BenchRequest['kind'], string>>> = {
  necks: NECKS,
  slip: SLIP,
  sweep: SWEEP,
  bestOrder: BEST_ORDER,
  cutFigures: CUT_FIGURES,
  cutOrder: CUT_ORDER,
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

/** `RevealOutputChannelOn.Never`: its module comes with the whole client. */
const NEVER: RevealOutputChannelOn.Never = 4;

/** Of the editor, without what cannot be sent to another thread. */
function plainSettings(): object {
  return JSON.parse(JSON.stringify(vscode.workspace.getConfiguration('tombolo'))) as object;
}

export class ServerClient implements vscode.Disposable {
  private readonly connect: () => Promise<ServerConnection>;
  private connection: ServerConnection | undefined;
  private readonly watcher = vscode.workspace.createFileSystemWatcher('**/{tombolo.json,*.svg}');
  private readonly checkedEmitter = new vscode.EventEmitter<Checked>();
  private readonly programsEmitter = new vscode.EventEmitter<Programs>();
  private starting: Promise<void> | undefined;

  /** Fires after each run of the checks. */
  readonly onChecked = this.checkedEmitter.event;

  /** Fires when programs or drawings of theirs are known that were not before, or are no more. */
  readonly onPrograms = this.programsEmitter.event;

  /** The folder that watched programs leave their marks in; none where none can run. */
  readonly marks: string | undefined;

  readonly log: vscode.LogOutputChannel;

  constructor(context: vscode.ExtensionContext, host: ServerHost, log: vscode.LogOutputChannel) {
    this.log = log;
    this.marks = host.marks?.(context);
    const options: LanguageClientOptions = {
      documentSelector: [...SVG, ...CONFIG],
      outputChannel: log,
      revealOutputChannelOn: NEVER,
      initializationOptions: () => ({
        ...plainSettings(),
        goTo: true,
        ...(this.marks !== undefined && { marks: this.marks }),
      }),
      synchronize: { fileEvents: this.watcher },
    };
    this.connect = () => host.connect(context, options);
  }

  /** Starts the server unless it runs. Never rejects: a failure is logged, and requests then answer undefined. */
  async start(): Promise<void> {
    this.starting ??= this.begin().catch((error: unknown) => {
      this.log.error(`The server did not start: ${String(error)}`);
    });
    await this.starting;
  }

  /** There once it was begun to start. */
  private get client(): BaseLanguageClient {
    if (!this.connection) throw new Error('The server was not started.');
    return this.connection.client;
  }

  private async begin(): Promise<void> {
    this.connection = await this.connect();
    this.client.onNotification(PROGRAMS, (programs: Programs) => this.programsEmitter.fire(programs));
    this.client.onNotification(CHECKED, (checked: Checked) => this.checkedEmitter.fire(checked));
    await this.connection.prepare?.();
    await this.client.start();
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

  /** What each sheet takes to cut. */
  cutFigures(uri: vscode.Uri): Promise<CutFigures | undefined> {
    return this.ask(CUT_FIGURES, uri);
  }

  /** The texts of the files for the cutter; none where errors are left and that was not wanted. */
  cutFiles(uri: vscode.Uri, asked: Omit<CutFilesParams, 'uri'>): Promise<FilesToWrite | undefined> {
    return this.ask(CUT_FILES, uri, asked);
  }

  jobFiles(uri: vscode.Uri): Promise<FilesToWrite | undefined> {
    return this.ask(JOB_FILES, uri);
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
    this.starting = this.again().catch((error: unknown) => {
      this.log.error(`The server did not start: ${String(error)}`);
    });
    await this.starting;
  }

  private async again(): Promise<void> {
    await this.client.stop();
    await this.client.start();
  }

  /** @param line from zero */
  drawnAt(drawing: vscode.Uri, program: vscode.Uri, line: number): Promise<DrawnThere | undefined> {
    return this.ask(DRAWN_AT, drawing, { program: program.toString(), line });
  }

  /** The line that draws what stands in a stretch of a drawing's text. */
  drawnBy(drawing: vscode.Uri, { from, to }: Span): Promise<ProgramRange | undefined> {
    return this.ask(DRAWN_BY, drawing, { from, to });
  }

  keptPlan(drawing: vscode.Uri): Promise<KeptPlan | undefined> {
    return this.ask(KEPT_PLAN, drawing);
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
    this.programsEmitter.dispose();
    void this.connection?.client.dispose().catch(() => undefined);
  }
}
