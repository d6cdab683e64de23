/** Files with plans of bridges: what `tombolo bridge --plan` gives and `--with` takes. */
import type { KeptBridge } from '../engine/index';
import { keptBridges } from '../format/bridge-plan';
import { Failure } from './failure';
import { readPlainFile } from './files/read-input';

/** @throws Failure when the file is not there or is no plan whose islands have names */
export async function readPlan(path: string): Promise<KeptBridge[]> {
  const { text } = await readPlainFile(path);
  const bridges = keptBridges(parsed(path, text));
  if (!bridges) throw noPlan(path);
  return bridges;
}

function parsed(path: string, text: string): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    throw noPlan(path, error);
  }
}

function noPlan(path: string, cause?: unknown): Failure {
  return new Failure(`${path}: is no plan of bridges; tombolo bridge --plan gives one`, { cause });
}
