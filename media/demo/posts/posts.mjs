// Draws the posts of the marsh trail: a numeral, the ring of the sun, reeds. Writes post-8.svg.
// node posts.mjs number=8 reeds=7 sway=3 sun=16
import { writeFileSync } from 'node:fs';

const given = Object.fromEntries(process.argv.slice(2).map((word) => word.split('=')));
const { number = '8', reeds = 7, sway = 3, sun = 16 } = given;

/** Block numerals, 20 by 32. */
const NUMERALS = {
  0: 'M0 0H20V32H0ZM5 5V27H15V5Z',
  1: 'M6 0H13V32H6Z',
  2: 'M0 0H20V19H5V27H20V32H0V13H15V5H0Z',
  3: 'M0 0H20V32H0V27H15V19H4V13H15V5H0Z',
  4: 'M0 0H5V13H15V0H20V32H15V19H0Z',
  5: 'M0 0H20V5H5V13H20V32H0V27H15V19H0Z',
  6: 'M0 0H20V5H5V13H20V32H0ZM5 19V27H15V19Z',
  7: 'M0 0H20V32H15V5H0Z',
  8: 'M0 0H20V32H0ZM5 5V13H15V5ZM5 19V27H15V19Z',
  9: 'M0 0H20V32H0V27H15V19H0ZM5 5V13H15V5Z',
};

const circle = (x, y, r) => `M${x - r} ${y}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0Z`;

const ring = (id, x, y, outer, inner) => `<path id="${id}" d="${circle(x, y, outer)}${circle(x, y, inner)}"/>`;

const numeral = (digit, index) =>
  `<path id="digit${index + 1}" transform="translate(${30 + 24 * index} 92)" d="${NUMERALS[digit]}"/>`;

function reed(index) {
  const x = 10 + index * 12;
  const height = 30 + ((index * 7) % 5) * 4;
  return `<path id="reed${index + 1}" d="M${x} 84L${x + Number(sway)} ${84 - height}h1l2 ${height}Z"/>`;
}

const layer = (id, fill, shapes) => `<g id="${id}" fill="${fill}" fill-rule="evenodd">
${shapes.join('\n')}
</g>`;

const drawing = `<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="140mm" viewBox="0 0 100 140">
${layer('Sun', '#e8a33d', [ring('halo', 50, 28, Number(sun) + 4, Number(sun)), ring('core', 50, 28, Number(sun) - 4, Number(sun) - 8)])}
${layer('Reeds', '#6b8a4e', Array.from({ length: Number(reeds) }, (_, index) => reed(index)))}
${layer('Numeral', '#3b4a54', [...number].map(numeral))}
</svg>
`;
writeFileSync(`post-${number}.svg`, drawing);
