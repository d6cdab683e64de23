/** The size goes into the file itself, where every program reads it. */
import { shortSides } from '../../../config/values';
import { attributeOf } from '../../../markup/query';
import { mapResult, refuse } from '../../../report/refusal';
import type { Report } from '../../../report/report';
import type { FixKind } from '../kind';
import { sizeEdits } from '../root-attributes';
import { verify } from '../verify';

const FACTS = { scope: 'file', effects: [] } as const;

const BY_STYLE = 'A style sets the size of the svg element: state the size there.';

/** The size that the drawing is read at, so that every measure stays as it is. */
export const stateSize: FixKind = {
  ...FACTS,
  kind: 'state-size',
  safe: true,
  preferred: true,
  offer: ({ drawing: { width, height } }) => `Write ${shortSides(width, height)} into the file`,
  prove: (report, finding) => {
    const { drawing } = report;
    if (drawing.ownSize.byStyle) return refuse(BY_STYLE);
    const edits = sizeEdits(drawing, drawing.width);
    const proof = verify(report, edits, { gone: [finding], within: new Map() });
    return mapResult(proof, ({ brings }) => ({ edits, brings }));
  },
};

/** Many draw in millimetres and leave the size out: then a unit of the viewBox was meant as one. */
export const stateSizeInUnits: FixKind = {
  ...FACTS,
  kind: 'state-size-in-units',
  safe: false,
  preferred: false,
  offer: (report) => {
    const scale = unitScale(report);
    const { width, height } = report.drawing;
    if (scale === undefined) return undefined;
    return `Write ${shortSides(width * scale, height * scale)} into the file (1 unit = 1 mm)`;
  },
  prove: (report, finding) => {
    const scale = unitScale(report);
    if (scale === undefined) return undefined;
    const edits = sizeEdits(report.drawing, report.drawing.width * scale);
    const proof = verify(report, edits, { gone: [finding], within: new Map(), scale });
    return mapResult(proof, ({ brings }) => ({ edits, brings }));
  },
};

/** How many times as large it comes out at a millimetre for each unit; undefined where anything says another size. */
function unitScale({ drawing, settings }: Report): number | undefined {
  const { document, width, toMm, sizeStated, ownSize } = drawing;
  const root = document.root;
  const isSaid = sizeStated || ownSize.byStyle || settings.config?.width !== undefined || settings.width !== undefined;
  if (!root || isSaid || !(width > 0) || !attributeOf(root, 'viewBox')) return undefined;
  return attributeOf(root, 'width') || attributeOf(root, 'height') ? undefined : 1 / toMm.a;
}
