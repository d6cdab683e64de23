import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decodeText, type Encoding, encodeText } from '../../../src/cli/files/read-input';

const encoding = fc
  .record({
    name: fc.constantFrom<Encoding['name'][]>('utf-8', 'utf-16le', 'utf-16be'),
    byteOrderMark: fc.boolean(),
  })
  .filter(({ name, byteOrderMark }) => byteOrderMark || name === 'utf-8');

describe('decodeText', () => {
  it('gives the text without its mark, and the same bytes back', () => {
    const text = fc.string({ unit: 'grapheme' }).filter((candidate) => !candidate.startsWith('\ufeff'));
    fc.assert(
      fc.property(text, encoding, (written, how) => {
        const bytes = encodeText(written, how);
        const input = decodeText(bytes);
        expect(input.text).toBe(written);
        expect(input.encoding).toEqual(how);
        expect(encodeText(input.text, input.encoding)).toEqual(bytes);
      }),
    );
  });

  it('bytes of a known text (Unicode 16.0, section 3.10: é is C3 A9, 00 E9 big-endian)', () => {
    const expected = '<é/>';
    expect(decodeText(Buffer.from('3cc3a92f3e', 'hex')).text).toBe(expected);
    expect(decodeText(Buffer.from('efbbbf3cc3a92f3e', 'hex')).text).toBe(expected);
    expect(decodeText(Buffer.from('fffe3c00e9002f003e00', 'hex')).text).toBe(expected);
    expect(decodeText(Buffer.from('feff003c00e9002f003e', 'hex')).text).toBe(expected);
  });

  it.each([
    ['Latin-1', '3ce92f3e', /not valid UTF-8 text; save it as UTF-8/],
    ['a surrogate in UTF-8', 'eda080', /not valid UTF-8/],
    ['half a UTF-16 unit', 'fffe3c0020', /not valid UTF-16LE/],
    ['a lone surrogate in UTF-16', 'feffd800003c', /not valid UTF-16BE/],
    ['gzip', '1f8b0800000000000003', /compressed/],
  ])('%s is refused', (_, hex, message) => {
    expect(() => decodeText(Buffer.from(hex, 'hex'))).toThrow(message);
  });
});
