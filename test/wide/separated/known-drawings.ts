/** Drawings whose shapes are known: own ones, and two of @twemoji/svg (CC-BY 4.0). */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';

const emoji = (code: string): string =>
  readFileSync(createRequire(import.meta.url).resolve(`@twemoji/svg/${code}.svg`), 'utf8');

const MARSH = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 1000 1000"><rect width="1000" height="1000" fill="#f2e6c8"/>
<circle cx="640" cy="330" r="190" fill="#e0902c"/>
<path d="M0 640C200 560 380 700 560 640S850 560 1000 650V1000H0Z" fill="#5f93a8"/>
<path d="M0 800L180 700L330 790L470 690L640 800L800 720L1000 820V1000H0Z" fill="#2f5d4a"/>
<path d="M150 860C160 600 140 400 210 180L224 184C176 420 190 610 182 860Z" fill="#2f5d4a"/>
<path d="M560 560C470 520 420 430 470 330C480 290 520 250 580 262L660 300L588 300C560 330 640 400 660 470C700 560 640 600 560 560Z" fill="#28323a"/>
<circle cx="575" cy="283" r="9" fill="#f2e6c8"/><circle cx="800" cy="900" r="40" fill="#f2e6c8"/></svg>`;

const SIGNS = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 1000 1000"><rect width="1000" height="1000" fill="#ffffff"/>
<g fill="#111111" fill-rule="evenodd"><path d="M100 450L260 80L420 450H340L310 370H210L180 450ZM238 300H283L260 240Z"/>
<path d="M520 80H700A100 100 0 0 1 740 260A110 110 0 0 1 710 450H520ZM600 150V230H680A40 40 0 0 0 680 150ZM600 300V380H690A40 40 0 0 0 690 300Z"/>
<path d="M60 760A200 200 0 1 1 460 760A200 200 0 1 1 60 760ZM120 760A140 140 0 1 0 400 760A140 140 0 1 0 120 760Z"/>
<path d="M560 560H940L900 600L940 640H560L600 600ZM560 730H940V742H560ZM560 770H940V794H560Z"/></g></svg>`;

/**
 * Each with its colours and the corners and curves that it was drawn with, and how near its borders come back through JPEG in coarse
 * steps of colour. The duck's lower edge lies just over another shape's, whose brown shines through; such steps leave too little of
 * that brown, and this edge, a fourteenth of its borders, comes back half a pixel too low.
 */
export const DRAWINGS = [
  { name: 'marsh', svg: MARSH, colours: 5, nodes: 32, coarse: 0.5 },
  { name: 'signs', svg: SIGNS, colours: 2, nodes: 46, coarse: 0.5 },
  { name: 'owl', svg: emoji('1f989'), colours: 8, nodes: 70, coarse: 0.5 },
  { name: 'duck', svg: emoji('1f986'), colours: 8, nodes: 35, coarse: 0.75 },
];
