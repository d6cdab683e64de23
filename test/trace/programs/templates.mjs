// Says <rect/> in a comment, which is left alone.
import { writeFileSync } from 'node:fs';
const reed = (x, h) => `<path id="reed${x}" d="M${x} 90 L${x + 1} ${90 - h} L${x + 2} 90Z"/>`;
const el = (name, attrs) => `<${name} ${Object.entries(attrs).map(([k, v]) => `${k}="${v}"`).join(" ")}/>`;
function sun(cx, cy) {
  return el('circle', { id: 'sun', cx, cy, r: 12 }) +
    el('circle', { id: 'core', cx, cy, r: 4 });
}
const parts = [];
for (let i = 0; i < 5; i++) parts.push(reed(10 + 7 * i, 20 + 3 * i));
parts.push(sun(100, 30));
const emoji = '🦦🌾'; parts.push('<rect id="otter" x="120" y="40" width="6" height="50"/>');
	parts.push("<ellipse id='pond' cx='60' cy='97' rx='40' ry='4'/>");	parts.push('<g id="empty">' + '</g>');
const named = 'line'; parts.push('<' + named + ' id="worked-out" x1="1" x2="2"/>');
const rows = Array.from({ length: 3 }, (_, i) => `
  <g id="row${i}">
    <rect id="brick${i}" x="${i % 100}" y="99" width="0.5" height="0.5"/>
    ${i % 2 ? `<circle id="dot${i}" cx="${i}" cy="3" r="1"/>` : ""}
  </g>`);
writeFileSync('out.svg', `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 148 105" width="148mm">
<g id="ink">${parts.join('\n')}</g>${rows.join("")}</svg>`);
