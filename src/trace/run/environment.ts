/** The environment in which a program runs so that it is traced: what it has, and our preloads before its own. */
import path from 'node:path';
import { SETTINGS_VARIABLE, type TraceSettings } from '../settings';

type Environment = Readonly<Record<string, string | undefined>>;

/** @param preloads the folder that the build puts them into */
export function tracedEnvironment(environment: Environment, settings: TraceSettings, preloads: string): Environment {
  const { NODE_OPTIONS, PYTHONPATH } = environment;
  const python = path.join(preloads, 'python');
  return {
    ...environment,
    [SETTINGS_VARIABLE]: JSON.stringify(settings),
    NODE_OPTIONS: [`--require ${optionWord(path.join(preloads, 'preload.cjs'))}`, NODE_OPTIONS]
      .filter(Boolean)
      .join(' '),
    PYTHONPATH: [python, PYTHONPATH].filter(Boolean).join(path.delimiter),
  };
}

/** In quotes, as blanks part the words of NODE_OPTIONS. */
function optionWord(word: string): string {
  return `"${word.replace(/[\\"]/g, '\\$&')}"`;
}
