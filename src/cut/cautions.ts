/** What is said before anything is cut, each time: it is the last word before the machine. */
import { type Config, DEFAULT_CONFIG } from '../config/types';
import type { Report } from '../report/report';
import { oneLine } from '../text/plain-text';

/** One sentence or two each: what the checks say of the material, then of the tool. */
export function cuttingCautions({ complete, settings }: Report): string[] {
  const material = complete.filter(({ check }) => check === 'unsafe-material').map(({ message }) => oneLine(message));
  return [...material, toolCaution(settings.config ?? DEFAULT_CONFIG)];
}

function toolCaution({ tool }: Config): string {
  return tool === 'knife'
    ? "Try the depth on a scrap first; the machine's manual goes before anything said here."
    : "Never leave a laser running unattended; the machine's manual, your workshop's rules and local codes come first.";
}
