/** The artist's words as they are, in one line: none of them is Markdown. */
export function escapeMarkdown(text: string): string {
  return text.replace(/[\\`*_{}[\]()#+\-.!|<>&~]/g, '\\$&').replace(/\s+/g, ' ');
}
