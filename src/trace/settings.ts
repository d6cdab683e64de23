/** What a traced program's preloads are told, by one variable of its environment. */

export const SETTINGS_VARIABLE = 'TOMBOLO_TRACE';

export interface TraceSettings {
  /** The attribute that marks bear in this run and in no other: what a user wrote is never taken for one. */
  readonly attribute: string;
  /** The folder that places are relative to, links followed. */
  readonly root: string;
  /** A folder of this run, outside of the project. */
  readonly folder: string;
}

/** The settings of this process, where it is traced. */
export function settingsOfProcess(): TraceSettings | undefined {
  const text = process.env[SETTINGS_VARIABLE];
  return text ? (JSON.parse(text) as TraceSettings) : undefined;
}

/** Where the preloads note files that are written elsewhere than under the root, one path a line. */
export const OUTPUTS_NOTE = 'outputs.txt';
