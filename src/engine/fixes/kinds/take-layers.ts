/** Takes a file, or a group of it, apart into layers: one attribute says how, and nothing that is drawn changes. */
import type { Finding } from '../../../checks/finding';
import type { Layering } from '../../../config/types';
import { count } from '../../../config/values';
import { childElements } from '../../../markup/query';
import type { ElementNode } from '../../../markup/tree';
import { type Result, refuse } from '../../../report/refusal';
import type { Report } from '../../../report/report';
import { LAYERING_ATTRIBUTE } from '../../../sheet/layer/layering';
import { colourOf, paintOrder } from '../../../sheet/layer/paint-order';
import type { Sheet } from '../../../sheet/types';
import { findingsOfNewKinds } from '../faults/compare';
import type { FixKind, ProvenChange } from '../kind';
import { attributeEdits } from '../root-attributes';
import { checkEdited } from '../verify';

const BY_PAINT = 'Take each colour as a layer';

const FACTS = { scope: 'file', safe: false, effects: [], reveals: true } as const;

/** One layer for each paint, in an order that prints what is drawn where there is one. */
export const layersByPaint: FixKind = {
  ...FACTS,
  kind: 'layers-by-paint',
  preferred: true,
  offer: (_, finding) => (mixedSheet(finding) ? BY_PAINT : undefined),
  prove: (report, finding) => takeApart(report, finding, 'by-paint'),
};

/** For groups within a group, which are what the author calls layers. */
export const layersInnerGroups: FixKind = {
  ...FACTS,
  kind: 'layers-inner-groups',
  preferred: false,
  offer: (report, finding) => {
    const sheet = mixedSheet(finding);
    return sheet && holdsGroups(report, sheet) ? 'Take the inner groups as layers' : undefined;
  },
  prove: (report, finding) => takeApart(report, finding, 'inner-groups'),
};

function mixedSheet({ subject }: Finding): Sheet | undefined {
  return subject?.kind === 'colours' ? subject.sheet : undefined;
}

/** Whether the layer's group, or the only group of the file, holds several groups. */
function holdsGroups({ drawing }: Report, { layer }: Sheet): boolean {
  const { root } = drawing.document;
  const tops = new Set(layer.shapes.map(({ topLevel }) => topLevel));
  const [only] = tops;
  const container = layer.element ?? (tops.size === 1 && only !== root ? only : undefined);
  return container !== undefined && groupsIn(container).length > 1;
}

function groupsIn(element: ElementNode): ElementNode[] {
  const groups = childElements(element).filter(({ localName }) => localName === 'g');
  return groups.length === 1 && groups[0] ? groupsIn(groups[0]) : groups;
}

/** Nothing that is drawn changes: what is then found in the layers was in the drawing, but could not be seen. */
function takeApart(report: Report, finding: Finding, layering: Layering): Result<ProvenChange> | undefined {
  const sheet = mixedSheet(finding);
  const element = sheet?.layer.element ?? report.drawing.document.root;
  if (!sheet || !element) return undefined;
  const edits = attributeEdits(report.text, element, { [LAYERING_ATTRIBUTE]: layering });
  const after = checkEdited(report, edits);
  if (after.sheets.length <= report.sheets.length) return refuse('The layers would be the same as before.');
  const painted = new Set(after.drawing.shapes.map(colourOf));
  const lost = report.drawing.shapes.some((shape) => !painted.has(colourOf(shape)));
  if (lost) return refuse('The drawing would be another than before.');
  return { edits, brings: findingsOfNewKinds(report, after), ...titleFor(sheet, layering) };
}

/** A colour that lies under and over another is told before it is chosen: nothing else of the print changes. */
function titleFor({ layer }: Sheet, layering: Layering): { title?: string } {
  const places = layering === 'by-paint' ? paintOrder(layer.shapes).conflicts.length : 0;
  if (places === 0) return {};
  return { title: `${BY_PAINT}; ${count(places, 'place')} will be covered by another colour` };
}
