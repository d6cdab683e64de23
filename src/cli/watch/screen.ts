/** Where reports are shown: on a terminal each in the place of the last, elsewhere one after the other between two lines. */
import type { Host } from '../host';

/** ECMA-48: cursor to the upper left corner, then the screen and what is above it erased (the latter is xterm's). */
const ERASED = '\u001b[H\u001b[2J\u001b[3J';

export interface Screen {
  /** @param text of the whole report */
  report(text: string): void;
  /** A line beneath the last report, which stays. */
  remark(line: string): void;
}

/** For what reads along: reports one after the other. */
export function linesFor(host: Host): Screen {
  return {
    report: (text) => host.print(`tombolo: check begins\n${text}tombolo: check ended\n`),
    remark: (line) => host.say(line),
  };
}

export function screenFor(host: Host): Screen {
  if (!host.isTerminal) return linesFor(host);
  return {
    report: (text) => host.print(`${ERASED}${text}\nWatching; Ctrl+C ends.\n`),
    remark: (line) => host.say(line),
  };
}
