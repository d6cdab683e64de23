/** Words of files as SARIF's plain text messages (SARIF 2.1.0, section 3.11). */
import { oneLine } from '../text/plain-text';

/** Brackets would make embedded links (3.11.6), braces placeholders (3.11.5): both are taken out of force. */
export function sarifText(text: string): string {
  return oneLine(text)
    .replace(/[\\[\]]/g, '\\$&')
    .replace(/[{}]/g, '$&$&');
}
