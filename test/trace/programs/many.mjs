import { mkdirSync, writeFileSync } from 'node:fs';
const draw = (i) => `<svg><path id="p${i}"/></svg>`;
mkdirSync('posts/old', { recursive: true });
for (let i = 0; i < 50; i++) writeFileSync(`posts/old/${i}.svg`, draw(i));
writeFileSync('wide.svg', Buffer.from('\ufeff' + draw(50), 'utf16le'));
writeFileSync('page.json', JSON.stringify({ svg: draw(51), url: encodeURIComponent(draw(52)) }));
writeFileSync('../elsewhere.svg', draw(53));
