import { formatMillimetres } from '../../config/values';
import { distance } from '../../geometry/base/vector';
import type { CutLine } from '../../sheet/cut-lines/index';
import { type OpenPath, openPathsOf } from '../../sheet/cut-lines/open-ends';
import type { Sheet } from '../../sheet/types';
import type { Span } from '../../text/text';
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
    fixes: ['close-outline'],
    acceptable: true,
    afterFix: { refuses: true, never: true },
    row: { wrong: 'a cut line does not close, the piece stays in', click: 'close it' },
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
    message: message(lines.length, gap, ends !== undefined),
    span: spanOf(first),
    ...inLayer(sheet),
    at: ends ? ends[1] : (first.curves[0]?.start ?? { x: 0, y: 0 }),
    measure: { value: gap, limit: 0, unit: 'mm' },
    related: others.map((line) => ({
      message: 'A line that goes on from there',
      span: spanOf(line),
      at: line.curves[0]?.start ?? { x: 0, y: 0 },
    })),
    subject: { kind: 'open', sheet, lines },
  };
}

function message(lines: number, gap: number, open: boolean): string {
  if (!open) {
    return (
      `These ${lines} lines meet end to end, but each is a line of its own: what they enclose is not known as ` +
      'an opening, and nothing of it is measured. Join them to one path.'
    );
  }
  const what = lines === 1 ? 'This outline does' : `These ${lines} lines, which meet end to end, do`;
  return (
    `${what} not close: the ends are ${formatMillimetres(gap)} apart, so that nothing falls out and no paint ` +
    `passes. ${lines === 1 ? 'Close it' : 'Join and close them'}, or take the line out.`
  );
}

function spanOf({ spans, shape }: CutLine): Span {
  const [first, last] = [spans[0], spans.at(-1)];
  return first && last ? { from: first.from, to: last.to } : shape.element.nameSpan;
}
