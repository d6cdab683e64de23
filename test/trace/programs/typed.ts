import { writeFileSync } from 'node:fs';
interface Spot { x: number; y: number }
const spots: Spot[] = [{ x: 1, y: 2 }, { x: 30, y: 40 }];

enum Kind { Dot = 'dot' }
const draw = ({ x, y }: Spot): string => `<circle class="${Kind.Dot}" cx="${x}" cy="${y}" r="3"/>`;
const label: string = '🦦 post'; const post = (n: number): string => `
  <g id="post${n}"><title>${label} 🌾</title>
	<path id="cap${n}" d="M${n} 10h3z"/></g>`;
writeFileSync('out.svg', `<svg xmlns="http://www.w3.org/2000/svg">${spots.map(draw).join('')}${[1, 2].map(post).join('')}</svg>`);
