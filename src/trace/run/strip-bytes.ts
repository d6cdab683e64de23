/** Takes marks out of what was written, byte for byte, in whatever Unicode encoding. */
import { Transform, type TransformCallback } from 'node:stream';
import { markPattern, type Stripped, stripMarks } from '../marks';

export interface StrippedBytes extends Stripped {
  readonly bytes: Buffer;
}

/**
 * @param attribute the marks' name, or a pattern of it
 * @returns undefined where there are no marks
 */
export function stripBytes(bytes: Buffer, attribute: string): StrippedBytes | undefined {
  const encoding = encodingOf(bytes);
  const whole = encoding === 'utf16be' ? Buffer.from(bytes).swap16().toString('utf16le') : bytes.toString(encoding);
  // Offsets are those of the text without its byte order mark, as editors count.
  const order = whole.startsWith('\ufeff') ? '\ufeff' : '';
  const { text, marks } = stripMarks(whole.slice(order.length), markPattern(attribute));
  if (marks.offsets.length === 0) return undefined;
  if (encoding === 'utf16le') return { text, marks, bytes: Buffer.from(order + text, 'utf16le') };
  if (encoding === 'utf16be') return { text, marks, bytes: Buffer.from(order + text, 'utf16le').swap16() };
  // Bytes that are no UTF-8 stay what they are.
  const plain = stripMarks(bytes.toString('latin1'), markPattern(attribute)).text;
  return { text, marks, bytes: Buffer.from(plain, 'latin1') };
}

function encodingOf(bytes: Buffer): 'utf8' | 'utf16le' | 'utf16be' {
  const even = bytes.length % 2 === 0;
  if (even && bytes[0] === 0xff && bytes[1] === 0xfe) return 'utf16le';
  return even && bytes[0] === 0xfe && bytes[1] === 0xff ? 'utf16be' : 'utf8';
}

/** No mark is longer; a portion that ends within one waits for the next. */
const LONGEST_MARK = 4500;

/** Takes marks out of a stream as it passes. */
export class MarkStripper extends Transform {
  private held = '';
  private readonly attribute: string;

  constructor(attribute: string) {
    super();
    this.attribute = attribute;
  }

  override _transform(portion: Buffer, _encoding: string, done: TransformCallback): void {
    const text = stripMarks(this.held + portion.toString('latin1'), markPattern(this.attribute)).text;
    const end = this.endOfWhole(text);
    this.held = text.slice(end);
    done(null, Buffer.from(text.slice(0, end), 'latin1'));
  }

  override _flush(done: TransformCallback): void {
    done(null, Buffer.from(stripMarks(this.held, markPattern(this.attribute)).text, 'latin1'));
  }

  /** Up to where no mark can be under way: the blank before its name, or the beginning of one at the very end. */
  private endOfWhole(text: string): number {
    const begun = text.lastIndexOf(this.attribute);
    const from = begun >= 0 ? begun : text.length - this.beginningAtEnd(text);
    if (text.length - from > LONGEST_MARK) return text.length;
    return text.slice(0, from).replace(/(?:\s+|%20|%2|%)$/, '').length;
  }

  private beginningAtEnd(text: string): number {
    for (let length = Math.min(this.attribute.length, text.length); length > 0; length -= 1) {
      if (text.endsWith(this.attribute.slice(0, length))) return length;
    }
    return 0;
  }
}
