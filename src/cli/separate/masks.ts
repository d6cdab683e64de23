/** Masks of files: a black and white picture for each sheet. */
import { basename, extname } from 'node:path';
import { type Dials, layersFromMasks, type Mask, NothingToSeparate, type Separation } from '../../separate/index';
import { Failure } from '../failure';
import { readPicture } from './read-picture';

/**
 * @param dials its paints are those of the sheets, in order; sheets beyond them are grey, each darker than the last
 * @throws Failure of one line that names the file where one cannot be read as a sheet
 */
export async function readMasks(files: readonly string[], dials: Dials): Promise<Separation> {
  const masks: Mask[] = [];
  for (const [place, file] of files.entries()) {
    const name = basename(file, extname(file));
    masks.push({ name, paint: dials.paints[place] ?? greyOf(place, files.length), picture: await readPicture(file) });
    // Each by itself, so that what is wrong is said of its own file.
    withName(file, () => layersFromMasks([...masks.slice(0, 1), ...masks.slice(-1)], dials.width, dials.follow));
  }
  return layersFromMasks(masks, dials.width, dials.follow);
}

/** @throws Failure with the file's name where the work says that there is nothing to separate */
export function withName<T>(file: string, work: () => T): T {
  try {
    return work();
  } catch (error) {
    if (error instanceof NothingToSeparate) throw new Failure(`${file}: ${error.message}`, { cause: error });
    throw error;
  }
}

function greyOf(place: number, count: number): string {
  const value = Math.round(200 - (170 * place) / Math.max(1, count - 1));
  return `#${value.toString(16).padStart(2, '0').repeat(3)}`;
}
