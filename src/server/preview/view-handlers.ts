/** Answers what the bench asks for its ways of looking. */
import type { Connection } from 'vscode-languageserver/node';
import type { DocumentParams } from '../../protocol/index';
import {
  type LayerParams,
  NECKS,
  REORDER,
  type ReorderParams,
  SLIP,
  type SlipParams,
  SWEEP,
} from '../../protocol/views';
import type { CheckedDocument } from '../documents/checked-document';
import { type OpenText, reordering } from './reordering';
import { necksOfLayer, SlipRequests } from './slip-handlers';

export interface ViewSources {
  /** The check of a document's present text, made now if need be. */
  current(uri: string): CheckedDocument | undefined;
  /** What stands in the editor. */
  openText: OpenText;
}

export function handleViewRequests(connection: Connection, { current, openText }: ViewSources): void {
  const slips = new SlipRequests();
  /** Never rejects: what goes wrong is logged, and the answer is that of an unknown document. */
  const answer = <Params extends DocumentParams>(
    method: string,
    from: (checked: CheckedDocument, params: Params) => object,
  ) =>
    connection.onRequest(method, (params: Params) => {
      try {
        const checked = current(params.uri);
        return checked ? from(checked, params) : null;
      } catch (error) {
        connection.console.error(`${params.uri}: ${error instanceof Error ? error.stack : String(error)}`);
        return null;
      }
    });
  answer<LayerParams>(NECKS, necksOfLayer);
  answer<SlipParams>(SLIP, (checked, params) => slips.bareAfter(checked, params));
  answer<LayerParams>(SWEEP, (checked, params) => slips.sweep(checked, params));
  answer<ReorderParams>(REORDER, (checked, params) => reordering(checked, params, openText));
}
