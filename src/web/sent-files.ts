/** Files that the editor reads and sends, since a worker in a browser has no disk. */
import type { SentFile } from '../protocol/files';
import type { Files } from '../server/host/platform';

interface Known {
  readonly stamp: number;
  readonly text: string | null;
}

/** What is asked for and not there yet counts as missing; who follows is told when it comes. */
export class SentFiles implements Files {
  private readonly known = new Map<string, Known>();
  private readonly wanted = new Set<string>();
  private readonly ask: (uris: readonly string[]) => void;
  private told: (uri: string) => void = () => undefined;
  private stamps = 0;

  /** @param ask for all that was wanted within one turn */
  constructor(ask: (uris: readonly string[]) => void) {
    this.ask = ask;
  }

  stampOf(uri: string, limit: number): string | undefined {
    const known = this.known.get(uri);
    if (!known) this.want(uri);
    // As many characters are no fewer bytes: what is too long is sent by no editor.
    return typeof known?.text === 'string' && known.text.length <= limit ? String(known.stamp) : undefined;
  }

  textOf(uri: string): string | undefined {
    return this.known.get(uri)?.text ?? undefined;
  }

  /** What was known counts until the new text is there: else all that is found would go and come back. */
  changed(uri: string): void {
    this.want(uri);
  }

  follow(told: (uri: string) => void): void {
    this.told = told;
  }

  take(files: readonly SentFile[]): void {
    const others = files.filter(({ uri, text }) => (this.known.get(uri)?.text ?? null) !== text);
    for (const { uri, text } of files) {
      this.wanted.delete(uri);
      if (this.known.get(uri)?.text === text) continue;
      this.stamps += 1;
      this.known.set(uri, { stamp: this.stamps, text });
    }
    for (const { uri } of others) this.told(uri);
  }

  private want(uri: string): void {
    if (this.wanted.has(uri)) return;
    if (this.wanted.size === 0) queueMicrotask(() => this.askAll());
    this.wanted.add(uri);
  }

  private askAll(): void {
    const uris = [...this.wanted];
    this.wanted.clear();
    // They are known to be missing until they are sent, so that nobody asks twice.
    for (const uri of uris) if (!this.known.has(uri)) this.known.set(uri, { stamp: 0, text: null });
    if (uris.length > 0) this.ask(uris);
  }
}
