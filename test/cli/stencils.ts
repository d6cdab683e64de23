/** Small stencils whose measures are known in closed form. 60 × 40 mm, one user unit to the mm. */

export function stencil(content: string, attributes = 'width="60mm" height="40mm"'): string {
  return `<svg xmlns="http://www.w3.org/2000/svg" ${attributes} viewBox="0 0 60 40">\n${content}\n</svg>\n`;
}

/** One opening of 40 × 20 mm. */
export const SOUND = stencil('  <rect x="10" y="10" width="40" height="20" fill="#222222"/>');

/** A ring-shaped opening: 40 × 20 mm less an island of 20 × 10 mm. */
export const WITH_ISLAND = stencil(
  '  <path fill="#222222" fill-rule="evenodd" d="M10 10H50V30H10Z M20 15V25H40V15Z"/>',
);

/** Two openings with a web of 0.4 mm between them, 20 mm long; it holds no island. */
export const WITH_THIN_WEB = stencil(
  '  <path fill="#222222" d="M10 10H29.8V30H10Z"/>\n  <path fill="#222222" d="M30.2 10H50V30H30.2Z"/>',
);

/** Sky first, then a sun painted over it. */
export const TWO_LAYERS = stencil(
  [
    '  <g id="sky"><rect x="5" y="5" width="50" height="30" fill="#8fd3ff"/></g>',
    '  <g id="sun"><rect x="20" y="10" width="10" height="10" fill="#ffb300"/></g>',
  ].join('\n'),
);
