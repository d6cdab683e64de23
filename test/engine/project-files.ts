/** Small projects for tests: one unit is a millimetre. */
import { checkProject } from '../../src/engine/check/check-project';
import { readConfig } from '../../src/engine/check/known-checks';
import type { Fix } from '../../src/report/fix';
import type { ProjectReport } from '../../src/report/report';
import { applyEdits } from '../../src/text/text';

/** A sheet of 60 × 60 mm. */
export const sheet = (body: string, attributes = 'width="60mm" height="60mm"'): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" ${attributes} viewBox="0 0 60 60">${body}</svg>`;

export const square = (x: number, y: number, side: number): string =>
  `<rect x="${x}" y="${y}" width="${side}" height="${side}"/>`;

/** A square opening whose middle falls out. */
export const ring = (x: number, y: number): string =>
  `<path fill-rule="evenodd" d="M${x} ${y}h12v12h-12z m3 3h6v6h-6z"/>`;

/** Checks files under the `layers` given, with other keys of the configuration beside them. */
export function project(
  files: Readonly<Record<string, string>>,
  layers: readonly object[],
  earlier?: ProjectReport,
  more: object = {},
): ProjectReport {
  const { config } = readConfig(JSON.stringify({ ...more, layers }));
  return checkProject(new Map(Object.entries(files)), { config }, earlier);
}

/** `file: check` for each finding. */
export function foundIn({ files }: ProjectReport): string[] {
  return [...files].flatMap(([file, { findings }]) => findings.map(({ check }) => `${file}: ${check}`));
}

/** The files with a mend of one of them applied. */
export function fixed(
  files: Readonly<Record<string, string>>,
  own: string,
  { edits, others = [] }: Fix,
): Record<string, string> {
  const all = [{ file: own, edits }, ...others];
  return {
    ...files,
    ...Object.fromEntries(all.map(({ file, edits: each }) => [file, applyEdits(files[file] ?? '', each)])),
  };
}
