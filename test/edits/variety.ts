/** One drawing told in many ways: each way of writing SVG that bridges must cope with. */

export interface Way {
  readonly name: string;
  /** @param path data in a box of 24 × 24 units; @returns an SVG of 120 × 120 mm */
  readonly tell: (data: string) => string;
}

const file = (inside: string, attributes = ''): string =>
  '<svg xmlns="http://www.w3.org/2000/svg" width="120mm" height="120mm" viewBox="0 0 24 24"' +
  `${attributes}>\n${inside}\n</svg>\n`;

const within =
  (transform: string) =>
  (data: string): string =>
    file(`  <g transform="${transform}">\n    <path d="${data}"/>\n  </g>`, ' data-tombolo-reading="openings"');

export const WAYS: readonly Way[] = [
  { name: 'nonzero', tell: (data) => file(`<path d="${data}"/>`, ' data-tombolo-reading="openings"') },
  {
    name: 'evenodd',
    tell: (data) => file(`<path fill-rule="evenodd" d="${data}"/>`, ' data-tombolo-reading="openings"'),
  },
  { name: 'turned', tell: within('translate(12 12) rotate(17) scale(.7) translate(-12 -12)') },
  { name: 'mirrored', tell: within('matrix(-1 0 0 1 24 0)') },
  { name: 'stretched', tell: within('translate(2 4) scale(.85 .6) skewX(8)') },
  {
    name: 'style sheet',
    tell: (data) =>
      file(
        `<style>.ink { fill: #234; fill-rule: evenodd }</style>\n<path class="ink" d="${data}"/>`,
        ' data-tombolo-reading="openings"',
      ),
  },
  {
    name: 'one of two uses',
    tell: (data) =>
      file(
        `<defs><path id="icon" d="${data}"/></defs>\n<use href="#icon" transform="scale(.5)"/>\n` +
          '<use href="#icon" transform="translate(12 12) scale(.5)"/>',
        ' data-tombolo-reading="openings"',
      ),
  },
  {
    name: 'silhouette',
    tell: (data) => file(`<path fill-rule="evenodd" d="M-1-1H25V25H-1Z${data}"/>`, ' data-tombolo-reading="sheet"'),
  },
  {
    name: 'cut lines',
    tell: (data) =>
      file(`<path fill="none" stroke="red" stroke-width=".02" d="${data}z"/>`, ' data-tombolo-reading="outlines"'),
  },
  {
    name: 'with a line round it',
    tell: (data) => file(`<path stroke="#000" stroke-width=".2" d="${data}z"/>`, ' data-tombolo-reading="openings"'),
  },
];
