/** Reads `<!DOCTYPE …>` with its internal subset, for the entities that drawing programs declare there. */
import type { EntityTable } from './entities';

export interface MarkupDeclaration {
  /** The offset after it: after its `>`, or where it breaks off. */
  readonly to: number;
  /** A sentence, where it is not ended properly. */
  readonly fault: string | undefined;
}

const ENTITY = /^<!ENTITY\s+([^\s%"'&;<>]+)\s+(?:"([^"]*)"|'([^']*)'|(?:SYSTEM|PUBLIC)\s)/;

/** Reads the document type declaration whose `<!` stands at `from`, and declares its entities. */
export function readDoctype(text: string, from: number, entities: EntityTable): MarkupDeclaration {
  let subsetRead = false;
  const marks = /[<>"'[]/g;
  marks.lastIndex = from + 2;
  for (let match = marks.exec(text); match !== null; match = marks.exec(text)) {
    const mark = match[0];
    if (mark === '>') return { to: marks.lastIndex, fault: undefined };
    if (mark === '<') break;
    const next: number =
      mark === '[' && !subsetRead
        ? readSubset(text, marks.lastIndex, entities)
        : endOfMatch(text, mark === '[' ? ']' : mark, marks.lastIndex);
    if (next < 0) break;
    subsetRead ||= mark === '[';
    marks.lastIndex = next;
  }
  return brokenDeclaration(text, from);
}

/** What is taken of a declaration without a proper end: up to the first `>`, or to the next `<` if that is nearer. */
export function brokenDeclaration(text: string, from: number): MarkupDeclaration {
  const end = /[<>]/g;
  end.lastIndex = from + 2;
  const match = end.exec(text);
  const to = match === null ? text.length : match.index + (match[0] === '>' ? 1 : 0);
  return { to, fault: 'This declaration is not closed: its ">" is missing.' };
}

/** Reads what is between the square brackets. Gives the offset after `]`, or -1 if markup begins before it. */
function readSubset(text: string, from: number, entities: EntityTable): number {
  const marks = /[\]<]/g;
  marks.lastIndex = from;
  for (let match = marks.exec(text); match !== null; match = marks.exec(text)) {
    if (match[0] === ']') return marks.lastIndex;
    const next = afterSubsetItem(text, match.index);
    if (next < 0) return -1;
    declareEntity(text.slice(match.index, next), entities);
    marks.lastIndex = next;
  }
  return -1;
}

function afterSubsetItem(text: string, from: number): number {
  if (text.startsWith('<!--', from)) return endOfMatch(text, '-->', from + 4);
  if (text.startsWith('<?', from)) return endOfMatch(text, '?>', from + 2);
  if (!text.startsWith('<!', from)) return -1;
  const marks = /[<>"']/g;
  marks.lastIndex = from + 2;
  for (let match = marks.exec(text); match !== null; match = marks.exec(text)) {
    if (match[0] === '>') return marks.lastIndex;
    if (match[0] === '<') return -1;
    const next = endOfMatch(text, match[0], marks.lastIndex);
    if (next < 0) return -1;
    marks.lastIndex = next;
  }
  return -1;
}

function declareEntity(declaration: string, entities: EntityTable): void {
  const match = ENTITY.exec(declaration);
  if (match === null) return;
  entities.declare(match[1]!, (match[2] ?? match[3])?.replace(/\r\n?/g, '\n'));
}

function endOfMatch(text: string, mark: string, from: number): number {
  const at = text.indexOf(mark, from);
  return at < 0 ? -1 : at + mark.length;
}
