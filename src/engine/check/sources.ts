import type { Stencil } from '../../checks/check';
import { SourceIndex } from '../../sheet/source-index';
import type { Sheet } from '../../sheet/types';

/** One index for each sheet, built when a place is first asked for. */
export function sourcesOnce(): Stencil['sources'] {
  const built = new WeakMap<Sheet, SourceIndex>();
  return (sheet) => {
    const known = built.get(sheet);
    if (known) return known;
    const index = new SourceIndex(sheet.layer.shapes, sheet.layer.reading === 'outlines');
    built.set(sheet, index);
    return index;
  };
}
