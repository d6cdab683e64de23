/** Whether what was planned on a stack still fits the one that is shown now. */
import type { PreviewStack } from '../../protocol/index';

export interface StackChange {
  /** It is another drawing. */
  readonly isOther: boolean;
  /** The text is another, or it is measured otherwise: by another size, material or limit. */
  readonly isChanged: boolean;
}

export function stackChange(before: PreviewStack | undefined, now: PreviewStack): StackChange {
  const isOther = now.uri !== before?.uri;
  return { isOther, isChanged: isOther || now.version !== before.version || measured(now) !== measured(before) };
}

/** The size, and what is told with its measures and limits: no other part of a stack names the limits. */
function measured({ width, height, findings }: PreviewStack): string {
  return [width, height, ...findings.map(({ message }) => message)].join('\n');
}
