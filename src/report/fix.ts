/** Fixes, from the offer that costs nothing to the change that was proven. Plain data; the engine makes it. */
import type { CheckId } from '../config/check-id';
import type { LayerId } from '../sheet/layer/layer-id';
import type { TextEdit } from '../text/text';
import type { FindingId } from './finding-id';
import type { Refusal } from './refusal';
import type { BridgePreview, CutPreview, FileEdits } from './report';

declare const brand: unique symbol;

/** `finding!kind`: a fix of one kind for one finding. */
export type FixId = string & { readonly [brand]: 'fix' };

export function fixId(finding: FindingId, kind: string): FixId {
  return `${finding}!${kind}` as FixId;
}

/** How much a fix changes: the place of its finding, a layer, a file, or all files of the stack. */
export type FixScope = 'place' | 'layer' | 'file' | 'stack';

/** What is the same of a fix before and after its proof. */
interface FixFacts {
  readonly id: FixId;
  /** Stable name of the kind of fix, for hosts: `bridge-island`, `bridge-layer`, `cut-island-away`, … */
  readonly kind: string;
  /** For the lightbulb: "Bridge this island", and once it is proven "Bridge this island (2 bridges of 0.80 mm)". */
  readonly title: string;
  readonly scope: FixScope;
  /** The layer of its finding, where that lies in one. */
  readonly layerId?: LayerId;
  readonly finding: FindingId;
}

/** A fix that may be tried for a finding; whether it can be made is not known yet. */
export interface FixCandidate extends FixFacts {
  readonly preferred: boolean;
  /** Where the list of fixes would become long, it may be left out: the higher, the sooner. */
  readonly spare?: number;
  /** Safe fixes change nothing that is cut or painted; only those may run on save. */
  readonly safe: boolean;
}

/** Why a candidate is not offered, and what there is instead. */
export interface FixRefusal extends FixFacts, Refusal<Fix> {}

/** The refusal of what was asked for, with what may be had anyway. */
export function refusalOf(asked: FixFacts, { anyway, ...why }: Refusal<Fix>): FixRefusal {
  const { id, kind, title, scope, layerId, finding } = asked;
  const forced = anyway && { ...anyway, finding };
  return { id, kind, title, scope, ...(layerId && { layerId }), finding, ...why, ...(forced && { anyway: forced }) };
}

/** A change to the artist's text that was proven, by checking the edited text, to do what it says. */
export interface Fix extends Omit<FixFacts, 'id' | 'finding'> {
  /** This and the finding are there where a finding asked for it: not for a bridge that the artist points at. */
  readonly id?: FixId;
  readonly finding?: FindingId;
  readonly preferred: boolean;
  /** It brings what usually refuses it: it is only had by who asks for it all the same. */
  readonly forced?: true;
  /** As its candidate's. */
  readonly safe: boolean;
  /** Of the finding's own file. */
  readonly edits: readonly TextEdit[];
  /** Edits of other files of the project that belong to the same change. */
  readonly others?: readonly FileEdits[];
  /** The bridges that it puts in, where that is what it does. */
  readonly bridges?: readonly BridgePreview[];
  /** The islands that it cuts away, where that is what it does. */
  readonly cutAway?: readonly CutPreview[];
  /** Findings, warnings or worse, that are new or worse after it and do not speak against it. */
  readonly brings: readonly BroughtFinding[];
}

export interface BroughtFinding {
  readonly check: CheckId;
  readonly message: string;
}
