/** Mends of doubled and open lines: the text after each, and that what is cut stays what it was. */
import { describe, expect, it } from 'vitest';
import { check } from '../../../src/engine/check/check-file';
import { areaOf } from '../../../src/geometry/boolean/index';
import { sheetOf } from '../../checks/stencils';
import { checksIn, fixed } from '../mended';

const openArea = (svg: string): number => check(svg).sheets.reduce((sum, { openings }) => sum + areaOf(openings), 0);
const cutLength = (svg: string): number => check(svg).sheets.reduce((sum, sheet) => sum + sheet.cutLength, 0);

const hairlines = 'fill="none" stroke="#f00" stroke-width="0.1"';

describe('mends of a doubled line', () => {
  it('remove the element that lies on another, and nothing else', () => {
    const circle = '<circle cx="50" cy="50" r="20"/>';
    const svg = sheetOf(`\n  ${circle}\n  <path d="M50 30A20 20 0 1 0 50 70A20 20 0 0 0 50 30"/>\n`);
    const text = fixed(svg, 'doubled-cut').get('remove-doubled-line');
    expect(text).toBe(sheetOf(`\n  ${circle}\n`));
  });

  it('remove one subpath of many, byte for byte', () => {
    const svg = sheetOf('<path d="M10 10h20v20h-20z m50 0 h20v20h-20z M10,10 l20 0 0 20 -20 0z M 70 70 h5.50v5z"/>');
    const text = fixed(svg, 'doubled-cut').get('remove-doubled-line') ?? '';
    expect(text).toContain('d="M10 10h20v20h-20z m50 0 h20v20h-20z M 70 70 h5.50v5z"');
    expect(openArea(text)).toBeCloseTo(openArea(svg), 6);
  });

  it('remove all copies at once', () => {
    const svg = sheetOf('<rect id="r" x="9" y="9" width="9" height="9"/><use href="#r"/><g><use href="#r"/></g>');
    const text = fixed(svg, 'doubled-cut').get('remove-doubled-line') ?? '';
    expect(text).toBe(sheetOf('<rect id="r" x="9" y="9" width="9" height="9"/><g></g>'));
  });

  it('bring back the opening that two cut lines cancelled', () => {
    const line = '<path d="M10 10H40V40H10Z"/>';
    const svg = sheetOf(`${line}${line}<circle cx="70" cy="70" r="9"/>`, hairlines);
    const text = fixed(svg, 'doubled-cut').get('remove-doubled-line') ?? '';
    expect(text).toBe(sheetOf(`${line}<circle cx="70" cy="70" r="9"/>`, hairlines));
    expect(openArea(text) - openArea(svg)).toBeCloseTo(900, 6);
  });

  it('remove both where they cancel each other out', () => {
    const square = 'M10 10H40V40H10Z';
    const svg = sheetOf(`<path fill-rule="evenodd" d="${square}${square}M60 60h9v9z"/>`);
    const mends = fixed(svg, 'doubled-cut');
    expect([...mends.keys()]).toEqual(['remove-both-lines', 'accept']);
    expect(mends.get('remove-both-lines')).toBe(sheetOf('<path fill-rule="evenodd" d="M60 60h9v9z"/>'));
  });

  describe('unite two outlines', () => {
    const left = '<path d="M10 10H40V40H10Z"/>';
    it.each([
      ['of two elements', sheetOf(`${left}<rect x="40" y="15" width="20" height="20"/>`)],
      ['turned against each other', sheetOf(`${left}<path d="M40 15V35H60V15Z"/>`)],
      ['of one path', sheetOf('<path d="M10 10h30v30h-30z M40 15h20v20h-20z"/>')],
      [
        'under different transforms',
        sheetOf(
          '<path transform="rotate(20 50 50)" d="M20 20H50V50H20Z"/>' +
            '<rect transform="rotate(20 50 50) scale(2)" x="25" y="12.5" width="10" height="10"/>',
        ),
      ],
      [
        'along an arc',
        sheetOf('<path d="M20 30A20 20 0 0 1 60 30V10H20Z"/><path d="M20 30A20 20 0 0 1 60 30V70H20Z"/>'),
      ],
      [
        "one within the other's edge, of cut lines",
        sheetOf('<path d="M10 10H40V40H10Z"/><path d="M40 15H60V35H40Z"/>', hairlines),
      ],
      [
        'of a silhouette',
        sheetOf(
          '<path d="M0 0H50V100H0Z M10 20V40H40V20Z"/><rect x="50" width="50" height="100"/>',
          'data-tombolo-reading="sheet"',
        ),
      ],
    ])('%s', (_, svg) => {
      const text = fixed(svg, 'doubled-cut').get('unite-outlines') ?? '';
      expect(checksIn(text)).not.toContain('doubled-cut');
      expect(openArea(text)).toBeCloseTo(openArea(svg), 2);
      expect(cutLength(text)).toBeCloseTo(cutLength(svg), 2);
    });

    // One too fine to count as a colour of the sheet would give its colour to all of it.
    it.each([
      ['the first', '<path d="M10 10H60V40H10Z"/><path fill="#fff" d="M60 12V30H60.0000001V12Z"/>'],
      ['the second, turned', '<path fill="#fff" d="M40 15V35H50V15Z"/><path d="M10 10V40H40V10Z"/>'],
      ['the second', '<path fill="#fff" d="M40 15V35H50V15Z"/><path d="M10 10H40V40H10Z"/>'],
    ])('in the colour of the larger: %s', (_, outlines) => {
      const svg = sheetOf(outlines);
      const text = fixed(svg, 'doubled-cut').get('unite-outlines') ?? '';
      expect(text.match(/<path/g)).toHaveLength(1);
      expect(text).not.toContain('#fff');
      expect(openArea(text)).toBeCloseTo(openArea(svg), 2);
    });

    it('keeps the commands that are not touched', () => {
      const svg = sheetOf(`<path d="M 10,10 H40 V40 H10 Z"/><rect x="40" y="15" width="20" height="20"/>`);
      expect(fixed(svg, 'doubled-cut').get('unite-outlines')).toMatch(/<path d="M 10,10 H40 V15 .*H10 Z"\/><\/svg>$/);
    });
  });

  it('part an outline with a slit in two', () => {
    const svg = sheetOf('<path d="M10 50V10H90V90H10V50H40V60H60V40H40V50Z"/>');
    const text = fixed(svg, 'doubled-cut').get('unite-outlines') ?? '';
    expect(openArea(text)).toBeCloseTo(openArea(svg), 6);
    expect(text.match(/Z/g)).toHaveLength(2);
    expect(check(text).complete.map(({ check: id }) => id)).not.toContain('doubled-cut');
  });

  it('are not offered where the area would change', () => {
    // The smaller one lies within the larger: without the shared stretch the two would be one outline with a notch.
    const svg = sheetOf('<rect x="10" y="10" width="60" height="60"/><rect x="10" y="20" width="20" height="20"/>');
    expect([...fixed(svg, 'doubled-cut').keys()]).toEqual(['accept']);
  });

  it('do not stand in the way of bridges', () => {
    const ring = '<path fill-rule="evenodd" d="M10 10h40v40h-40zM20 20h20v20h-20z"/>';
    expect([...fixed(sheetOf(ring + ring), 'floating-island').keys()]).toContain('bridge-island');
  });
});

describe('mends of an open outline', () => {
  const stated = `data-tombolo-reading="outlines" ${hairlines}`;

  it.each([
    ['M10 10H40V40H10V12', 'M10 10H40V40H10V12Z'],
    ['M10 10h30v30h-30', 'M10 10h30v30h-30z'],
    ['M10 10h30v30h-30 m40 0 h20v20h-20z', 'M10 10h30v30h-30z M50 40 h20v20h-20z'],
    ['M10 10h30v30h-30m40 0 20 0 0 20z', 'M10 10h30v30h-30zM50 40l 20 0 0 20z'],
  ])('close %s', (before, after) => {
    const svg = sheetOf(`<path d="${before}"/>`, stated);
    const text = fixed(svg, 'open-outline').get('close-outline') ?? '';
    expect(text).toBe(sheetOf(`<path d="${after}"/>`, stated));
    expect(openArea(text) - openArea(svg)).toBeCloseTo(900, 6);
  });

  it('close an outline round another, and show the island there', () => {
    const svg = sheetOf('<path d="M10 10H60V60H10V11"/><path d="M20 20H50V50H20Z"/>', stated);
    expect(checksIn(fixed(svg, 'open-outline').get('close-outline') ?? '')).toEqual(['floating-island']);
  });

  it('do not close one straight line, which goes, nor several, which are joined', () => {
    const line = sheetOf('<path d="M10 10H40"/>', stated);
    expect([...fixed(line, 'open-outline').keys()]).toEqual(['remove-open-line', 'accept']);
    const svg = sheetOf('<path d="M10 10H40V40"/><path d="M40 40H10V10"/>', stated);
    expect([...fixed(svg, 'open-outline').keys()]).toEqual(['join-lines', 'remove-open-line', 'accept']);
  });
});

describe('mends of lines that do not close', () => {
  const frame = '<path d="M5 5H95V95H5Z"/>';

  it('remove a stray straight line, and nothing else', () => {
    const svg = sheetOf(`${frame}\n<path d="M20 20L60 30"/>\n<circle cx="70" cy="70" r="9"/>`, hairlines);
    const mends = fixed(svg, 'open-outline');
    expect([...mends.keys()]).toEqual(['remove-open-line', 'accept']);
    expect(mends.get('remove-open-line')).toBe(sheetOf(`${frame}\n<circle cx="70" cy="70" r="9"/>`, hairlines));
  });

  it('remove one line of a path of several, byte for byte', () => {
    const svg = sheetOf('<path d="M5 5H95V95H5Z M20 20 L60,30 M 40 40 h9v9z"/>', hairlines);
    const text = fixed(svg, 'open-outline').get('remove-open-line') ?? '';
    expect(text).toContain('d="M5 5H95V95H5Z M 40 40 h9v9z"');
  });

  it('join lines that meet end to end, whichever way they run', () => {
    const svg = sheetOf(`${frame}<path d="M20 20H60"/><path d="M60 50V20"/><path d="M60 50L20 20"/>`, hairlines);
    const mends = fixed(svg, 'open-outline');
    expect([...mends.keys()]).toEqual(['join-lines', 'remove-open-line', 'accept']);
    const joined = mends.get('join-lines') ?? '';
    expect(checksIn(joined)).not.toContain('open-outline');
    expect(Math.abs(openArea(joined) - openArea(svg))).toBeCloseTo(600, 3);
    expect(joined.match(/<path/g)).toHaveLength(2);
  });

  it('join and close lines that leave a gap', () => {
    const svg = sheetOf(`${frame}<path d="M20 20H60V50"/><path d="M20 20V50"/>`, hairlines);
    const joined = fixed(svg, 'open-outline').get('join-lines') ?? '';
    expect(checksIn(joined)).not.toContain('open-outline');
    expect(Math.abs(openArea(joined) - openArea(svg))).toBeCloseTo(1200, 3);
  });
});
