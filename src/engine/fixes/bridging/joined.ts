/** Sets of bridges that were proven one on top of the other, as one. */
import { composeEdits } from '../../../edits/path/text-edits';
import { mapResult, type Refusal } from '../../../report/refusal';
import type { ProvenCut, VerifiedBridges } from './cut';

/** Two sets as one, the second put into the text that the first makes of `text`. */
export function oneAfterTheOther(first: ProvenCut, second: ProvenCut, text: string): ProvenCut {
  return { ...joined(first, second, text), after: second.after };
}

function joined(first: VerifiedBridges, second: VerifiedBridges, text: string): VerifiedBridges {
  return {
    edits: composeEdits(text, first.edits, second.edits),
    bridges: [...first.bridges, ...second.bridges],
    brings: [...first.brings, ...second.brings],
  };
}

/** A refusal of further bridges: what may be had anyway has those in it that are proven already, and is a change of `text`. */
export function onTop(
  proven: ProvenCut | undefined,
  why: Refusal<VerifiedBridges>,
  text: string,
): Refusal<VerifiedBridges> {
  return proven ? (mapResult(why, (more) => joined(proven, more, text)) as Refusal<VerifiedBridges>) : why;
}
