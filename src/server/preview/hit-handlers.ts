/** Answers questions about parts of the picture. */
import type { Connection } from 'vscode-languageserver/node';
import { PART, PART_AT, type PartAtParams, type PartParams, type PlaceAnswer } from '../../protocol/parts';
import type { CheckedDocument } from '../documents/checked-document';
import { PartFinder, type PlacedSheet, snapAt } from './hit-test';

/**
 * @param known gives the check of a document's present text, where it has been made: a moving pointer never makes one
 */
export function handlePartRequests(connection: Connection, known: (uri: string) => CheckedDocument | undefined): void {
  const finder = new PartFinder();
  connection.onRequest(PART_AT, (params: PartAtParams): PlaceAnswer | null => {
    const checked = known(params.uri);
    if (!checked) return null;
    const layers = layersOf(checked);
    return {
      version: checked.version,
      part: finder.partAt(layers, params),
      snap: snapAt(layers, params.places, params.reach),
    };
  });
  connection.onRequest(PART, ({ uri, layer, number }: PartParams): PlaceAnswer | null => {
    const checked = known(uri);
    if (!checked) return null;
    return { version: checked.version, part: finder.part(layersOf(checked), layer, number), snap: undefined };
  });
}

function layersOf(checked: CheckedDocument): PlacedSheet[] {
  return checked.report.stack.layers.map(({ file, sheet }) => {
    const { document, version } = checked.named(file) ?? checked;
    return { sheet, uri: document.uri, version };
  });
}
