/** Changes that no finding asks for: of a bridge that stands already, register marks for the stack, shorter lines. */
import {
  addRegistrationMarks,
  bridgeAtOffset,
  changeBridge,
  changesFor,
  cutAwayHeld,
  heldUnderPaint,
  lengthOf,
  titleOfChange,
  titleOfHeld,
  wrapChange,
} from '../../engine/index';
import type { BridgeSize } from '../../protocol/engine-worker';
import type { Offer } from '../../protocol/offers';
import type { Fix } from '../../report/fix';
import { type Result, refuse } from '../../report/refusal';
import type { Report } from '../../report/report';
import { registrationMarks } from '../../stack/registration-marks';
import type { CheckedDocument } from '../documents/checked-document';

export interface Refactor {
  readonly offer: Offer;
  prove(): Result<Fix>;
}

/** @param offset of the caret: at a side of a bridge, at the start of a layer, or in a path with a long line */
export function refactorsAt({ report }: CheckedDocument, offset: number): Refactor[] {
  return [...bridgeChangesAt(report, offset), ...marksAt(report, offset), ...wrapAt(report, offset)];
}

/** The size of the bridge that the text at an offset draws a side of. */
export function bridgeSideAt({ report }: CheckedDocument, offset: number): BridgeSize | undefined {
  const at = bridgeAtOffset(report, offset);
  if (!at) return undefined;
  const { sheet, bridge } = at;
  return { width: bridge.width - sheet.kerf, length: lengthOf(bridge) };
}

function bridgeChangesAt(report: Report, offset: number): Refactor[] {
  const at = bridgeAtOffset(report, offset);
  if (!at) return [];
  const { sheet, bridge } = at;
  const { x, y } = bridge.centre;
  const place = `${sheet.layer.id} ${x} ${y}`;
  const held = heldUnderPaint(report, sheet, bridge);
  const cut: Refactor[] = held
    ? [
        {
          offer: offerOf(`held ${place}`, 'cut-held', titleOfHeld(held)),
          prove: () => cutAwayHeld(report, sheet, held),
        },
      ]
    : [];
  const changes = changesFor(report, sheet, bridge).map((change, i) => ({
    offer: offerOf(`bridge ${place} ${i}`, `${change.kind}-bridge`, titleOfChange(sheet, bridge, change)),
    prove: () => changeBridge(report, sheet, bridge, change),
  }));
  return [...cut, ...changes];
}

function marksAt(report: Report, offset: number): Refactor[] {
  const { drawing, sheets, stack } = report;
  const starts = sheets.map(({ layer }) => layer.element ?? drawing.document.root);
  const isAtStart = starts.some((element) => element && isWithin(element.startTag, offset));
  const isWanted =
    stack.layers.length > 1 && stack.layers.some(({ sheet }) => registrationMarks(sheet.layer).length === 0);
  if (!isAtStart || !isWanted) return [];
  return [
    {
      offer: offerOf('register-stack', 'register-stack', 'Add register marks to every sheet'),
      prove: () => addRegistrationMarks(report) ?? refuse('The marks are there, or would be of no use.'),
    },
  ];
}

function wrapAt(report: Report, offset: number): Refactor[] {
  const change = wrapChange(report.drawing.document, offset);
  if (!change) return [];
  return [{ offer: offerOf(`wrap ${offset}`, change.kind, change.title), prove: () => change }];
}

const isWithin = ({ from, to }: { from: number; to: number }, offset: number): boolean => from <= offset && offset < to;

function offerOf(id: string, kind: string, title: string): Offer {
  return { id, group: id, finding: '', kind, title, scope: 'place', order: 0, preferred: false, safe: false };
}
