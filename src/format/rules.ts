/** The checks in a phrase each, for formats that list them. */

import { homepage } from '../../package.json';
import { UNREADABLE_CONFIG } from '../config/check-id';
import { ALL_METAS } from '../engine/metas';
import { checkAddress } from '../report/check-address';

export interface Rule {
  readonly id: string;
  readonly summary: string;
  /** What goes wrong in card and paint; the summary where nothing more is to be said. */
  readonly why: string;
  /** What can be done about it, in a sentence. */
  readonly help: string;
  /** Its page, where the project has an address. */
  readonly page?: string;
}

const BY_HAND = 'Read what the finding says, and redraw that place.';

export const RULES: readonly Rule[] = [
  ...ALL_METAS.map(({ id, summary, row }) => ({
    id,
    summary,
    why: row ? sentence(row.wrong) : summary,
    help: row && row.click !== '' ? `In the editor, one click does this: ${sentence(row.click)}` : BY_HAND,
    ...pageOf(id),
  })),
  {
    id: UNREADABLE_CONFIG,
    summary: 'Something in tombolo.json that is not understood.',
    why: 'Something in tombolo.json that is not understood, and has no effect.',
    help: 'Correct the place in tombolo.json that is named.',
    ...pageOf(UNREADABLE_CONFIG),
  },
];

function pageOf(id: string): Pick<Rule, 'page'> {
  const page = checkAddress(homepage, id);
  return page === undefined ? {} : { page };
}

/** Cells of the table are Markdown, and may begin and end as a part of a sentence. */
function sentence(cell: string): string {
  const words = cell.replace(/`/g, '').trim();
  const plain = `${words.slice(0, 1).toUpperCase()}${words.slice(1)}`;
  return /[.!?]$/.test(plain) ? plain : `${plain}.`;
}
