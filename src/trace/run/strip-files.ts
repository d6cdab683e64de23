/** Gives files that a traced program has written the bytes of a plain run, and keeps what marks said. */
import { createReadStream, createWriteStream } from 'node:fs';
import { readFile, stat, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { pipeline } from 'node:stream/promises';
import type { GeneratorMarks } from '../../report/generator';
import { MARK_PREFIX } from '../marks';
import type { TraceSettings } from '../settings';
import { MarkStripper, stripBytes } from './strip-bytes';

export interface Output {
  readonly file: string;
  /** Undefined where it had none: what wrote it is not known. */
  readonly marks: GeneratorMarks | undefined;
}

/** Bytes: what is larger is stripped as a stream, and nobody checks it. */
const LARGEST_CHECKED = 400_000_000;

/** Marks of this run, and those that a run left which was killed. */
const ANY_MARK = `${MARK_PREFIX}[0-9a-f]{8}`;

/** @returns undefined where there is no such file any more */
export async function stripFile(file: string, settings: TraceSettings): Promise<Output | undefined> {
  const stats = await stat(file).catch(() => undefined);
  if (!stats?.isFile()) return undefined;
  if (stats.size > LARGEST_CHECKED) {
    await stripLarge(file, settings);
    return { file, marks: undefined };
  }
  const bytes = await readFile(file).catch(() => undefined);
  const found = bytes && stripBytes(bytes, ANY_MARK);
  // Written in place: the file stays the one that the program made, with its mode and its links.
  if (found) await writeFile(file, found.bytes);
  return { file, marks: found?.marks };
}

async function stripLarge(file: string, { attribute, folder }: TraceSettings): Promise<void> {
  const stripped = path.join(folder, 'large');
  await pipeline(createReadStream(file), new MarkStripper(attribute), createWriteStream(stripped));
  await pipeline(createReadStream(stripped), createWriteStream(file));
}
