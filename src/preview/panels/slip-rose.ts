/** How much ground comes bare by the side to which a sheet slips: the farther out, the more. */
import { setAttributes, svg } from '../dom/dom';

const RADIUS = 20;

export function makeRose(): SVGSVGElement {
  return svg('svg', { class: 'rose', width: 44, height: 44, viewBox: '-22 -22 44 44', 'aria-hidden': 'true' }, [
    svg('circle', { class: 'rose-ring', r: RADIUS }),
    svg('path', { class: 'rose-ring', d: 'M-20 0H20M0-20V20' }),
    svg('path', { class: 'petals' }),
  ]);
}

/** @param areas evenly round, the first to the right, then on clockwise */
export function drawRose(rose: SVGSVGElement, areas: readonly number[], paint: string): void {
  const most = Math.max(...areas, Number.MIN_VALUE);
  const points = areas.map((area, index) => {
    const angle = (index / areas.length) * 2 * Math.PI;
    // Areas are told by area: twice as far out would look four times as much.
    const reach = RADIUS * Math.sqrt(area / most);
    return `${(reach * Math.cos(angle)).toFixed(2)} ${(reach * Math.sin(angle)).toFixed(2)}`;
  });
  const petals = rose.lastElementChild;
  if (petals) setAttributes(petals, { d: `M${points.join('L')}Z`, fill: paint });
}
