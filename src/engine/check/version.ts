/** What stands for all that a report was made of, so that two reports of the same are known to be the same. */
import type { Settings } from '../../report/report';
import { hashOfText } from '../../text/hash';
import { effectiveConfig } from './effective-config';

/**
 * Of one file under its settings. Configurations are plain data, always with the same keys in the same order.
 * @param hash of the text
 */
export function versionOf(hash: string, settings: Settings): string {
  const { oneLayer = false, file = '' } = settings;
  return `${hash}-${hashOfText(JSON.stringify([effectiveConfig(settings), oneLayer, file]))}`;
}

/** @param versions of all files of the stack by name */
export function versionOfStack(versions: ReadonlyMap<string, string>): string {
  return hashOfText(JSON.stringify([...versions]));
}
