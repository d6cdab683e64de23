import { describe, expect, it } from 'vitest';
import { check, fixesFor, readConfig } from '../../../src/engine/index';
import { applyEdits } from '../../../src/text/text';

const svg = (inside: string, attributes = '') =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="60mm" viewBox="0 0 60 60"${attributes}>\n${inside}\n</svg>\n`;
const rect = (x: number, y: number, fill: string, size = 20) =>
  `  <rect x="${x}" y="${y}" width="${size}" height="${size}" fill="${fill}"/>\n`;
const mixed = (text: string, config = '') =>
  check(text, { config: readConfig(config).config }).complete.filter((each) => each.check === 'mixed-colours');
const layersOf = (text: string, config = '') =>
  check(text, { config: readConfig(config).config }).sheets.map(({ layer }) => layer.name);

const flat = svg(rect(5, 5, '#c33') + rect(20, 20, '#36c') + rect(35, 40, '#3a5', 10));

describe('colours without groups', () => {
  it('are told, with the paint that all would get', () => {
    const [finding, ...others] = mixed(flat);
    expect(others).toEqual([]);
    expect(finding?.message).toBe('Three colours in one sheet (#cc3333, #3366cc, #33aa55): all is sprayed #cc3333.');
    expect(finding?.severity).toBe('warning');
    expect(flat.slice(finding!.span.from, finding!.span.to)).toBe('svg');
    expect(finding?.related.map(({ span }) => flat.slice(span.from, span.to))).toEqual(['rect', 'rect']);
  });

  it('are taken as layers by one attribute, and the finding goes', () => {
    const report = check(flat);
    const { fixes } = fixesFor(report, report.complete.find(({ check: id }) => id === 'mixed-colours')!);
    const [first] = fixes;
    expect([first?.title, first?.preferred]).toEqual(['Take each colour as a layer; 1 finding comes to light', false]);
    expect(first?.brings.map(({ check: id }) => id)).toEqual(['short-overlap']);
    const after = applyEdits(flat, first!.edits);
    expect(after).toBe(flat.replace(' viewBox', ' data-tombolo-layers="by-paint" viewBox'));
    expect(layersOf(after)).toEqual(['#cc3333', '#3366cc', '#33aa55']);
    expect(mixed(after)).toEqual([]);
    expect(fixes.some(({ kind }) => kind === 'accept')).toBe(true);
  });

  it('are best taken as layers where that brings nothing to light', () => {
    const apart = svg(rect(5, 5, '#c33') + rect(35, 30, '#36c'));
    const [first] = fixesFor(
      check(apart),
      check(apart).complete.find(({ check: id }) => id === 'mixed-colours')!,
    ).fixes;
    expect([first?.title, first?.preferred, first?.brings]).toEqual(['Take each colour as a layer', true, []]);
  });

  it('are taken as layers by tombolo.json, unless the file says otherwise', () => {
    expect(layersOf(flat, '{ "layers": "by-paint" }')).toHaveLength(3);
    expect(layersOf(flat.replace('<svg ', '<svg data-tombolo-layers="one" '), '{ "layers": "by-paint" }')).toHaveLength(
      1,
    );
    expect(readConfig('{ "layers": "by-colour" }').problems).toHaveLength(1);
  });

  it('of groups are told for each layer, and taken apart in that layer alone', () => {
    const two = svg(
      `  <g id="sky">${rect(5, 5, '#8cf')}</g>\n  <g id="bird">${rect(20, 20, '#234')}${rect(40, 5, '#fff', 5)}</g>`,
    );
    const [finding, ...others] = mixed(two);
    expect([finding?.layer, others]).toEqual(['bird', []]);
    const [first] = fixesFor(check(two), finding as never).fixes;
    const after = applyEdits(two, first!.edits);
    expect(after).toContain('<g id="bird" data-tombolo-layers="by-paint">');
    expect(layersOf(after)).toEqual(['sky', 'bird #223344', 'bird #ffffff']);
  });

  it('are not told of cut lines, of one colour written in two ways, of a stated paint, of what fills nothing', () => {
    const lines =
      '<path d="M5 5h20v20h-20z" fill="none" stroke="red" stroke-width=".1"/>' +
      '<path d="M35 5h20v20h-20z" fill="none" stroke="blue" stroke-width=".1"/>';
    expect(mixed(svg(lines))).toEqual([]);
    expect(mixed(svg(rect(5, 5, 'red') + rect(30, 5, '#f00')))).toEqual([]);
    expect(mixed(svg(`${rect(5, 5, 'red')}<path d="M30 5h5" fill="blue"/>`))).toEqual([]);
    expect(mixed(flat.replace('<svg ', '<svg data-tombolo-layers="one" '))).toHaveLength(1);
  });
});

describe('groups within a layer', () => {
  const inner = svg(
    `  <g id="art">\n${rect(5, 5, '#c33')}<g id="a">${rect(20, 20, '#36c')}</g><g id="b">${rect(40, 40, '#3a5', 10)}</g></g>`,
  );
  it('can be taken as layers', () => {
    const report = check(inner);
    const finding = report.complete.find(({ check: id }) => id === 'mixed-colours')!;
    const fix = fixesFor(report, finding).fixes.find(({ kind }) => kind === 'layers-inner-groups');
    expect(fix?.title).toBe('Take the inner groups as layers');
    const after = applyEdits(inner, fix!.edits);
    expect(layersOf(after)).toEqual(['loose shapes', 'a', 'b']);
    expect(mixed(after)).toEqual([]);
  });
  it('are not offered where there are none', () => {
    const report = check(flat);
    const finding = report.complete.find(({ check: id }) => id === 'mixed-colours')!;
    expect(fixesFor(report, finding).fixes.map(({ kind }) => kind)).not.toContain('layers-inner-groups');
  });
});

describe('the order of colours that were taken apart', () => {
  const byPaint = (shapes: string) => svg(shapes, ' data-tombolo-layers="by-paint"');
  it('is that in which they appear, where nothing asks for another', () => {
    expect(layersOf(byPaint(rect(5, 5, '#c33') + rect(30, 30, '#36c') + rect(5, 30, '#c33')))).toEqual([
      '#cc3333',
      '#3366cc',
    ]);
  });
  it('is another where a colour comes back on top', () => {
    const back = byPaint(rect(35, 5, '#c33') + rect(5, 30, '#36c') + rect(15, 35, '#c33', 5));
    expect(layersOf(back)).toEqual(['#3366cc', '#cc3333']);
    expect(mixed(back)).toEqual([]);
  });
  it('cannot be where a colour lies both under and over another, which is told at its place', () => {
    const sandwich = byPaint(rect(5, 5, '#c33', 30) + rect(15, 15, '#36c', 30) + rect(22, 22, '#c33', 8));
    const [finding, ...others] = mixed(sandwich);
    expect(others).toEqual([]);
    expect(finding?.message).toBe(
      '#cc3333 is drawn over #3366cc here, but under it elsewhere: it is sprayed first, so this part is covered.',
    );
    expect(finding?.at).toEqual({ x: expect.closeTo(26, 1), y: expect.closeTo(26, 1) });
    expect(finding?.layer).toBe('#cc3333');
    expect(sandwich.slice(finding!.span.to).startsWith(' x="22"')).toBe(true);
  });
  it('is told once for a colour, with the other places', () => {
    const over = `${rect(12, 12, '#c33', 8)}${rect(36, 36, '#c33', 6)}`;
    const text = byPaint(`${rect(2, 2, '#c33', 56)}${rect(10, 10, '#36c', 20)}${rect(30, 30, '#3a5', 20)}${over}`);
    const [finding, ...others] = mixed(text);
    expect(others).toEqual([]);
    expect(finding?.message).toContain('#cc3333 is drawn over #3366cc here');
    expect(finding?.related.map(({ message }) => message)).toEqual(['#cc3333 is covered by #33aa55 here as well']);
    expect(finding?.related[0]?.at).toEqual({ x: expect.closeTo(39, 1), y: expect.closeTo(39, 1) });
  });
  it('covers as little as can be where none is without loss', () => {
    const large = rect(2, 2, '#c33', 56) + rect(4, 4, '#36c', 50) + rect(6, 6, '#c33', 44);
    expect(layersOf(byPaint(rect(30, 2, '#3a5', 4) + large))).toEqual(['#33aa55', '#3366cc', '#cc3333']);
  });
  it('is said in the title of the fix', () => {
    const sandwich = svg(rect(5, 5, '#c33', 30) + rect(15, 15, '#36c', 30) + rect(22, 22, '#c33', 8));
    const [fix] = fixesFor(check(sandwich), mixed(sandwich)[0] as never).fixes;
    expect(fix?.title).toBe('Take each colour as a layer; 1 place will be covered by another colour');
  });
  it('asks for nothing where later colours cover the place', () => {
    const hidden = byPaint(
      rect(5, 5, '#c33', 20) + rect(10, 10, '#36c', 20) + rect(12, 12, '#c33', 4) + rect(8, 8, '#36c', 20),
    );
    expect(mixed(hidden)).toEqual([]);
  });
});
