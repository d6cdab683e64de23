/** Words of a file in the notifications of an editor. */
import { oneLine } from './plain-text';

/** Editors make a link of `[words](command:…)` in a notification: a blank between the brackets keeps it text. */
export function noticeText(text: string): string {
  return oneLine(text).replace(/\](?=\()/g, '] ');
}
