import { formatMillimetres } from '../../config/values';
import { distance } from '../../geometry/base/vector';
import type { CutLine } from '../../sheet/cut-lines/index';
import { type OpenPath, openPathsOf } from '../../sheet/cut-lines/open-ends';
import type { Sheet } from '../../sheet/types';
import type { Span } from '../../text/text';
import type { Wording } from '../../text/wording';
import type { Check } from '../check';
import type { FindingDraft } from '../finding';
import { inLayer } from '../places';

/** Cut lines that do not close, where only cut lines are drawn. */
export const openOutline: Check = {
  meta: {
    id: 'open-outline',
    summary: 'An outline that does not close.',
    outcome: 'leave an outline that does not close',
    severity: 'error',
    reads: 'file',
    fixes: ['close-outline', 'join-lines', 'remove-open-line'],
    acceptable: true,
    afterFix: { refuses: true, never: true },
    row: { wrong: 'a cut line does not close, the piece stays in', click: 'close it; remove it' },
  },
  *run(stencil) {
    for (const sheet of stencil.sheets) {
      if (sheet.layer.reading !== 'outlines') continue;
      for (const chain of openPathsOf(sheet.layer)) yield describe(sheet, chain);
    }
  },
};

function describe(sheet: Sheet, { lines, ends }: OpenPath): FindingDraft {
  const [first, ...others] = lines as readonly [CutLine, ...CutLine[]];
  const gap = ends ? distance(ends[0], ends[1]) : 0;
  return {
    ...wordingOf(lines.length, gap, ends !== undefined),
    span: spanOf(first),
    ...inLayer(sheet),
    at: ends ? ends[1] : (first.curves[0]?.start ?? { x: 0, y: 0 }),
    measure: { value: gap, limit: 0, unit: 'mm' },
    related: others.map((line) => ({
      message: 'The line that continues it',
      span: spanOf(line),
      at: line.curves[0]?.start ?? { x: 0, y: 0 },
    })),
    subject: { kind: 'open', sheet, lines },
  };
}

function wordingOf(lines: number, gap: number, open: boolean): Wording {
  if (!open) {
    return {
      message: `${lines} lines meet end to end but are not joined: the area inside is not cut out.`,
      detail:
        'Each of them is a line of its own, so what they enclose is not known as an opening, and nothing of it is ' +
        'measured. Join them into one path.',
    };
  }
  const what = lines === 1 ? 'Outline not closed' : `${lines} lines meet but do not close`;
  return {
    message: `${what}: ends ${formatMillimetres(gap)} apart, so nothing is cut out.`,
    detail: `Nothing falls out, and no paint gets through. ${lines === 1 ? 'Close it' : 'Join and close them'}, or remove ${lines === 1 ? 'it' : 'them'}.`,
  };
}

function spanOf({ spans, shape }: CutLine): Span {
  const [first, last] = [spans[0], spans.at(-1)];
  return first && last ? { from: first.from, to: last.to } : shape.element.nameSpan;
}
