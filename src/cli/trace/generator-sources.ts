/** The texts of a traced program: how far a place of theirs reaches is read there. */
import { readFile, stat } from 'node:fs/promises';
import type { CheckedFile, PlacedFinding } from '../../format/checked-file';
import { type Generator, type GeneratorPlace, reachOfPlace } from '../../report/generator';

/** Bytes: in what is larger, places stay points. */
const LARGEST = 10_000_000;

export class GeneratorSources {
  private readonly known = new Map<string, Promise<readonly string[]>>();

  /** The same file, the places of its findings as long as the start tag or the name that stands there. */
  async widened(file: CheckedFile): Promise<CheckedFile> {
    return { ...file, findings: await Promise.all(file.findings.map((finding) => this.finding(finding))) };
  }

  private async finding(finding: PlacedFinding): Promise<PlacedFinding> {
    const { from } = finding;
    if (!from) return finding;
    const callers = await Promise.all(from.callers.map((caller) => this.place(caller)));
    const widened: Generator = { ...from, ...(await this.place(from)), callers };
    return { ...finding, from: widened };
  }

  private async place({ path, range: { start } }: GeneratorPlace): Promise<GeneratorPlace> {
    const lines = await this.linesOf(path);
    const rest = lines[start.line]?.slice(start.character) ?? '';
    return { path, range: { start, end: { line: start.line, character: start.character + reachOfPlace(rest) } } };
  }

  private linesOf(path: string): Promise<readonly string[]> {
    const known = this.known.get(path) ?? readLines(path);
    this.known.set(path, known);
    return known;
  }
}

async function readLines(path: string): Promise<readonly string[]> {
  try {
    const stats = await stat(path);
    if (!stats.isFile() || stats.size > LARGEST) return [];
    return (await readFile(path, 'utf8')).split(/\r\n|[\n\r]/);
  } catch {
    return [];
  }
}
