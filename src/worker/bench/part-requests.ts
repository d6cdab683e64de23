/** Answers questions about parts of the picture. */

import type { PartAtParams, PartParams, PlaceAnswer } from '../../protocol/parts';
import type { CheckedDocument } from '../documents/checked-document';
import { PartFinder, type PlacedLayers, snapAt } from './hit-test';

export class PartRequests {
  private readonly finder = new PartFinder();

  partAt(checked: CheckedDocument, { places, reach, sheets }: Omit<PartAtParams, 'uri'>): PlaceAnswer {
    const layers = layersOf(checked);
    return {
      version: checked.version,
      part: this.finder.partAt(layers, { places, reach, sheets }),
      snap: snapAt(layers, places, reach),
    };
  }

  part(checked: CheckedDocument, { layer, number }: Omit<PartParams, 'uri'>): PlaceAnswer {
    return { version: checked.version, part: this.finder.part(layersOf(checked), layer, number), snap: undefined };
  }
}

function layersOf(checked: CheckedDocument): PlacedLayers {
  return new Map(
    checked.report.stack.layers.map(({ file, sheet }) => {
      const { uri, version } = checked.named(file) ?? checked;
      return [sheet.layer.id, { sheet, uri, version }];
    }),
  );
}
