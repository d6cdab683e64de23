/** What no report may have. */
import type { Report } from '../../src/engine/index';
import { areaOf } from '../../src/geometry/boolean/index';
import type { Fault } from './judge';
import { nonsenseIn } from './nonsense';

export function faultsOfReport({ text, complete, sheets }: Report): Fault[] {
  const faults: Fault[] = [];
  for (const { check: id, message, detail = '', span, related, at, measure } of complete) {
    const words = `${id}: ${message}`;
    for (const { from, to } of [span, ...related.map((each) => each.span)]) {
      if (!(from >= 0 && from <= to && to <= text.length)) faults.push({ kind: 'span outside', words });
    }
    const numbers = [at?.x ?? 0, at?.y ?? 0, measure?.value ?? 0, measure?.limit ?? 0];
    if (!numbers.every(Number.isFinite)) faults.push({ kind: 'NaN', words });
    if (id === 'internal') faults.push({ kind: 'internal', words: detail });
    const nonsense = nonsenseIn(message);
    if (nonsense) faults.push({ kind: 'nonsense measure', words: `${nonsense} in ${words}` });
  }
  const areas = sheets.flatMap(({ openings, material }) =>
    [...openings, ...material].map((polygon) => areaOf(polygon)),
  );
  if (!areas.every((area) => area >= 0)) faults.push({ kind: 'negative area', words: '' });
  return faults;
}

/** All that is shown of a report. */
export const shown = ({ complete }: Report): string =>
  JSON.stringify(complete.map(({ check: id, severity, span, message, at }) => [id, severity, span, message, at]));

/** What one of two reports on the same text has, and the other has not. */
export function unlike(a: Report, b: Report): string | undefined {
  if (shown(a) === shown(b)) return undefined;
  const of = ({ complete }: Report) => complete.map(({ check: id, span, message }) => `${id} ${span.from} ${message}`);
  const [one, two] = [of(a), of(b)];
  return [...one.filter((line) => !two.includes(line)), '|', ...two.filter((line) => !one.includes(line))].join(' ; ');
}
