/** All fixes of a document that change nothing that is cut or painted, when they are asked for. */
import type { SafeFixes } from '../../protocol/index';
import { Priority } from '../../protocol/run-signals';
import type { ResolveSources } from './resolve-action';

const NONE = 'No fix here is safe to apply unseen: each changes what is cut or painted.';
const COVERED = 'Islands that later layers paint over can be cut away by the lightbulb at them.';

/** Milliseconds: the worker tells its offers soon after a check. */
const PATIENCE = 2000;

/** @returns null where no such document is known */
export async function safeFixes(uri: string, { engine, current }: ResolveSources): Promise<SafeFixes | null> {
  const known = await current(uri);
  if (!known) return null;
  if (known.facts.findings.length === 0) return { refusal: 'Nothing was found here that needs a fix.' };
  const { version } = known;
  const proof = await engine.ask({ kind: 'proveSafe', uri, version }, Priority.chosen).answer;
  if (proof?.outcome === 'proven' && proof.edits) return { documents: proof.edits };
  if (proof?.outcome === 'refused') return { refusal: proof.reason };
  await known.until(() => known.offersTold, PATIENCE);
  const isCovered = known.allOffers.some(({ kind }) => kind === 'cut-covered-island');
  return { refusal: isCovered ? `${NONE} ${COVERED}` : NONE };
}
