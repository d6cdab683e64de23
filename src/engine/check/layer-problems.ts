/** What is wrong with the entries of `layers`, at their places in the text of `tombolo.json`. */
import { findNodeAtLocation, parseTree } from 'jsonc-parser';
import type { ConfigProblem } from '../../config/read';
import type { LayerFault } from '../../report/report';

/** Each fault at every entry that has its `from`. Entries that could not be read at all are reported elsewhere. */
export function layerProblems(configText: string, faults: readonly LayerFault[]): ConfigProblem[] {
  const root = faults.length > 0 ? parseTree(configText, [], { allowTrailingComma: true }) : undefined;
  const entries = (root && findNodeAtLocation(root, ['layers'])?.children) ?? [];
  return entries.flatMap((entry) => {
    const place = findNodeAtLocation(entry, ['from']);
    const fault = faults.find(({ from }) => from === place?.value);
    if (!place || !fault) return [];
    const span = { from: place.offset, to: place.offset + place.length };
    return [{ message: fault.message, severity: fault.severity, span }];
  });
}
