/** Reads a text file or standard input, and remembers how it was encoded so that it can be written back alike. */
import { createReadStream } from 'node:fs';
import { readFile, stat } from 'node:fs/promises';
import { MAX_FILE_SIZE } from '../../text/file-size';
import { Failure, failureAt } from '../failure';

/** The path that stands for standard input. */
export const STANDARD_INPUT = '-';

export interface Encoding {
  readonly name: 'utf-8' | 'utf-16le' | 'utf-16be';
  readonly byteOrderMark: boolean;
}

export interface Input {
  /** Without the byte order mark, so that offsets are those an editor counts. */
  readonly text: string;
  readonly encoding: Encoding;
  readonly bytes: Buffer;
}

/** @throws Failure that names `shownPath` when the file is too large, cannot be read or is not Unicode text */
export async function readInput(path: string, shownPath = path): Promise<Input> {
  try {
    return decodeText(path === STANDARD_INPUT ? await readAll(process.stdin) : await readWhole(path));
  } catch (error) {
    if (error instanceof Failure) throw new Failure(`${shownPath}: ${error.message}`, { cause: error });
    throw failureAt(shownPath, error);
  }
}

/** A file that is too large is not begun to be read; what is no plain file may never come to an end. */
async function readWhole(path: string): Promise<Buffer> {
  const stats = await stat(path);
  if (stats.size > MAX_FILE_SIZE) throw tooLarge(stats.size);
  return stats.isFile() || stats.isDirectory() ? readFile(path) : readAll(createReadStream(path));
}

/**
 * A file that another file names, or that was found: nothing but a plain one is read.
 * @param most bytes
 * @throws Failure as `readInput`
 */
export async function readPlainFile(path: string, most = MAX_FILE_SIZE): Promise<Input> {
  try {
    const stats = await stat(path);
    if (!stats.isFile()) throw new Failure(stats.isDirectory() ? 'is a folder' : 'is no plain file and was not read');
    if (stats.size > most) throw tooLarge(stats.size, most);
  } catch (error) {
    if (error instanceof Failure) throw new Failure(`${path}: ${error.message}`, { cause: error });
    throw failureAt(path, error);
  }
  return readInput(path);
}

async function readAll(stream: AsyncIterable<Buffer>): Promise<Buffer> {
  const portions: Buffer[] = [];
  let size = 0;
  for await (const portion of stream) {
    size += portion.length;
    if (size > MAX_FILE_SIZE) throw tooLarge(size);
    portions.push(portion);
  }
  return Buffer.concat(portions);
}

function tooLarge(size: number, most = MAX_FILE_SIZE): Failure {
  const megabytes = (bytes: number) => `${Math.ceil(bytes / 1e6)} MB`;
  return new Failure(`is larger than ${megabytes(most)} (${megabytes(size)} or more) and was not read`);
}

/** @throws Failure when the bytes are not valid in their encoding */
export function decodeText(bytes: Buffer): Input {
  const encoding = encodingOf(bytes);
  try {
    const text = new TextDecoder(encoding.name, { fatal: true }).decode(bytes);
    return { text, encoding, bytes };
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'ERR_ENCODING_INVALID_ENCODED_DATA') throw error;
    throw new Failure(whyUndecodable(bytes, encoding), { cause: error });
  }
}

/** The bytes of `text` in the encoding that its file had. */
export function encodeText(text: string, encoding: Encoding): Buffer {
  const marked = encoding.byteOrderMark ? `\ufeff${text}` : text;
  if (encoding.name === 'utf-8') return Buffer.from(marked, 'utf8');
  const littleEndian = Buffer.from(marked, 'utf16le');
  return encoding.name === 'utf-16le' ? littleEndian : littleEndian.swap16();
}

function encodingOf(bytes: Buffer): Encoding {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return { name: 'utf-16le', byteOrderMark: true };
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return { name: 'utf-16be', byteOrderMark: true };
  const byteOrderMark = bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf;
  return { name: 'utf-8', byteOrderMark };
}

function whyUndecodable(bytes: Buffer, encoding: Encoding): string {
  if (bytes[0] === 0x1f && bytes[1] === 0x8b) return 'is compressed (gzip); unpack it first';
  const stated = /^\s*<\?xml[^>]*\sencoding\s*=\s*["']([\w.-]+)["']/.exec(bytes.toString('latin1', 0, 200))?.[1];
  const remark = stated && !/^utf-?8$/i.test(stated) ? ` (it says ${stated})` : '';
  return `is not valid ${encoding.name.toUpperCase()} text${remark}; save it as UTF-8`;
}
