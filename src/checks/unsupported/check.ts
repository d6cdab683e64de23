import { LAYERINGS } from '../../config/types';
import { allElements, attributeOf } from '../../markup/query';
import type { ElementNode } from '../../markup/tree';
import { LAYERING_ATTRIBUTE } from '../../sheet/layer/layering';
import { statedName } from '../../sheet/layer/layers';
import { READING_ATTRIBUTE, READING_WORDS } from '../../sheet/layer/reading';
import { nearestWord } from '../../text/nearest-word';
import { NAME_ROOM, quoted, type Wording } from '../../text/wording';
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
    yield* hiddenGroups(stencil);
    yield* unknownReadings(stencil);
  },
};

/** So many groups are named in a message. */
const NAMED = 2;

/** What the artist does not see is not cut: said once, so that nobody misses it. */
function* hiddenGroups({ drawing: { hidden } }: Stencil): Iterable<FindingDraft> {
  const [first, ...others] = hidden;
  if (!first) return;
  const names = quoted(
    hidden.slice(0, NAMED).map((group) => statedName(group) ?? group.name),
    NAMED * NAME_ROOM,
  );
  const more = hidden.length > NAMED ? ` and ${hidden.length - NAMED} more` : '';
  yield {
    message: `Hidden, so not cut: ${names.join(', ')}${more}.`,
    detail: 'What is hidden is not in any sheet. Show it, or take it out.',
    span: first.nameSpan,
    related: others.map(({ nameSpan }) => ({ message: 'Hidden as well', span: nameSpan })),
  };
}

/** A slip of the pen there would turn the stencil inside out, or paint it in one colour, without a word. */
function* unknownReadings({ drawing }: Stencil): Iterable<FindingDraft> {
  for (const element of allElements(drawing.document)) {
    yield* unknownWord(element, READING_ATTRIBUTE, 'reading', READING_WORDS);
    yield* unknownWord(element, LAYERING_ATTRIBUTE, 'way of taking layers', LAYERINGS);
  }
}

function* unknownWord(
  element: ElementNode,
  name: string,
  what: string,
  words: readonly string[],
): Iterable<FindingDraft> {
  const stated = attributeOf(element, name);
  if (!stated || words.includes(stated.value.trim())) return;
  yield { severity: 'warning', ...wordingOf(stated.value, what, words), span: stated.span, related: [] };
}

function wordingOf(written: string, what: string, words: readonly string[]): Wording {
  const near = nearestWord(written.trim(), words);
  return {
    message: `Unknown ${what} ${quoted([written])[0]}.${near === undefined ? '' : ` Did you mean "${near}"?`}`,
    detail: `The ${what} is found out from the artwork instead. Write one of: ${words.join(', ')}.`,
  };
}
