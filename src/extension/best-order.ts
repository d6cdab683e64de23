/** The spray order with the fewest islands: told, and put into the text when it is wanted. */
import * as vscode from 'vscode';
import { count } from '../config/values';
import type { BestOrder } from '../protocol/views';
import { noticeText } from '../text/notice';
import { oneLine } from '../text/plain-text';
import { applyReordering } from './edit-documents';
import type { ServerClient } from './server-client';

const { l10n, window } = vscode;

/** The command: says what would be gained, and waits to be told. */
export async function offerBestOrder(uri: vscode.Uri, client: ServerClient): Promise<void> {
  const best = await client.bestOrder(uri);
  if (!best) return;
  if ('refusal' in best) void window.showInformationMessage(noticeText(best.refusal));
  else if (!best.change) void window.showInformationMessage(settled(best));
  else if ('refusal' in best.change) void window.showWarningMessage(noticeText(`${gain(best)} ${best.change.refusal}`));
  else {
    const reorder = l10n.t('Reorder Layers');
    const chosen = await window.showInformationMessage(gain(best), { modal: true, detail: orderOf(best) }, reorder);
    if (chosen === reorder) await applyBestOrder(client, uri, best.version);
  }
}

/**
 * @param version of the document, for which the order was told
 * @returns the document that was changed
 */
export async function applyBestOrder(
  client: ServerClient,
  uri: vscode.Uri,
  version: number,
): Promise<vscode.Uri | undefined> {
  const best = await client.bestOrder(uri);
  if (!best) return undefined;
  if ('refusal' in best || best.version === version) return applyReordering('refusal' in best ? best : best.change);
  void window.showWarningMessage(l10n.t('The drawing has changed since; look for the best order again.'));
  return undefined;
}

function settled({ after }: BestOrder): string {
  return l10n.t('This spray order is the best already: {0} to bridge.', count(after, 'island'));
}

function gain({ before, after }: BestOrder): string {
  return l10n.t('{0} to bridge in the best spray order, {1} as it is now.', count(after, 'island'), before);
}

function orderOf({ order }: BestOrder): string {
  const lines = order.map(({ name, now }, place) => {
    return now === undefined
      ? `${place + 1}. ${oneLine(name)}`
      : l10n.t('{0}. {1} (now {2})', place + 1, oneLine(name), now);
  });
  const rest = l10n.t('Later paint covers the others: cut them away, and the print stays the same.');
  return [...lines, '', rest].join('\n');
}
