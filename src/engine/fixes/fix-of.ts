import type { Effect } from '../../checks/meta';
import { count } from '../../config/values';
import type { BroughtFinding, Fix, FixScope } from '../../report/fix';
import { isRefusal, type Refusal, type Result, refuse } from '../../report/refusal';
import type { Report } from '../../report/report';
import type { LayerId } from '../../sheet/layer/layer-id';
import { applyEdits } from '../../text/text';
import { internalReason, isolated } from '../check/fault';
import { metaOf } from '../metas';
import { outcomeInTitle } from './brought';
import type { ProvenChange } from './kind';

/** What a kind of fix says of every fix of it. */
export interface FixFacts {
  readonly kind: string;
  readonly scope: FixScope;
  readonly safe: boolean;
  /** What is found after it was there before, but could not be seen. */
  readonly reveals?: boolean;
}

/** What is known of one fix before its proof. */
interface Offered {
  readonly title: string;
  readonly preferred?: boolean;
  readonly layerId?: LayerId;
  /** What is asked for. */
  readonly asked?: readonly Effect[];
}

/**
 * A proven change as a fix. Its title says what it brings, unless one must expect it of what is asked for; what brings more
 * than that is not preferred.
 */
function fixOf({ kind, scope, safe, reveals }: FixFacts, offered: Offered, { title, ...change }: ProvenChange): Fix {
  const { layerId, asked = [] } = offered;
  const surprising = change.brings.filter((finding) => !isExpected(finding, asked));
  const preferred = (offered.preferred ?? false) && surprising.length === 0;
  const plain = title ?? offered.title;
  const told = reveals ? withRevealed(plain, surprising) : withBrought(plain, surprising);
  return { ...change, kind, scope, safe, preferred, ...(layerId && { layerId }), title: told };
}

/** What a refused change comes to where it is wanted anyway: never what is preferred, and its title says so. */
function forcedFixOf({ kind, scope, safe }: FixFacts, offered: Offered, { title, ...change }: ProvenChange): Fix {
  const { layerId } = offered;
  const told = `${title ?? offered.title} anyway: ${outcomeInTitle(change.brings)}`;
  return { ...change, kind, scope, safe, preferred: false, forced: true, ...(layerId && { layerId }), title: told };
}

/**
 * A proven change as a fix, or why there is none, with what may be had anyway.
 * @param report on the text that the change is of: what cannot be put into it is not offered, whatever was proven
 */
export function fixResult(
  report: Report,
  facts: FixFacts,
  offered: Offered,
  result: Result<ProvenChange>,
): Result<Fix> {
  if (!isRefusal(result)) {
    return isolated<Result<Fix>>(
      () => fixOf(facts, offered, fitting(report, result)),
      (fault) => refuse(internalReason(fault)),
    );
  }
  const { anyway, ...why } = result;
  if (!anyway) return why;
  return isolated<Refusal<Fix>>(
    () => ({ ...why, anyway: forcedFixOf(facts, offered, fitting(report, anyway)) }),
    () => why,
  );
}

/** @throws RangeError where edits overlap or lie outside their text */
function fitting({ text, project }: Report, change: ProvenChange): ProvenChange {
  applyEdits(text, change.edits);
  for (const { file, edits } of change.others ?? []) applyEdits(project?.report.files.get(file)?.text ?? '', edits);
  return change;
}

function isExpected({ check }: BroughtFinding, asked: readonly Effect[]): boolean {
  return metaOf(check)?.afterFix?.unless?.some((effect) => asked.includes(effect)) ?? false;
}

function withBrought(title: string, brings: readonly BroughtFinding[]): string {
  return brings.length === 0 ? title : `${title}; ${outcomeInTitle(brings)}`;
}

function withRevealed(title: string, { length }: readonly BroughtFinding[]): string {
  return length === 0 ? title : `${title}; ${count(length, 'finding')} ${length === 1 ? 'comes' : 'come'} to light`;
}
