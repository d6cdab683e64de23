/** What cannot be put into the text is never offered, whatever was proven of it. */
import { afterEach, beforeEach, expect, it as test, vi } from 'vitest';
import type { FixKind, ProvenChange } from '../../../src/engine/fixes/kind';
import { FIX_KINDS } from '../../../src/engine/fixes/kinds';
import { check, fixesFor } from '../../../src/engine/index';
import type { Result } from '../../../src/report/refusal';

const RING =
  '<svg xmlns="http://www.w3.org/2000/svg" width="80mm" height="80mm" viewBox="0 0 80 80">' +
  '<path fill-rule="evenodd" d="M10 10H70V70H10ZM25 25V55H55V25Z"/></svg>';

const edit = (from: number, to: number) => ({ span: { from, to }, text: '' });
const OVERLAPPING: ProvenChange = { edits: [edit(10, 20), edit(15, 25)], brings: [] };
const OUTSIDE: ProvenChange = { edits: [edit(RING.length - 1, RING.length + 1)], brings: [] };
const OF_NO_FILE: ProvenChange = { edits: [], others: [{ file: 'gone.svg', edits: [edit(0, 1)] }], brings: [] };

beforeEach(() => {
  globalThis.tomboloAssertions = false;
});
afterEach(() => {
  vi.restoreAllMocks();
  globalThis.tomboloAssertions = true;
});

/** What becomes of a change that one kind of fix calls proven. */
function offered(change: Result<ProvenChange>) {
  vi.spyOn(FIX_KINDS.get('cut-island-away') as FixKind, 'prove').mockReturnValue(change);
  const report = check(RING);
  const { fixes, refusals } = fixesFor(report, report.findings.find(({ check: id }) => id === 'floating-island')!);
  const isIts = ({ kind }: { readonly kind: string }) => kind === 'cut-island-away';
  return { fix: fixes.find(isIts), refusal: refusals.find(isIts) };
}

test.each([
  ['overlap', OVERLAPPING],
  ['lie outside the text', OUTSIDE],
  ['are of a file that is not there', OF_NO_FILE],
])('a fix whose edits %s is refused as a fault of ours', (_, change) => {
  const { fix, refusal } = offered(change);
  expect(fix).toBeUndefined();
  expect(refusal?.reason).toMatch(/^Tombolo itself failed here; please report it: Edit /);
});

test('what may be had anyway goes without, and the reason stays', () => {
  const { refusal } = offered({ reason: 'It would tear.', anyway: OVERLAPPING });
  expect(refusal?.reason).toBe('It would tear.');
  expect(refusal).not.toHaveProperty('anyway');
});
