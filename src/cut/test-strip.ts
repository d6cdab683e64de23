/**
 * A strip to cut and to spray before a job: islands on ever wider bridges, and ever wider slots. From it artists read
 * what their own sheet, tool and paint bear.
 */

/** mm: the least and the greatest width, and the step between. 0.2 mm is finer than any sheet bears, 1.5 mm safe in all. */
const [FIRST, STEP, COUNT] = [0.2, 0.1, 14];
/** mm between the middles of two columns, and from the first one to the edge. */
const PITCH = 12;
/** mm from the middle of a ring to its outer and inner edge: bridges are 2 mm long. */
const [OUTER, INNER] = [4, 2];
const SLOT_LENGTH = 8;
const HEIGHT = 38;
const [BRIDGES_AT, SLOTS_AT, MARKS_AT] = [9, 22, 31.5];
/** mm: the squares that count half millimetres, and the material between two, which is sound in all sheets. */
const [MARK, MARKS_APART] = [1.5, 3.2];

/** mm of the sheet as cut. */
const STRIP_SIZE = { width: (COUNT + 1) * PITCH, height: HEIGHT };

/** All widths, mm, from left to right. */
export const STRIP_WIDTHS: readonly number[] = Array.from({ length: COUNT }, (_column, i) => rounded(FIRST + i * STEP));

/** The strip as an SVG stencil at true size; what is too fine in it is accepted by attributes. */
export function testStrip(): string {
  const { width, height } = STRIP_SIZE;
  const columns = STRIP_WIDTHS.map((wide, i) => ({ wide, x: (i + 1) * PITCH }));
  const from = `${STRIP_WIDTHS[0]} to ${STRIP_WIDTHS.at(-1)} mm`;
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}">
  <title>Test strip</title>
  <desc>From left to right ${from}, in steps of ${STEP} mm. Upper row: bridges. Lower row: slots. One square marks 0.5 mm, two 1.0 mm, three 1.5 mm.</desc>
  <g id="strip" fill="#222222">
    <g id="bridges" data-tombolo-accept="thin-bridge: to see which of them tear">
${columns.map(({ wide, x }) => `      <path id="bridge-${named(wide)}" d="${ringOf(x, wide)}"/>`).join('\n')}
    </g>
    <g id="slots" data-tombolo-accept="small-opening: to see which of them let paint through">
${columns.map(({ wide, x }) => `      <path id="slot-${named(wide)}" d="${slotOf(x, wide)}"/>`).join('\n')}
    </g>
    <path id="half-millimetres" d="${columns.map(({ wide, x }) => marksOf(x, wide)).join('')}"/>
  </g>
</svg>
`;
}

/** A ring in two halves, that leave two bridges between them. */
function ringOf(x: number, wide: number): string {
  const half = (sign: number): string => {
    const [outer, inner, bridge] = [OUTER, INNER, wide / 2].map((y) => rounded(BRIDGES_AT + sign * y));
    const [left, right, within, beyond] = [x - OUTER, x + OUTER, x + INNER, x - INNER];
    return `M${left} ${outer}H${right}V${bridge}H${within}V${inner}H${beyond}V${bridge}H${left}Z`;
  };
  return half(-1) + half(1);
}

function slotOf(x: number, wide: number): string {
  const [left, right] = [rounded(x - wide / 2), rounded(x + wide / 2)];
  return `M${left} ${SLOTS_AT - SLOT_LENGTH / 2}H${right}V${SLOTS_AT + SLOT_LENGTH / 2}H${left}Z`;
}

/** As many squares as the width has half millimetres, where it is a multiple of them. */
function marksOf(x: number, wide: number): string {
  const halves = rounded(wide / 0.5);
  if (!Number.isInteger(halves)) return '';
  const square = (i: number): string => {
    const left = rounded(x + (i - (halves - 1) / 2) * (MARK + MARKS_APART) - MARK / 2);
    return `M${left} ${MARKS_AT}h${MARK}v${MARK}h${-MARK}Z`;
  };
  return Array.from({ length: halves }, (_square, i) => square(i)).join('');
}

const named = (wide: number): string => wide.toFixed(1);

function rounded(value: number): number {
  return Math.round(value * 1000) / 1000;
}
