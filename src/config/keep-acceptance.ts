/** Writes into `tombolo.json` that findings are accepted in parts of the project. */
import { findNodeAtLocation, getNodeValue, parseTree } from 'jsonc-parser';
import type { TextEdit } from '../text/text';
import { configEdits } from './edit-config';
import type { PartAcceptance } from './types';

/** Where, and why. */
export type AcceptedPart = Omit<PartAcceptance, 'check'>;

/**
 * @param text of `tombolo.json`
 * @returns edits of the text; none where it accepts the check everywhere already
 */
export function acceptanceEdits(text: string, check: string, parts: readonly AcceptedPart[]): TextEdit[] {
  const root = parseTree(text);
  const node = root && findNodeAtLocation(root, ['accept', check]);
  const before: unknown = node && getNodeValue(node);
  if (typeof before === 'string') return [];
  const all = [...(Array.isArray(before) ? (before as unknown[]) : before === undefined ? [] : [before]), ...parts];
  return configEdits(text, ['accept', check], all.length === 1 ? all[0] : all);
}
