/** Reads the numbers of SVG attribute values from a string, one character code at a time. */

const TAB = 9;
const LINE_FEED = 10;
const FORM_FEED = 12;
const CARRIAGE_RETURN = 13;
const BLANK = 32;
const PLUS = 43;
const COMMA = 44;
const MINUS = 45;
const POINT = 46;
const ZERO = 48;
const NINE = 57;
const UPPER_E = 69;
const LOWER_E = 101;

/** Powers of ten that a double holds exactly. */
const POWERS_OF_TEN = Array.from({ length: 23 }, (_, exponent) => Number(`1e${exponent}`));

/** A double holds every integer of so many digits. */
const EXACT_DIGITS = 15;

export function isBlank(code: number): boolean {
  return (
    code <= BLANK &&
    (code === BLANK || code === LINE_FEED || code === TAB || code === CARRIAGE_RETURN || code === FORM_FEED)
  );
}

function isDigit(code: number): boolean {
  return code >= ZERO && code <= NINE;
}

/**
 * A place in a string that moves forward over blanks, commas and numbers (SVG 2, "The grammar for path data").
 * A point without digits after it (`23.`) is taken, as SVG 1.1 allowed it and the browsers still do.
 */
export class NumberReader {
  position = 0;

  readonly text: string;

  constructor(text: string) {
    this.text = text;
  }

  get atEnd(): boolean {
    return this.position >= this.text.length;
  }

  /** The character code at the position; NaN at the end. */
  get code(): number {
    return this.text.charCodeAt(this.position);
  }

  skipBlanks(): void {
    const { text } = this;
    let at = this.position;
    while (isBlank(text.charCodeAt(at))) at += 1;
    this.position = at;
  }

  /** Skips blanks with at most one comma among them. Gives the offset of the comma, or -1. */
  skipSeparator(): number {
    // Of what may follow, only blanks, the comma and a plus have codes up to the comma's.
    if (this.code > COMMA) return -1;
    this.skipBlanks();
    if (this.code !== COMMA) return -1;
    const comma = this.position;
    this.position += 1;
    this.skipBlanks();
    return comma;
  }

  /** Whether a number can be read at the position. */
  get atNumber(): boolean {
    let position = this.position;
    let code = this.text.charCodeAt(position);
    if (code === PLUS || code === MINUS) {
      position += 1;
      code = this.text.charCodeAt(position);
    }
    if (code === POINT) code = this.text.charCodeAt(position + 1);
    return isDigit(code);
  }

  /**
   * Reads the number at the position and moves behind it. Gives NaN, without moving, where there is none, and an
   * infinite value where it is too large for a double. One pass over local variables: it reads most of a drawing.
   */
  readNumber(): number {
    const { text, position: from } = this;
    let at = from;
    let code = text.charCodeAt(at);
    const negative = code === MINUS;
    if (negative || code === PLUS) {
      at += 1;
      code = text.charCodeAt(at);
    }
    let digits = 0;
    const wholeFrom = at;
    for (; code >= ZERO && code <= NINE; code = text.charCodeAt(at)) {
      digits = digits * 10 + (code - ZERO);
      at += 1;
    }
    let count = at - wholeFrom;
    let decimals = 0;
    if (code === POINT) {
      at += 1;
      const decimalsFrom = at;
      for (code = text.charCodeAt(at); code >= ZERO && code <= NINE; code = text.charCodeAt(at)) {
        digits = digits * 10 + (code - ZERO);
        at += 1;
      }
      decimals = at - decimalsFrom;
      count += decimals;
    }
    if (count === 0) return NaN;
    this.position = at;
    const exponent = (code === LOWER_E || code === UPPER_E ? this.readExponent() : 0) - decimals;
    if (count > EXACT_DIGITS || exponent < -22 || exponent > 22) return Number(text.slice(from, this.position));
    // Both operands are exact, so that the one rounding of the operation gives the nearest double (Clinger 1990).
    const magnitude = exponent < 0 ? digits / POWERS_OF_TEN[-exponent]! : digits * POWERS_OF_TEN[exponent]!;
    return negative ? -magnitude : magnitude;
  }

  /** The exponent behind the `e` at the position, or 0. An `e` that no digits follow is left where it is. */
  private readExponent(): number {
    let position = this.position + 1;
    const sign = this.text.charCodeAt(position);
    if (sign === PLUS || sign === MINUS) position += 1;
    if (!isDigit(this.text.charCodeAt(position))) return 0;
    let exponent = 0;
    for (; isDigit(this.text.charCodeAt(position)); position += 1) {
      exponent = Math.min(exponent * 10 + (this.text.charCodeAt(position) - ZERO), 1e6);
    }
    this.position = position;
    return sign === MINUS ? -exponent : exponent;
  }
}

/** The character at an offset as an artist sees it: both halves of a surrogate pair; '' at the end. */
export function characterAt(text: string, offset: number): string {
  const point = text.codePointAt(offset);
  return point === undefined ? '' : String.fromCodePoint(point);
}
