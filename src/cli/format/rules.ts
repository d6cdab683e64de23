/** The checks in a phrase each, for formats that list them. */
import { ALL_METAS } from '../../engine/check/known-checks';
import { CONFIG_CHECK } from '../checked-file';

export interface Rule {
  readonly id: string;
  readonly summary: string;
}

export const RULES: readonly Rule[] = [
  ...ALL_METAS.map(({ id, summary }) => ({ id, summary })),
  { id: CONFIG_CHECK, summary: 'Something in tombolo.json that is not understood.' },
];
