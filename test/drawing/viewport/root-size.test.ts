import { describe, expect, it } from 'vitest';
import { boxes, draw, findings } from '../draw';

const svg = (attributes: string, content = ''): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" ${attributes}>${content}</svg>`;
const PX = 25.4 / 96;

describe('the size of the sheet', () => {
  it.each([
    ['width="148mm" height="105mm"', 148, 105, true],
    ['width="10cm" viewBox="0 0 200 100"', 100, 50, true],
    ['height="1in" viewBox="0 0 200 100"', 50.8, 25.4, true],
    ['width="96" height="48"', 25.4, 12.7, false],
    ['width="96px" height="1in"', 25.4, 25.4, true],
    ['viewBox="0 0 960 480"', 254, 127, false],
    ['width="100%" height="100%" viewBox="0 0 960 480"', 254, 127, false],
    ['', 300 * PX, 150 * PX, false],
    ['width="50mm"', 50, 150 * PX, true],
    ['width="6em" height="96"', 25.4, 25.4, false],
    ['width="nonsense" viewBox="0 0 96 96"', 25.4, 25.4, false],
    ['width="-5mm" viewBox="0 0 96 96"', 25.4, 25.4, false],
    ['style="width:40mm;height:30mm" width="1mm"', 40, 30, true],
    ['data-tombolo-width="60mm" viewBox="0 0 96 48"', 60, 30, true],
    ['data-tombolo-width="60mm" data-tombolo-height="10mm" width="1cm" height="1cm"', 60, 10, true],
    ['data-tombolo-height="60mm" width="96" height="48"', 120, 60, true],
  ])('%s', (attributes, width, height, stated) => {
    const drawing = draw(svg(attributes));
    expect(drawing.width).toBeCloseTo(width, 9);
    expect(drawing.height).toBeCloseTo(height, 9);
    expect(drawing.sizeStated).toBe(stated);
  });

  it('options override, the ratio stays', () => {
    const text = svg('width="96" height="48" data-tombolo-width="1mm"', '<rect width="96" height="24"/>');
    const drawing = draw(text, { width: 200 });
    expect([drawing.width, drawing.height]).toEqual([200, 100]);
    expect(boxes(drawing)).toEqual([[0, 0, 200, 50]]);
    expect([draw(text, { width: 200, height: 10 }).height, draw(text, { height: 10 }).width]).toEqual([10, 20]);
    expect(draw(text, { width: NaN }).width).toBe(1);
  });

  it('toMm maps user units to the sheet', () => {
    const { toMm } = draw(svg('width="100mm" height="100mm" viewBox="-50 -50 100 100"'));
    expect(toMm).toEqual({ a: 1, b: 0, c: 0, d: 1, e: 50, f: 50 });
  });

  it('what cannot be read is said', () => {
    expect(findings(draw(svg('viewBox="0 0 10"')))).toEqual(['unreadable-markup: 0 0 10']);
    expect(findings(draw(svg('data-tombolo-width="60"')))).toEqual(['unreadable-markup: 60']);
  });

  it('an empty frame paints nothing', () => {
    for (const attributes of ['width="0" height="5"', 'viewBox="0 0 0 5"', 'width="0mm" viewBox="0 0 5 5"']) {
      expect(draw(svg(attributes, '<rect width="5" height="5"/>')).shapes).toEqual([]);
    }
  });
});

describe('a size that no sheet can have', () => {
  it.each([
    ['width="1e9mm" height="10mm"', 'A sheet of more than 100 m cannot be cut: nothing of it is read.'],
    ['width="1e300mm" height="1e300mm"', 'A sheet of more than 100 m cannot be cut: nothing of it is read.'],
    ['width="10mm" height="1e-9mm"', 'A sheet of less than 0.1 mm cannot be cut: nothing of it is read.'],
  ])('%s is told, and is no work', (size, message) => {
    const drawing = draw(svg(`${size} viewBox="0 0 9 9"`, '<rect width="5" height="5"/>'));
    expect(drawing.shapes).toEqual([]);
    expect(drawing.problems.map((problem) => problem.message)).toContain(message);
  });

  it('may be just within bounds', () => {
    for (const side of ['100m', '99999mm', '0.1mm']) {
      const drawing = draw(svg(`width="${side.replace('100m', '10000cm')}" height="10mm" viewBox="0 0 9 9"`));
      expect(drawing.problems.filter(({ severity }) => severity === 'error')).toEqual([]);
    }
  });

  it('shapes that reach too far are told each, and left out', () => {
    const far = '<rect x="1e9" y="3" width="5" height="5"/><rect transform="scale(1e8)" width="5" height="5"/>';
    const drawing = draw(svg('width="10mm" height="10mm" viewBox="0 0 10 10"', `<rect width="5" height="5"/>${far}`));
    expect(drawing.shapes).toHaveLength(1);
    expect(drawing.problems.map((problem) => problem.message)).toEqual([
      'This reaches farther than 100 m from the sheet: it is left out.',
      'This reaches farther than 100 m from the sheet: it is left out.',
    ]);
  });
});
