/** The checks in a phrase each, for formats that list them. */

import { UNREADABLE_CONFIG } from '../../config/read';
import { ALL_METAS } from '../../engine/check/known-checks';

export interface Rule {
  readonly id: string;
  readonly summary: string;
}

export const RULES: readonly Rule[] = [
  ...ALL_METAS.map(({ id, summary }) => ({ id, summary })),
  { id: UNREADABLE_CONFIG, summary: 'Something in tombolo.json that is not understood.' },
];
