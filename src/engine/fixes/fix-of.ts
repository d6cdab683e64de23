import type { Effect } from '../../checks/meta';
import type { BroughtFinding, Fix, FixScope } from '../../report/fix';
import type { LayerId } from '../../sheet/layer/layer-id';
import { metaOf } from '../check/known-checks';
import type { ProvenChange } from './kind';

/** What a kind of fix says of every fix of it. */
export interface FixFacts {
  readonly kind: string;
  readonly scope: FixScope;
  readonly safe: boolean;
}

/** What is known of one fix before its proof. */
interface Offered {
  readonly title: string;
  readonly preferred?: boolean;
  readonly layerId?: LayerId;
  /** What is asked for. */
  readonly asked?: readonly Effect[];
}

/** A proven change as a fix. Its title says what it brings, unless one must expect it of what is asked for. */
export function fixOf({ kind, scope, safe }: FixFacts, offered: Offered, { title, ...change }: ProvenChange): Fix {
  const { preferred = false, layerId, asked = [] } = offered;
  const surprising = change.brings.filter((finding) => !isExpected(finding, asked));
  const told = withBrought(title ?? offered.title, surprising);
  return { ...change, kind, scope, safe, preferred, ...(layerId && { layerId }), title: told };
}

function isExpected({ check }: BroughtFinding, asked: readonly Effect[]): boolean {
  return metaOf(check)?.afterFix?.unless?.some((effect) => asked.includes(effect)) ?? false;
}

function withBrought(title: string, brings: readonly BroughtFinding[]): string {
  const checks = new Set(brings.map(({ check }) => check));
  return checks.size === 0 ? title : `${title}; brings ${[...checks].join(', ')}`;
}
