import { readFileSync } from 'node:fs';

/**
 * MB: the most memory that this process held. Linux tells it in /proc; what `resourceUsage` tells there is at least
 * what the parent held when it started this process.
 */
export function peakMegabytes(): number {
  try {
    const [, kilobytes] = /^VmHWM:\s*(\d+) kB$/m.exec(readFileSync('/proc/self/status', 'utf8')) ?? [];
    if (kilobytes) return Number(kilobytes) / 1024;
  } catch {
    // No such file on other systems.
  }
  return process.resourceUsage().maxRSS / 1024;
}
