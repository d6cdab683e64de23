/** The `tombolo.json` of separated sheets: made new, or changed where the separation says something. */
import { applyEdits, modify } from 'jsonc-parser';
import type { SeparateSettings } from '../../config/types';

export interface SeparatedProject {
  /** mm */
  readonly width: number;
  readonly ground: string | undefined;
  /** The drawing's file. */
  readonly file: string;
  readonly settings: SeparateSettings;
}

/** Sheets need a rim that holds them, for colours reach up to the frame. */
const MARGIN = '10mm';

/** @param before the text that stands there; empty where none does */
export function projectConfig(before: string, { width, ground, file, settings }: SeparatedProject): string {
  const values: [string[], unknown][] = [
    [['size', 'width'], length(width)],
    // What is undefined goes.
    [['ground'], ground],
    [['layers'], [{ from: file }]],
    [['separate'], plain(settings)],
  ];
  const start = before.trim() === '' ? `${JSON.stringify({ size: {}, margin: MARGIN }, undefined, 2)}\n` : before;
  return values.reduce(
    (text, [path, value]) =>
      applyEdits(text, modify(text, path, value, { formattingOptions: { insertSpaces: true, tabSize: 2 } })),
    start,
  );
}

/** As it is written: lengths with their unit. */
function plain({ detail, follow, leaveOut, ...others }: SeparateSettings): object {
  const { files, ...dials } = others;
  return {
    ...dials,
    ...(detail !== undefined && { detail: length(detail) }),
    ...(follow !== undefined && { follow: length(follow) }),
    ...(leaveOut && { leaveOut: leaveOut.map((each) => (typeof each === 'string' ? each : each.map(length))) }),
    files,
  };
}

function length(mm: number): string {
  return `${Number(mm.toFixed(3))}mm`;
}
