/** A `tombolo.json` that was not taken whole is said in each drawing that it is in force for, too. */
import { type Diagnostic, DiagnosticSeverity } from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import type { ConfigProblem } from '../../config/read';
import { CONFIG_NAME } from '../../config/types';
import { count } from '../../config/values';
import type { Span } from '../../text/text';
import { SOURCE } from './diagnostics';
import { type KnownDocument, rangeOf } from './known-document';

/** So many of them are listed. */
const MOST_LISTED = 5;

/** @returns one diagnostic at the name of the root, or none where nothing is wrong */
export function configNotice({ document, config }: KnownDocument, errors: readonly ConfigProblem[]): Diagnostic[] {
  if (!config || errors.length === 0) return [];
  const file = TextDocument.create(config.uri, 'json', 0, config.text);
  const relatedInformation = errors.slice(0, MOST_LISTED).map(({ message, span }) => ({
    message,
    location: { uri: config.uri, range: rangeOf(span, file) },
  }));
  return [
    {
      range: rangeOf(rootName(document.getText()), document),
      severity: DiagnosticSeverity.Warning,
      source: SOURCE,
      code: CONFIG_NAME,
      codeDescription: { href: config.uri },
      message: `${CONFIG_NAME} has ${count(errors.length, 'error')}: what it got wrong is left out here, and defaults are used.`,
      relatedInformation,
    },
  ];
}

/** The name in the first start tag that is not inside of a comment or a declaration; the beginning where there is none. */
export function rootName(text: string): Span {
  const parts = /<!--[\s\S]*?-->|<\?[\s\S]*?\?>|<![^[>]*(?:\[[\s\S]*?\]\s*)?>|<([^\s<>/!?]+)/g;
  for (const match of text.matchAll(parts)) {
    const [, name] = match;
    if (name !== undefined) return { from: match.index + 1, to: match.index + 1 + name.length };
  }
  return { from: 0, to: 0 };
}
