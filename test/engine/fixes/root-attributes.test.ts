import { Resvg } from '@resvg/resvg-js';
import { describe, expect, it } from 'vitest';
import { readDrawing } from '../../../src/drawing/index';
import { askedSizeEdits, sizeEdits } from '../../../src/engine/fixes/root-attributes';
import { parseMarkup } from '../../../src/markup/parse';
import { applyEdits } from '../../../src/text/text';

const NAMESPACE = 'xmlns="http://www.w3.org/2000/svg"';
const ART = '<path d="M10 10H60V40H10Z"/>';
const drawn = (text: string) => readDrawing(parseMarkup(text));
const asked = (attributes: string, width: string): string => {
  const text = `<svg ${attributes}>${ART}</svg>`;
  const edits = askedSizeEdits(drawn(text), width);
  expect(edits).toBeDefined();
  return applyEdits(text, edits ?? []).slice('<svg '.length, -`>${ART}</svg>`.length);
};

describe('the size that an artist asks for', () => {
  it.each([
    [`${NAMESPACE} viewBox="0 0 90 60"`, '90mm', `${NAMESPACE} width="90mm" height="60mm" viewBox="0 0 90 60"`],
    [`viewBox='0 0 90 60' ${NAMESPACE}`, '9cm', `width='9cm' height='6cm' viewBox='0 0 90 60' ${NAMESPACE}`],
    [
      `${NAMESPACE}\n     viewBox="0 0 90 60"\n     id="otter"`,
      ' 3.5 in ',
      `${NAMESPACE}\n     width="3.5in"\n     height="2.333333in"\n     viewBox="0 0 90 60"\n     id="otter"`,
    ],
    [
      `${NAMESPACE} width='100%' viewBox="0 0 90 60"`,
      '90mm',
      `${NAMESPACE} width='90mm' height='60mm' viewBox="0 0 90 60"`,
    ],
    [
      `${NAMESPACE} height="1" viewBox="0 0 90 60"`,
      '90mm',
      `${NAMESPACE} width="90mm" height="60mm" viewBox="0 0 90 60"`,
    ],
    [
      `${NAMESPACE} width="4cm" viewBox="0 0 90 60"`,
      '340.1575px',
      `${NAMESPACE} width="90mm" height="60mm" viewBox="0 0 90 60"`,
    ],
    [`${NAMESPACE} width="300" height="150"`, '90mm', `${NAMESPACE} width="90mm" height="45mm" viewBox="0 0 300 150"`],
    [NAMESPACE, '90mm', `${NAMESPACE} width="90mm" height="45mm" viewBox="0 0 300 150"`],
    [
      `${NAMESPACE} viewBox="0 0 90 60" data-tombolo-width="80mm"`,
      '90mm',
      `${NAMESPACE} width="90mm" height="60mm" viewBox="0 0 90 60" data-tombolo-width="90mm"`,
    ],
    [`${NAMESPACE} width="90mm" viewBox="0 0 90 60"`, '9cm', `${NAMESPACE} width="90mm" viewBox="0 0 90 60"`],
  ])('is written into %s for %s', (attributes, width, written) => {
    expect(asked(attributes, width)).toBe(written);
  });

  it('comes behind the name of a root that says nothing', () => {
    const text = '<svg/>';
    const edits = askedSizeEdits(drawn(`<svg ${NAMESPACE}/>`), '90mm');
    expect(edits).toHaveLength(1);
    expect(applyEdits(text, sizeEdits({ ...drawn(`<svg ${NAMESPACE}/>`), document: parseMarkup(text) }, 90))).toBe(
      '<svg width="90mm" height="45mm" viewBox="0 0 300 150"/>',
    );
  });

  it('is none where it is no length, or where a style would win', () => {
    const plain = drawn(`<svg ${NAMESPACE} viewBox="0 0 9 6"/>`);
    expect(['wide', '90', '0mm', '-3mm'].map((width) => askedSizeEdits(plain, width))).toEqual(
      Array.from({ length: 4 }),
    );
    expect(askedSizeEdits(drawn(`<svg ${NAMESPACE} style="width:3cm"/>`), '90mm')).toBeUndefined();
  });

  // resvg knows nothing of us: it opens a file at 96 px to the inch.
  it('is what another program opens the file at, with the same picture', () => {
    const text = `<svg ${NAMESPACE} viewBox="-5 -5 90 60">${ART}</svg>`;
    const after = applyEdits(text, askedSizeEdits(drawn(text), '90mm') ?? []);
    const [old, now] = [text, after].map((svg) => new Resvg(svg));
    expect([now?.width, now?.height]).toEqual([90, 60].map((mm) => Math.round((mm * 96) / 25.4)));
    expect(old?.width).toBe(90);
    const [small, large] = [text, after].map(
      (svg) => new Resvg(svg, { fitTo: { mode: 'width', value: 360 } }).render().pixels,
    );
    expect(large?.equals(small as Buffer)).toBe(true);
  });
});

describe('a size in mm', () => {
  it('makes the artwork as many times as large', () => {
    for (const attributes of ['viewBox="0 0 90 60"', 'width="300" height="150"', 'width="4cm" height="4cm"', '']) {
      const text = `<svg ${NAMESPACE} ${attributes}>${ART}</svg>`;
      const before = drawn(text);
      const after = drawn(applyEdits(text, sizeEdits(before, 3 * before.width)));
      expect(after.width / before.width).toBeCloseTo(3, 4);
      expect(after.height / before.height).toBeCloseTo(3, 4);
      expect(after.toMm.a / before.toMm.a).toBeCloseTo(3, 4);
      expect(after.ownSize.physical).toBe(true);
    }
  });
});
