/** Sheet is added round the artwork: in a file that stands alone, or in all files of a project. */

import type { Finding } from '../../../checks/finding';
import { limitsOf } from '../../../config/limits';
import type { Region } from '../../../geometry/base/polygon-types';
import { growBox, polygonOfBox } from '../../../geometry/base/ring';
import { DRAWN_ALIKE } from '../../../geometry/base/tolerances';
import { difference } from '../../../geometry/boolean/index';
import { isRefusal, type Result, refuse } from '../../../report/refusal';
import type { FileEdits, Report } from '../../../report/report';
import type { LayerId } from '../../../sheet/layer/layer-id';
import { marginNeeded } from '../../../sheet/sheet-edge';
import { effectiveConfig } from '../../check/effective-config';
import type { FixKind, ProvenChange } from '../kind';
import { marginEdits } from '../root-margin';
import { verify } from '../verify';

/** What lay beyond the edge is cut now. */
const FACTS = { safe: false, effects: ['adds-opening'], preferred: true } as const;

export const addMargin: FixKind = {
  ...FACTS,
  kind: 'add-margin',
  scope: 'file',
  offer: (report) => (filesOf(report).length === 1 ? titleFor(report) : undefined),
  prove: proveMargin,
};

/** All sheets of a stack grow alike, so that they stay in register. */
export const addMarginStack: FixKind = {
  ...FACTS,
  kind: 'add-margin-stack',
  scope: 'stack',
  offer: (report) => {
    const title = filesOf(report).length > 1 ? titleFor(report) : undefined;
    return title && `${title} to all files of the stack`;
  },
  prove: proveMargin,
};

/** Where a layer draws what stays of its sheet, its rim is drawn too, and more sheet would be cut away. */
function titleFor(report: Report): string | undefined {
  const margin = marginFor(report);
  const isDrawn = report.stack.layers.some(({ sheet }) => sheet.layer.reading === 'sheet');
  return margin !== undefined && margin > 0 && !isDrawn ? `Add a margin of ${margin} mm` : undefined;
}

/** Whole mm that suffice for all files; undefined where no sheet has as many. */
function marginFor({ stack, settings }: Report): number | undefined {
  const { bridge } = limitsOf(effectiveConfig(settings));
  return marginNeeded(
    stack.layers.map(({ sheet }) => sheet),
    bridge,
  );
}

function proveMargin(report: Report, finding: Finding): Result<ProvenChange> {
  const margin = marginFor(report);
  if (margin === undefined) return refuse('No sheet can be as large as that.');
  const config = effectiveConfig(report.settings);
  if (config.width !== undefined || config.height !== undefined) {
    return {
      reason: 'The size is stated outside the drawing: a margin in the file would make the artwork smaller.',
      first: `Set "margin": "${config.margin + margin}mm" in tombolo.json.`,
    };
  }
  const own = report.project?.file ?? '';
  const files: FileEdits[] = [];
  for (const [file, { drawing }] of filesOf(report)) {
    const edits = marginEdits(drawing, margin);
    if (!edits) return refuse('A style sets the size of the svg element: add the margin there.');
    files.push({ file, edits });
  }
  const edits = files.find(({ file }) => file === own)?.edits ?? [];
  const others = files.filter(({ file }) => file !== own);
  const gone = filesOf(report).flatMap(([, { complete }]) => complete.filter(({ check }) => check === finding.check));
  const pledge = { gone, within: addedSheet(report, margin), effects: FACTS.effects, margin };
  const proof = verify(report, edits, pledge, others);
  if (isRefusal(proof)) return refuse(proof.reason);
  if (filesOf(proof.after).some(([, { complete }]) => complete.some(({ check }) => check === finding.check))) {
    return refuse(`The ${finding.check} would still be there.`);
  }
  return { edits, brings: proof.brings, ...(others.length > 0 && { others }) };
}

/** Beyond what was the edge, everything may change. */
function addedSheet({ stack }: Report, margin: number): ReadonlyMap<LayerId, Region> {
  return new Map(
    stack.layers.map(({ sheet: { layer, frame } }) => {
      const [whole, inner] = [growBox(frame, margin), growBox(frame, -DRAWN_ALIKE)].map((box) => [polygonOfBox(box)]);
      return [layer.id, difference(whole as Region, inner as Region)];
    }),
  );
}

function filesOf(report: Report): readonly (readonly [string, Report])[] {
  return report.project ? [...report.project.report.files] : [['', report]];
}
