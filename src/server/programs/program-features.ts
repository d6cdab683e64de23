/** What editors ask about the lines of programs that draw. */
import {
  CodeActionKind,
  CodeActionRequest,
  type Connection,
  type DocumentFilter,
  type Hover,
  HoverRequest,
  MarkupKind,
} from 'vscode-languageserver';
import { count } from '../../config/values';
import type { Generator } from '../../engine/index';
import {
  DRAWN_AT,
  DRAWN_BY,
  type DrawnAtParams,
  type DrawnByParams,
  type DrawnThere,
  PROGRAMS,
  type Programs as ProgramList,
  type ProgramRange,
} from '../../protocol/programs';
import { Priority } from '../../protocol/run-signals';
import { escapeMarkdown } from '../../text/markdown';
import type { EngineClient } from '../engine/engine-client';
import { nameOf } from './drawing-name';
import type { ProgramFinding } from './program-findings';
import type { Programs } from './programs';

/** The languages of programs that are traced, and others whose programs say by an attribute where they draw. */
const LANGUAGES: readonly DocumentFilter[] = [{ scheme: 'file', pattern: '**/*.{js,mjs,cjs,jsx,ts,mts,cts,tsx,py}' }];

export class ProgramFeatures {
  private readonly connection: Connection;
  private readonly programs: Programs;
  private readonly engine: EngineClient;
  private registered = false;

  constructor(connection: Connection, programs: Programs, engine: EngineClient) {
    this.connection = connection;
    this.programs = programs;
    this.engine = engine;
    connection.onRequest(DRAWN_AT, async (params: DrawnAtParams) => (await this.drawnAt(params)) ?? null);
    connection.onRequest(DRAWN_BY, async (params: DrawnByParams) => (await this.drawnBy(params)) ?? null);
  }

  /**
   * Tells the editor of the programs that are known, and offers it to be asked about them.
   * @param asks whether the editor can be offered something later
   */
  tell(list: ProgramList, asks: boolean): void {
    void this.connection.sendNotification(PROGRAMS, list);
    if (this.registered || !asks) return;
    this.registered = true;
    const documentSelector = [...LANGUAGES];
    void this.connection.client.register(HoverRequest.type, { documentSelector });
    const codeActionKinds = [CodeActionKind.QuickFix];
    void this.connection.client.register(CodeActionRequest.type, { documentSelector, codeActionKinds });
  }

  /** What a line draws, in all of the program's drawings. */
  async hover(program: string, line: number): Promise<Hover | null> {
    const drawings = this.programs.drawingsOf(program);
    const found = this.programs.findingsOf(program).filter(({ range }) => range.start.line === line);
    const texts: string[] = [];
    for (const uri of drawings) {
      const drawn = await this.drawnAt({ uri, program, line });
      const own = found.filter(({ known }) => known.uri === uri);
      if (drawn || own.length > 0) texts.push(drawnText(uri, drawn, own));
    }
    const value = [...texts, ...whyTexts(found)].join('\n\n');
    return value === '' ? null : { contents: { kind: MarkupKind.Markdown, value } };
  }

  private drawnAt({ uri, program, line }: DrawnAtParams): Promise<DrawnThere | undefined> {
    const paths = this.programs.namesIn(uri, program);
    if (paths.length === 0) return Promise.resolve(undefined);
    const question = { kind: 'bench', method: DRAWN_AT, params: { uri, paths, line } } as const;
    return this.engine.ask(question, Priority.glance).answer as Promise<DrawnThere | undefined>;
  }

  private async drawnBy(params: DrawnByParams): Promise<ProgramRange | undefined> {
    if (!this.programs.isDrawn(params.uri)) return undefined;
    const { answer } = this.engine.ask({ kind: 'bench', method: DRAWN_BY, params }, Priority.glance);
    const from = (await answer) as Generator | null | undefined;
    const { places, uriOf } = this.programs.placesOf(params.uri);
    const uri = from ? uriOf(from.path) : undefined;
    return from && uri !== undefined ? { uri, range: places.rangeOf(uri, from) } : undefined;
  }
}

function drawnText(uri: string, drawn: DrawnThere | undefined, found: readonly ProgramFinding[]): string {
  const lines = [`**${escapeMarkdown(nameOf(uri))}**`];
  if (drawn) {
    const { times, openings, area, layers } = drawn;
    lines.push(`${count(times, 'shape')} · ${count(openings, 'opening')} · ${area.toFixed(2)} mm²`);
    if (layers.length > 0)
      lines.push(`${layers.length === 1 ? 'layer' : 'layers'} ${layers.map(escapeMarkdown).join(', ')}`);
  }
  const number = found.reduce((sum, { findings }) => sum + findings.length, 0);
  lines.push(number === 0 ? 'nothing found' : count(number, 'finding'));
  return lines.join('  \n');
}

/** What the messages, which the editor shows beside it, leave out: once for each check. */
function whyTexts(found: readonly ProgramFinding[]): string[] {
  const details = new Map(found.map(({ findings: [first] }) => [first?.check, first?.detail]));
  return [...details].flatMap(([check = '', detail]) =>
    detail === undefined ? [] : [`**${escapeMarkdown(check)}**: ${escapeMarkdown(detail)}`],
  );
}
