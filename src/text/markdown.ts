/** Words of a file in Markdown: in hovers, and in the Markdown of SARIF. */
import { oneLine } from './plain-text';

/**
 * All punctuation that begins something: CommonMark 2.4 lets each be escaped. The colon and the at sign are among them,
 * since addresses become links without any brackets (GFM, "Autolinks").
 */
const PUNCTUATION = /[\\`*_{}[\]()#+\-.!|<>&~:@$=]/g;

/** The artist's words as they are, in one line: none of them is Markdown, HTML or a link. */
export function escapeMarkdown(text: string): string {
  return oneLine(text).replace(PUNCTUATION, '\\$&').replace(/\s+/g, ' ');
}
