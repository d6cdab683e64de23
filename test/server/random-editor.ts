/**
 * An editor that does all that an editor may do to the server, and much that none should: edits out of range, with versions
 * that go back, documents closed while they are checked, questions dropped at once. What it does is seeded.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import {
  CancellationTokenSource,
  type Diagnostic,
  type Position,
  type TextDocumentContentChangeEvent,
} from 'vscode-languageserver-protocol';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { URI } from 'vscode-uri';
import type { ServerProcess } from './server-process';

/** What is put in where something was taken out. */
const PIECES = [
  '',
  '',
  '1',
  '-',
  '.5',
  ' ',
  '\n',
  '<',
  '>',
  '"',
  '</g>',
  '<g>',
  '<path d="M5 5h3v3z"/>',
  'M10 10',
  '1e9',
  'é𝕊',
];
const SETTINGS = [
  { delay: 0 },
  { delay: 20 },
  { delay: 20, run: 'manual' },
  { delay: 5, run: 'onSave' },
  { delay: 5, severity: { 'floating-island': 'info', 'thin-bridge': 'off' } },
  'nonsense',
];
const QUESTIONS = ['hover', 'codeAction', 'documentSymbol'] as const;
const OWN_QUESTIONS = ['stack', 'standingBridges', 'fixSafe', 'checkAgain'] as const;

export class RandomEditor {
  private readonly open = new Map<string, TextDocument>();
  private readonly texts: Readonly<Record<string, string>>;
  private readonly next: () => number;
  /** How many edits were made. */
  edits = 0;

  /** @param texts the files that there are, by their paths in the server's folder */
  constructor(texts: Readonly<Record<string, string>>, random: () => number) {
    this.texts = texts;
    this.next = random;
  }

  /** As on disk before anything was done. */
  writeFiles(folder: string): void {
    for (const [name, text] of Object.entries(this.texts)) {
      mkdirSync(path.dirname(path.join(folder, name)), { recursive: true });
      writeFileSync(path.join(folder, name), text);
    }
  }

  /** Opens in a new server all that is open, and waits until it is checked. */
  async reopen(server: ServerProcess): Promise<void> {
    for (const document of this.open.values()) await this.didOpen(server, document);
    for (const uri of this.open.keys()) await server.connection.sendRequest('tombolo/checkAgain', { uri });
  }

  async step(server: ServerProcess): Promise<void> {
    const chance = this.next();
    if (chance < 0.86) return this.edit(server);
    if (chance < 0.92) return this.ask(server);
    if (chance < 0.95) return this.close(server);
    if (chance < 0.97) return this.configure(server, this.pick(SETTINGS));
    return this.writeConfig(server);
  }

  /** The settings that it ends with, and every document opened: what is shown then is to be right. */
  async settle(server: ServerProcess): Promise<void> {
    await this.configure(server, { delay: 0 });
    for (const name of Object.keys(this.texts)) if (this.next() < 0.7) await this.document(server, name);
  }

  async configure(server: ServerProcess, settings: unknown): Promise<void> {
    await server.set(settings);
  }

  private pick<T>(list: readonly T[]): T {
    return list[Math.floor(this.next() * list.length)] as T;
  }

  private uriOf(server: ServerProcess, name: string): string {
    return server.uri(name);
  }

  /** Opened where it is not. */
  private async document(server: ServerProcess, name = this.pick(Object.keys(this.texts))): Promise<TextDocument> {
    const uri = this.uriOf(server, name);
    const known = this.open.get(uri);
    if (known) return known;
    const document = TextDocument.create(uri, 'xml', this.pick([1, 1, 1, 0, 7]), this.texts[name] ?? '');
    this.open.set(uri, document);
    await this.didOpen(server, document);
    return document;
  }

  private didOpen({ connection }: ServerProcess, document: TextDocument): Promise<void> {
    const { uri, languageId, version } = document;
    return connection.sendNotification('textDocument/didOpen', {
      textDocument: { uri, languageId, version, text: document.getText() },
    });
  }

  private async edit(server: ServerProcess): Promise<void> {
    const document = await this.document(server);
    this.edits += 1;
    const version = this.version(document.version);
    const changes = Array.from({ length: this.pick([1, 1, 1, 2, 5]) }, () => this.change(document));
    // A change without a version is to be dropped.
    if (version !== null) TextDocument.update(document, changes, version);
    await server.connection.sendNotification('textDocument/didChange', {
      textDocument: { uri: document.uri, version },
      contentChanges: changes,
    });
  }

  private version(last: number): number | null {
    const chance = this.next();
    if (chance < 0.9) return last + 1;
    return this.pick([last, last - 1, 0, -5, 2 ** 31 - 1, null]);
  }

  private change(document: TextDocument): TextDocumentContentChangeEvent {
    // Else nothing of the drawing would be left after a while.
    if (this.next() < 0.04) return { text: this.textOf(document.uri) };
    const from = Math.floor(this.next() * document.getText().length);
    const start = document.positionAt(from);
    const end = document.positionAt(from + Math.floor(this.next() * 6));
    return { range: this.stretch(start, end), text: this.pick(PIECES) };
  }

  private textOf(uri: string): string {
    return Object.entries(this.texts).find(([name]) => uri.endsWith(`/${name}`))?.[1] ?? '';
  }

  /** Now and then one that no document has. */
  private stretch(start: Position, end: Position): { start: Position; end: Position } {
    const chance = this.next();
    if (chance < 0.95) return { start, end };
    if (chance < 0.96) return { start: end, end: start };
    if (chance < 0.97) return { start, end: { line: end.line, character: 1e9 } };
    if (chance < 0.98) return { start: { line: 1e6, character: 3 }, end: { line: 1e6, character: 9 } };
    return { start: { line: -1, character: -1 }, end: start };
  }

  /** Asks something, of which nobody may wait for the answer. */
  private async ask(server: ServerProcess): Promise<void> {
    const { uri } = await this.document(server);
    const position = { line: this.pick([0, 1, 2, 3, 1e6]), character: this.pick([0, 5, 20, 1e6]) };
    const range = { start: position, end: position };
    const token = new CancellationTokenSource();
    const [method, params] =
      this.next() < 0.6
        ? ([
            `textDocument/${this.pick(QUESTIONS)}`,
            { textDocument: { uri }, position, range, context: { diagnostics: [] } },
          ] as const)
        : ([`tombolo/${this.pick(OWN_QUESTIONS)}`, { uri }] as const);
    const answer = server.connection.sendRequest(method, params, token.token).catch((): undefined => undefined);
    if (this.next() < 0.5) token.cancel();
    else if (this.next() < 0.2) await answer;
  }

  private async close(server: ServerProcess): Promise<void> {
    const document = await this.document(server);
    this.open.delete(document.uri);
    await server.close(document);
  }

  /** On disk, and told of as an editor tells of it. */
  private async writeConfig(server: ServerProcess): Promise<void> {
    const name = 'trail/tombolo.json';
    const texts = [
      this.texts[name] ?? '',
      '{ "layers": [{ "from": "b.svg" }] }',
      '{ "layers": [',
      '{ "margin": "3mm" }',
    ];
    writeFileSync(path.join(server.folder, name), this.pick(texts));
    await server.connection.sendNotification('workspace/didChangeWatchedFiles', {
      changes: [{ uri: this.uriOf(server, name), type: 2 }],
    });
  }
}

/** What stands under each document now, as an editor shows it; those without findings are left out. */
export function shownBy({ published, folder }: ServerProcess): Record<string, string[]> {
  const last = new Map(
    published.map(({ uri, diagnostics }) => [uri.slice(URI.file(folder).toString().length), diagnostics]),
  );
  const shown = [...last].filter(([, diagnostics]) => diagnostics.length > 0).sort(([a], [b]) => (a < b ? -1 : 1));
  return Object.fromEntries(shown.map(([name, diagnostics]) => [name, diagnostics.map(lineOf)]));
}

/** Without versions and numbers of findings, which differ from server to server. */
function lineOf({ code, message, severity, range: { start, end }, relatedInformation = [] }: Diagnostic): string {
  const related = relatedInformation.map((each) => each.message).join('; ');
  const place = `${start.line}:${start.character}-${end.line}:${end.character}`;
  return [place, severity, code, message, related].join(' ');
}
