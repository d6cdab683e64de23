/** Fixes as the lightbulb lists them, proven or not. Plain data only. */
import type { TextEdit } from '../text/text';

/** How far a fix reaches. */
export type OfferScope = 'place' | 'layer' | 'file' | 'stack';

/** A fix that may be had: its title is known, whether it can be made need not be. */
export interface Offer {
  /** Stable for a version of what the finding was made from. */
  readonly id: string;
  /** The finding that it is for; empty where it is for none. */
  readonly finding: string;
  readonly kind: string;
  readonly title: string;
  readonly scope: OfferScope;
  /** Where it stands among others: the lower, the sooner. */
  readonly order: number;
  /** What else offers the very same change: offers of one group are listed once. */
  readonly group: string;
  readonly preferred: boolean;
  /** Left out where the list would become long: the higher, the sooner. */
  readonly spare?: number;
  /** Changes nothing that is cut or painted. */
  readonly safe: boolean;
  /** Only where the caret is in the text of the finding; the bridge goes there. */
  readonly atCaret?: boolean;
}

/** Behind the id of an offer: the same change, where it was refused and is wanted anyway. */
export const ANYWAY = '+anyway';

/** What became of an offer. */
export type Proof = ProvenFix | RefusedFix | NeedlessFix;

export interface ProvenFix {
  readonly id: string;
  readonly outcome: 'proven';
  /** With what was found out: how many bridges, how wide. */
  readonly title: string;
  readonly preferred: boolean;
  /** Only had by who asks for it in spite of what it leaves behind. */
  readonly forced?: true;
  /** The document of the finding first. Left out where they are long: then they are asked for. */
  readonly edits?: readonly DocumentEdits[];
}

export interface RefusedFix {
  readonly id: string;
  readonly outcome: 'refused';
  /** One short sentence. */
  readonly reason: string;
  /** What to do first, as a sentence. */
  readonly first?: string;
  /** The very change, which leaves new faults behind: for who wants it all the same. */
  readonly anyway?: ProvenFix;
}

/** Another offer already does the same. */
export interface NeedlessFix {
  readonly id: string;
  readonly outcome: 'needless';
}

/** The edits of one document, for the version that they were proven on. */
export interface DocumentEdits {
  readonly uri: string;
  readonly version: number;
  /** Whether it was open in the editor: others have no version there. */
  readonly open: boolean;
  readonly edits: readonly TextEdit[];
}

/** What is offered for the findings of a document, and what is known of it so far. */
export interface OfferFacts {
  readonly uri: string;
  readonly version: number;
  readonly offers: readonly Offer[];
  readonly proofs: readonly Proof[];
}
