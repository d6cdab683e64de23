/** The order of a drawing that is taken apart by paint is written as groups, one for each paint. */
import { Resvg } from '@resvg/resvg-js';
import { describe, expect, it } from 'vitest';
import { reorderLayers } from '../../../../src/engine/fixes/order/reorder-layers';
import { applyEdits, check, readConfig, sprayOrder } from '../../../../src/engine/index';

const svg = (body: string, attributes = ' data-tombolo-layers="by-paint"') =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="40mm" viewBox="0 0 60 40"${attributes}>\n${body}\n</svg>\n`;

const SUN = '<path id="sun" fill="#ffdd55" d="M20 15h20v10h-20z"/>';
const MARSH = '<path fill="#224433" fill-rule="evenodd" d="M10 10h40v20h-40z M20 15v10h20v-10z"/>';
const REED = '<path fill="#224433" d="M52 4h3v30h-3z"/>';

const names = (text: string, settings = {}) => check(text, settings).sheets.map(({ layer }) => layer.name);

/** The text in the best order; the reason where there is none. */
function inBestOrder(text: string, settings = {}): string {
  const report = check(text, settings);
  const best = sprayOrder(report);
  if (typeof best === 'string') return best;
  const edits = reorderLayers(report, best.order, best.moved);
  return typeof edits === 'string' ? edits : applyEdits(text, edits);
}

describe('the spray order of a drawing that is taken apart by paint', () => {
  it('is written as a group for each paint; shapes, comments and definitions keep their text', () => {
    const text = svg(
      `  <!-- low -->\n  ${SUN}\n  <defs><path id="d" d="M0 0"/></defs>\n  <!-- round it -->\n  ${MARSH}\n  ${REED}`,
    );
    expect(names(text)).toEqual(['#ffdd55', '#224433']);
    const written = inBestOrder(text);
    expect(written).toBe(
      svg(
        '  <!-- low -->\n  <defs><path id="d" d="M0 0"/></defs>\n' +
          `  <g aria-label="#224433">\n  <!-- round it -->\n  ${MARSH}\n  ${REED}\n  </g>\n` +
          `  <g aria-label="#ffdd55">\n  ${SUN}\n  </g>`,
        '',
      ),
    );
    expect(names(written)).toEqual(['#224433', '#ffdd55']);
    expect(sprayOrder(check(written))).toMatchObject({ moved: [], after: 0 });
    expect(pixels(written)).toEqual(pixels(text));
  });

  it('writes a group of several colours once for each, its id the first time only', () => {
    const group = (inner: string, id = ' id="art"') => `<g${id} transform="translate(1 2)" opacity="1">${inner}</g>`;
    const text = svg(group(`<title>Marsh</title>${SUN}${MARSH}`) + REED);
    const written = inBestOrder(text);
    expect(written).toContain(
      `<g aria-label="#224433">\n${group(`<title>Marsh</title>${MARSH}`)}${REED}\n</g>\n` +
        `<g aria-label="#ffdd55">\n${group(SUN, '')}\n</g>`,
    );
    expect(pixels(written)).toEqual(pixels(text));
  });

  it('says that the groups are the layers where tombolo.json takes files apart by paint', () => {
    const settings = { config: readConfig('{"layers": "by-paint"}').config };
    const text = svg(SUN + MARSH, '');
    const before = names(text, settings);
    expect(before).toEqual(['#ffdd55', '#224433']);
    const written = inBestOrder(text, settings);
    expect(written).toContain('<svg data-tombolo-layers="inner-groups" ');
    expect(names(written, settings)).toEqual(before.toReversed());
  });

  it.each([
    [
      'a shape has two colours',
      svg(`${SUN.replace('fill=', 'stroke="#224433" fill=')}${MARSH}`),
      /^A shape is drawn in two/,
    ],
    [
      'a colour lies under and over another',
      svg(`${SUN}${MARSH}<path fill="#ffdd55" d="M12 12h4v4h-4z"/><path fill="#224433" d="M13 13h2v2h-2z"/>`),
      /^A colour lies under and over/,
    ],
    ['a link holds several colours', svg(`<a>${SUN}${MARSH}</a>`), /^An element that is no <g>/],
  ])('is refused in one line where %s', (_, text, reason) => {
    const report = check(text);
    const edits = reorderLayers(report, [1, 0], [0]);
    expect(edits).toMatch(reason);
    expect(String(edits).length).toBeLessThanOrEqual(120);
  });
});

function pixels(text: string): Uint8Array {
  return new Uint8Array(new Resvg(text, { fitTo: { mode: 'width', value: 240 }, background: '#fff' }).render().pixels);
}
