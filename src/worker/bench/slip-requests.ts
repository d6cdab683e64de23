/** What the bench asks about sheets that slip, and about the narrow places of one of them. */

import { limitsOf } from '../../config/limits';
import { DEFAULT_CONFIG } from '../../config/types';
import { necksOf } from '../../picture/necks';
import type { BareAfterSlip, LayerNecks, LayerParams, SlipParams, SlipSweep } from '../../protocol/views';
import { MisregistrationModel } from '../../stack/misregistration';
import type { CheckedDocument } from '../documents/checked-document';
import { regionPath } from './preview-model';

/** Sides that the sweep tries, evenly round. */
const DIRECTIONS = 24;

/** The ground of each stack that was asked about, for as long as the stack is there. */
export class SlipRequests {
  private readonly grounds = new WeakMap<CheckedDocument, MisregistrationModel>();

  bareAfter(checked: CheckedDocument, { places }: Omit<SlipParams, 'uri'>): BareAfterSlip {
    const slipped = new Map(places.map(({ layer, place }) => [layer, place]));
    const matrices = checked.report.stack.layers.map(({ sheet }) => slipped.get(sheet.layer.id));
    const { seams, area, whole } = this.groundOf(checked).exposedAfter(matrices, slipOf(checked));
    return { version: checked.version, seams: regionPath(seams), places: seams.length, area, whole };
  }

  /** @returns undefined where there is no such layer */
  sweep(checked: CheckedDocument, { layer }: Omit<LayerParams, 'uri'>): SlipSweep | undefined {
    const slip = slipOf(checked);
    const index = checked.report.stack.layers.findIndex(({ sheet }) => sheet.layer.id === layer);
    if (index < 0) return undefined;
    const { areas, seams, safe } = this.groundOf(checked).sweep(index, slip, DIRECTIONS);
    return { version: checked.version, layer, slip, areas, seams: regionPath(seams), safe };
  }

  private groundOf(checked: CheckedDocument): MisregistrationModel {
    const known = this.grounds.get(checked);
    if (known) return known;
    const ground = new MisregistrationModel(checked.report.stack.layers.map(({ sheet }) => sheet.openings));
    this.grounds.set(checked, ground);
    return ground;
  }
}

/** The necks of a layer's material, in mm as cut. */
export function necksOfLayer(checked: CheckedDocument, { layer }: Omit<LayerParams, 'uri'>): LayerNecks {
  const sheet = checked.report.stack.layers.find((each) => each.sheet.layer.id === layer)?.sheet;
  return { version: checked.version, layer, necks: sheet ? necksOf(sheet, checked.report.settings.config) : [] };
}

const slipOf = ({ report }: CheckedDocument): number => limitsOf(report.settings.config ?? DEFAULT_CONFIG).slip;
