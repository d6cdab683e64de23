// Draws sheets of the demo as their cut files have them, for the README: two of them as SVG in lines that are thick enough to be
// seen; one of them in each format, by programs of others (resvg, poppler, the reader of DXF); and the page for the wall.
import { execFileSync } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { Resvg } from '@resvg/resvg-js';
import { bundle, root } from './bundles.mjs';

const { Helper } = createRequire(import.meta.url)('dxf');

const SHEETS = ['02-reeds.svg', '03-heron.svg'];
const GAP = 8;
/** How thick a hairline is drawn, mm. */
const LINE = 0.4;

const folder = mkdtempSync(path.join(tmpdir(), 'tombolo-cut-picture-'));
const inFolder = (name) => path.join(folder, 'cut', name);
const program = await bundle('cli', { outdir: folder, minify: false });
const run = (...words) =>
  execFileSync(process.execPath, [program, ...words], {
    cwd: root,
    env: { ...process.env, NODE_PATH: path.join(root, 'node_modules') },
  });
const drawn = (svg, width) => new Resvg(svg, { fitTo: { mode: 'width', value: width } }).render().asPng();
const inner = (svg) => svg.replace(/^[\s\S]*?<svg[^>]*>|<\/svg>\s*$/g, '');
const boxOf = (svg) => /viewBox="(.*?)"/.exec(svg)[1].split(' ').map(Number);

run(
  'cut',
  'media/demo/trail',
  '--anyway',
  '--labels',
  '--notches',
  '--as',
  'svg,pdf,dxf',
  '--out',
  path.join(folder, 'cut'),
);

const texts = SHEETS.map((name) => readFileSync(inFolder(name), 'utf8'));
writeFileSync(path.join(root, 'media/cut-files.png'), drawn(sideBySide(texts.map(thick)), 1100));

const heron = readFileSync(inFolder('03-heron.svg'), 'utf8');
const formats = [thick(heron), fromPdf(inFolder('03-heron.pdf')), fromDxf(inFolder('03-heron.dxf'))];
writeFileSync(path.join(root, 'media/cut-formats.png'), drawn(sideBySide(formats, ['SVG', 'PDF', 'DXF']), 1500));

writeFileSync(path.join(root, 'media/job.png'), jobPicture());
rmSync(folder, { recursive: true, force: true });

/** The page of a project that says how it is painted and which piece it keeps, and the drawing of that piece: as poppler draws them. */
function jobPicture() {
  const trail = path.join(folder, 'trail');
  cpSync(path.join(root, 'media/demo/trail'), trail, { recursive: true });
  const settings = JSON.parse(readFileSync(path.join(trail, 'tombolo.json'), 'utf8'));
  const cutter = { ...settings.cutter, speed: '20mm/s', acceleration: '500mm/s²' };
  const paint = { coverage: '1.5m²', wait: '10 min', layers: { Sun: { coats: 2 } } };
  const accept = { 'floating-island': 'laid by hand' };
  writeFileSync(path.join(trail, 'tombolo.json'), JSON.stringify({ ...settings, cutter, paint, accept }));
  run('job', trail, '--out', path.join(folder, 'cut'));
  execFileSync('pdftoppm', ['-png', '-r', '110', inFolder('job.pdf'), path.join(folder, 'page')]);
  const pages = [1, 2].map((page, i) => {
    const data = readFileSync(path.join(folder, `page-${page}.png`)).toString('base64');
    return `<image x="${6 + i * 216}" y="6" width="210" height="297" href="data:image/png;base64,${data}"/><rect x="${6 + i * 216}" y="6" width="210" height="297" fill="none" stroke="#bbb" stroke-width="0.5"/>`;
  });
  return drawn(
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 438 309"><rect width="438" height="309" fill="#fff"/>${pages.join('')}</svg>`,
    1500,
  );
}

/** A sheet as SVG in mm, with hairlines made thick. */
function thick(svg) {
  return { box: boxOf(svg), lines: inner(svg).replaceAll('stroke-width="0.01"', `stroke-width="${LINE}"`) };
}

/** As poppler draws it: points become mm. */
function fromPdf(pdf) {
  const svg = execFileSync('pdftocairo', ['-svg', '-noshrink', '-nocenter', '-origpagesizes', pdf, '-'], {
    encoding: 'utf8',
  });
  const [x, y, width, height] = boxOf(svg);
  const mm = 25.4 / 72;
  const lines = inner(svg).replace(/stroke-width([:=]"?)[\d.]+/g, `stroke-width$1${LINE}`);
  return { box: [x * mm, y * mm, width * mm, height * mm], lines: `<g transform="scale(${mm})">${lines}</g>` };
}

/** As the reader of DXF draws it. */
function fromDxf(file) {
  const svg = new Helper(readFileSync(file, 'utf8')).toSVG();
  return {
    box: boxOf(svg),
    lines: inner(svg)
      .replace(/stroke-width="[^"]*"/g, '')
      .replace(/<g/, `<g stroke-width="${LINE}"`),
  };
}

function sideBySide(sheets, captions = []) {
  const [, , width, height] = sheets[0].box;
  const top = captions.length > 0 ? 14 : GAP;
  const placed = sheets.map(({ box: [x, y], lines }, i) => {
    const left = GAP + i * (width + GAP);
    const caption = captions[i]
      ? `<text x="${left}" y="10" font-family="DejaVu Sans" font-size="7">${captions[i]}</text>`
      : '';
    return `${caption}<g transform="translate(${left - x} ${top - y})">${lines}</g>`;
  });
  const [all, high] = [sheets.length * (width + GAP) + GAP, height + top + GAP];
  return `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" viewBox="0 0 ${all} ${high}"><rect width="${all}" height="${high}" fill="#fff"/>${placed.join('')}</svg>`;
}
