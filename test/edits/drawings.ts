/** Small drawings with islands, of every kind that bridges are put into. 60 mm square. */

export const svg = (inside: string, attributes = ''): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="60mm" viewBox="0 0 60 60"${attributes}>${inside}</svg>`;

const LETTER_O =
  'M30 8c12 0 20 10 20 22s-8 22-20 22-20-10-20-22 8-22 20-22zm0 8c-7 0-11 6-11 14s4 14 11 14 ' +
  '11-6 11-14-4-14-11-14z';

export const drawings: Record<string, string> = {
  'a letter': svg(`<path d="${LETTER_O}"/>`),
  'a letter, evenodd': svg(`<path fill-rule="evenodd" d="M10 10H50V50H10ZM20 20H40V40H20Z"/>`),
  'a small counter': svg(`<path d="M10 10H50V50H10ZM28 28v4h4v-4z"/>`),
  'a turned group': svg(`<g transform="rotate(30 30 30)"><path d="${LETTER_O}"/></g>`),
  'an uneven scale': svg(`<g transform="translate(5 5) scale(.8 .5) rotate(20) skewX(10)"><path d="${LETTER_O}"/></g>`),
  mirrored: svg(`<g transform="matrix(-1 0 0 1 60 0)"><path d="${LETTER_O}"/></g>`),
  'four bars': svg(
    '<rect x="5" y="5" width="50" height="8"/><rect x="5" y="45" width="50" height="8"/>' +
      '<rect x="5" y="5" width="8" height="48"/><rect x="45" y="5" width="8" height="48"/>',
  ),
  'a polygon frame': svg(
    '<g fill="#222"><polygon points="5,5 55,5 55,15 5,15"/><polygon points="5,45 55,45 ' +
      '55,55 5,55"/>' +
      '<polyline points="5,5 15,5 15,55 5,55"/><polyline id="right" points="45,5 55,5 55,55 45,55"/></g>',
  ),
  'two rings, one in the other': svg(
    '<path fill-rule="evenodd" d="M30 2a28 28 0 0 1 0 56a28 28 0 0 1 0-56zm0 ' +
      '6a22 22 0 0 0 0 44a22 22 0 0 0 0-44z' +
      'm0 8a14 14 0 0 1 0 28a14 14 0 0 1 0-28zm0 6a8 8 0 0 0 0 16a8 8 0 0 0 0-16z"/>',
  ),
  'circles and an ellipse': svg(
    '<circle cx="30" cy="20" r="14"><title>top</title></circle><ellipse cx="30" ' +
      'cy="45" rx="16" ry="12"/>' +
      '<circle cx="14" cy="32" r="9"/><circle r="9" cx="46" cy="32"></circle>',
  ),
  'rounded rectangles': svg(
    '<rect x="5" y="5" width="50" height="12" rx="4"/><rect x="5" y="43" width="50" ' +
      'height="12" rx="4" ry="2"/>' +
      '<rect x="5" y="8" width="12" height="44" rx="3"/><rect x="43" y="8" width="12" height="44" rx="3"/>',
  ),
  'styled by class': svg(
    `<style>.ink { fill: #123456; fill-rule: evenodd }</style><path class="ink" d="M10 ` +
      `10H50V50H10ZM20 20H40V40H20Z"/>`,
  ),
};

export const lines: Record<string, string> = {
  'a ring drawn as a line': svg('<circle cx="30" cy="30" r="16" fill="none" stroke="#000" stroke-width="5"/>'),
  'a path with round caps': svg(
    '<path d="M12 12H48V48H12z" fill="none" stroke="#000" stroke-width="4" ' +
      'stroke-linecap="round" stroke-linejoin="round"/>',
  ),
  'a path with square caps, relative': svg(
    '<g fill="none" stroke="#000" stroke-width="4" ' +
      'stroke-linecap="square"><path d="m30,12 c20,0 20,36 0,36 s-20,-36 0,-36"/></g>',
  ),
  'a frame of lines': svg(
    '<g stroke="#000" stroke-width="5"><line x1="10" y1="10" x2="50" y2="10"/><line ' +
      'x1="50" y1="8" x2="50" y2="52"/>' +
      '<polyline points="50 50 10 50 10 8" fill="none"/></g>',
  ),
  'a rectangle with a line round it': svg(
    '<path fill-rule="evenodd" stroke="#000" stroke-width="1.5" d="M10 ' + '10H50V50H10zM22 22V38H38V22z"/>',
  ),
  'a turned square': svg(
    '<rect x="16" y="16" width="28" height="28" rx="5" transform="rotate(30 30 30)" ' +
      'fill="none" stroke="#000" stroke-width="6"/>',
  ),
};

export const DASHED_RING = '<circle cx="30" cy="30" r="16" fill="none" stroke="#000" stroke-width="5"';

/** Lines whose dashes are one, or run into each other by their caps. */
export const dashes: Record<string, string> = {
  'one dash all round': svg(`${DASHED_RING} stroke-dasharray="200 1"/>`),
  'by style, with an offset': svg(
    '<circle cx="30" cy="30" r="16" style="fill:none;stroke:#000;stroke-width:5;' +
      'stroke-linecap:round;stroke-dasharray:60 1;stroke-dashoffset:7"/>',
  ),
  'round dots': svg(`${DASHED_RING} stroke-linecap="round" stroke-dasharray="0 3.3" stroke-dashoffset="1"/>`),
  'square caps, relative curves': svg(
    '<path d="m12,12 c10,-6 26,-6 36,0 s 6,26 0,36 q-18,6-36,0z" fill="none" ' +
      'stroke="#000" stroke-width="4" stroke-linecap="square" stroke-dasharray="6 2" stroke-dashoffset="3"/>',
  ),
  'dashes round a fill': svg(
    '<path fill-rule="evenodd" stroke="#000" stroke-width="1.5" stroke-dasharray="3 2" ' +
      'd="M10 10H50V50H10zM22 22V38H38V22z"/>',
  ),
  'dashes by class round a fill': svg(
    '<style>.a{fill-rule:evenodd;stroke:#000;stroke-width:1.5;stroke-dasharray:3 2}' +
      '</style><path class="a" d="M10 10H50V50H10zM22 22V38H38V22z"/>',
  ),
  stretched: svg(
    '<path d="M12 12H40V44H12z" transform="matrix(1.1 .2 -.1 .8 5 2)" fill="none" stroke="#000" ' +
      'stroke-width="4" stroke-linecap="round" stroke-dasharray="7 2.5"/>',
  ),
  'by a group, and a rule that names the element': svg(
    '<style>rect { fill: none; stroke-width: 6px }</style>' +
      '<g stroke="#123" stroke-linecap="square" stroke-dasharray="9 5"><rect x="12" y="12" width="36" ' +
      'height="36"/></g>',
  ),
  'drawn twice': svg(
    '<defs><circle id="c" cx="10" cy="10" r="8" fill="none" stroke="#000" stroke-width="3" ' +
      'stroke-linecap="round" stroke-dasharray="4 2"/></defs><use href="#c" x="2" y="2"/>' +
      '<use href="#c" x="30" y="30"/>',
  ),
};

export const sheets: Record<string, string> = {
  'a silhouette with a hole': svg(
    '<path fill="#111" fill-rule="evenodd" d="M0 0H60V60H0ZM10 10H50V50H10ZM20 ' + '20H40V40H20Z"/>',
  ),
  'several shapes': svg(
    '<g fill="#111" transform="translate(30 30)">\n  <path fill-rule="evenodd" ' +
      'd="M-30-30H30V30H-30ZM-20-20H20V20H-20Z"/>\n' +
      '  <circle r="10" class="moon"/>\n</g>',
  ),
};

export const outlines: Record<string, string> = {
  'one path': svg('<path fill="none" stroke="red" stroke-width=".1" d="M10 10H50V50H10ZM20 20H40V40H20Z"/>'),
  'with the sheet edge': svg(
    '<path fill="none" stroke="red" stroke-width=".1" d="M.1.1H59.9V59.9H.1zM10 ' + '10H50V50H10ZM20 20H40V40H20Z"/>',
  ),
  'two elements': svg(
    '<g fill="none" stroke="red" stroke-width=".1"><circle cx="30" cy="30" r="20"/>\n' +
      '<g transform="rotate(10)"><rect x="28" y="16" width="14" height="16" rx="2"/></g></g>',
  ),
  'two islands in one opening': svg(
    '<g fill="none" stroke="red" stroke-width=".1"><rect x="5" y="5" width="50" ' +
      'height="50"/>\n' +
      '<path d="M24 20h5v5h-5z"/>\n<path d="m31 20h5v5h-5z"/></g>',
  ),
};

export const instances: Record<string, string> = {
  'one of two': svg(
    '<defs><path id="o" d="M0 0H20V20H0zM6 6V14H14V6z"/></defs>\n  <use href="#o" x="5" y="5"/>\n' +
      '  <use href="#o" transform="translate(55 55) rotate(180)" class="second"/>',
  ),
  'a group within a use': svg(
    '<g id="a"><g id="b" transform="scale(.5)"><path id="o" d="M10 10H50V50H10zM20 ' +
      '20V40H40V20z"/></g></g>' +
      '<use href="#a" x="28" y="28"/>',
  ),
  'the only one': svg(
    '<defs><circle id="c" r="8" cx="30" cy="30" fill="none" stroke="#000" ' +
      'stroke-width="3"/></defs>\n<use href="#c"/>',
  ),
  'a use of a use': svg(
    '<defs><path id="o" d="M0 0H20V20H0zM6 6V14H14V6z"/><g id="p"><use href="#o" x="2"/></g></defs>' +
      '<use href="#p" y="4"/><use href="#p" x="30" y="30"/>',
  ),
};

/** Groups drawn by a `use` at the top of the file, where a group would be a layer. */
export const topGroups: Record<string, string> = {
  'a group drawn twice': svg(
    '<defs><g id="a"><path d="M0 0H20V20H0zM6 6V14H14V6z"/><circle r="2" cx="10" cy="23"/></g>' +
      '</defs><use href="#a" x="4" y="4" fill="#123"/><use href="#a" x="30" y="30" fill="#123"/>',
  ),
  'beside layers': svg(
    '<defs><g id="a"><path d="M0 0H20V20H0zM6 6V14H14V6z"/></g></defs><g id="x"><circle r="2" ' +
      'cx="10" cy="52"/></g><g id="y"><circle r="2" cx="20" cy="52"/></g><use href="#a" x="4" y="4" fill="#123" ' +
      'style="stroke:none"/><use id="second" href="#a" x="30" y="30" transform="rotate(5)"/>',
  ),
  'a turned symbol beside layers': svg(
    '<symbol id="s" viewBox="0 0 20 20"><path d="M0 0H20V20H0zM6 6V14H14V6z"/>' +
      '</symbol><g id="x"><circle r="2" cx="10" cy="52"/></g><g id="y"><circle r="2" cx="20" cy="52"/></g>' +
      '<use href="#s" x="4" y="4" width="20" height="20" transform="rotate(3)"/>',
  ),
};

/** What is rewritten before it can be cut. */
export const awkward: Record<string, string> = {
  'a stretched ring': svg(
    '<circle cx="30" cy="30" r="14" transform="matrix(1.2 0 0 .9 -6 3)" fill="none" ' +
      'stroke="#000" stroke-width="5"/>',
  ),
  'a stretched and skewed path with round caps': svg(
    '<path d="M12 12H40V44H12z" transform="matrix(1.1 .2 -.1 .8 5 2)" ' +
      'fill="none" stroke="#000" stroke-width="4" stroke-linecap="round"/>',
  ),
  'a stretched shape with a line round it': svg(
    '<path fill-rule="evenodd" stroke="#000" stroke-width="1.5" ' +
      'transform="scale(1.2 .9)" d="M8 10H44V50H8zM18 22V38H34V22z"/>',
  ),
  'a filled open line': svg('<path id="a" fill-rule="evenodd" stroke="#000" d="M10 10H50V50H10M22 22V38H38V22"/>'),
  'a filled open line with a style of its own': svg(
    '<g>\n  <path style="stroke: #000; stroke-width: 2" ' +
      'd="M10 10H50V50H10L10 16H22V38H38V20H10"><title>gate</title></path>\n</g>',
  ),
  'a rule that names the element': svg(
    '<style>circle { fill: none; stroke: #000; stroke-width: 5px }</style>' + '<circle cx="30" cy="30" r="16"/>',
  ),
  'a rule that names it within a group, and a style': svg(
    '<style>g > rect { fill-rule: evenodd; stroke: #123456 }</style>' +
      '<g><rect x="12" y="12" width="36" height="36" style="fill:none;stroke-width:6"/></g>',
  ),
  'a symbol drawn twice': svg(
    '<symbol id="s"><path d="M0 0H20V20H0zM6 6V14H14V6z"/></symbol><use href="#s" ' +
      'x="4" y="4"/><use href="#s" x="30" y="30"/>',
  ),
  'a symbol with a viewBox': svg(
    '<symbol id="s" viewBox="0 0 40 40" fill="#222"><path id="p" ' +
      'd="M0 0H40V40H0zM12 12V28H28V12z"/></symbol><use href="#s" x="4" y="4" width="20" height="20"/>' +
      '<use href="#s" x="30" y="30" width="24" height="24" ' +
      'transform="rotate(10 40 40)"/>',
  ),
  'a silhouette drawn by a use': svg(
    '<defs><g id="s"><path fill-rule="evenodd" ' +
      'd="M-9-9H70V70H-9ZM10 10H50V50H10ZM20 20H40V40H20Z"/></g></defs><use href="#s" fill="#111"/>',
  ),
  'cut lines drawn by a use': svg(
    '<defs><path id="o" d="M10 10H50V50H10Z"/></defs><g fill="none" stroke="red" ' +
      'stroke-width=".1"><use href="#o"/>\n<use href="#o" transform="translate(15 15) scale(.5)"/></g>',
  ),
};
