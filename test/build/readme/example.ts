/** The files that the README's command lines name, in a folder of their own. */
import { copyFileSync, cpSync, mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { encode } from 'fast-png';
import { stencil } from '../../cli/stencils';
import { ROOT } from './readme';

/** A counter of 24 × 8 mm on two bridges of 2 mm; one of them is at 31, 18.5 mm. */
const POST = stencil('  <path fill="#222222" d="M10 15H30V22H18V30H30V37H10Z M50 15H32V22H42V30H32V37H50Z"/>');

/** Another that no bridge holds yet. */
const ISLAND = stencil('  <path fill="#222222" fill-rule="evenodd" d="M5 5H55V35H5Z M15 12V28H45V12Z"/>');

/** A sheet as black and white pixels: black stays, the sun or a row of reeds is open. */
function mask(open: (x: number, y: number) => boolean): Uint8Array {
  const side = 120;
  const data = Uint8Array.from({ length: side * side }, (_none, at) =>
    open(at % side, Math.floor(at / side)) ? 255 : 0,
  );
  return encode({ width: side, height: side, data, channels: 1, depth: 8 });
}

const MASKS = {
  'sun.png': mask((x, y) => Math.hypot(x - 60, y - 40) < 25),
  'reeds.png': mask((x, y) => y > 60 && y < 110 && x > 10 && x < 110 && x % 30 < 15),
};

/** @param line the command: some need the drawing with the bridge, some one with an island */
export function makeExample(folder: string, line: string): void {
  const from = (name: string) => path.join(ROOT, name);
  const into = (name: string) => path.join(folder, name);
  mkdirSync(folder, { recursive: true });
  // What `separate` makes begins its own folder.
  if (!line.startsWith('tombolo separate')) cpSync(from('media/demo/trail'), into('trail'), { recursive: true });
  for (const name of ['heron.svg', 'sun.svg', 'reeds.svg']) copyFileSync(from(`media/demo/trail/${name}`), into(name));
  for (const name of ['posts.mjs', 'posts.py']) copyFileSync(from(`media/demo/posts/${name}`), into(name));
  copyFileSync(from('test/editor/picture/marsh.jpg'), into('marsh.jpg'));
  for (const [name, bytes] of Object.entries(MASKS)) writeFileSync(into(name), bytes);
  writeFileSync(into('post.svg'), line.includes('--at') ? POST : ISLAND);
  writeFileSync(into('dots.svg'), ISLAND);
  if (line.includes('--write-baseline')) writeFileSync(into('tombolo.json'), '{ "material": "card-0.3" }\n');
}
