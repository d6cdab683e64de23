import { allElements, attributeOf } from '../../markup/query';
import { READING_ATTRIBUTE, READING_WORDS } from '../../sheet/layer/reading';
import { nearestWord } from '../../text/nearest-word';
import { quoted, type Wording } from '../../text/wording';
import type { Check, Stencil } from '../check';
import type { FindingDraft } from '../finding';
import { problemsOf } from '../problems';

/** What is valid SVG but is not read yet; the measures leave it out, and say so. */
export const unsupported: Check = {
  meta: {
    id: 'unsupported',
    summary: 'Something in the file that is not read.',
    outcome: 'leave something that is not read',
    severity: 'info',
    reads: 'file',
    fixes: [],
    acceptable: true,
    afterFix: { refuses: true, never: true },
    row: { wrong: 'something is not read yet, so nothing is known of it', click: '' },
  },
  *run(stencil) {
    yield* problemsOf(stencil, unsupported.meta.id);
    yield* unknownReadings(stencil);
  },
};

/** A slip of the pen there would turn the stencil inside out without a word. */
function* unknownReadings({ drawing }: Stencil): Iterable<FindingDraft> {
  for (const element of allElements(drawing.document)) {
    const stated = attributeOf(element, READING_ATTRIBUTE);
    if (!stated || READING_WORDS.includes(stated.value.trim())) continue;
    yield {
      severity: 'warning',
      ...wordingOf(stated.value),
      span: stated.span,
      related: [],
    };
  }
}

function wordingOf(written: string): Wording {
  const near = nearestWord(written.trim(), READING_WORDS);
  return {
    message: `Unknown reading ${quoted([written])[0]}.${near === undefined ? '' : ` Did you mean "${near}"?`}`,
    detail: `The reading is found out from the artwork instead. Write one of: ${READING_WORDS.join(', ')}.`,
  };
}
