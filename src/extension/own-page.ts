import * as vscode from 'vscode';
import { randomHex } from './nonce';

/** What a panel shows. */
export interface OwnPage {
  readonly title: string;
  /** Of its script and its style sheet in `dist`, without ending. */
  readonly name: string;
  /** What the page may load besides its script, its styles and its fonts, in the words of the policy. */
  readonly allows: string;
  /** For its script, as an attribute of the body. */
  readonly uri?: vscode.Uri;
}

/** A page of ours. Nothing runs in it but its own script; it loads nothing from anywhere else. */
export function ownPage(
  webview: vscode.Webview,
  extensionUri: vscode.Uri,
  { title, name, allows, uri }: OwnPage,
): string {
  const nonce = randomHex(16);
  const file = (ending: string) =>
    webview.asWebviewUri(vscode.Uri.joinPath(extensionUri, 'dist', `${name}.${ending}`)).toString();
  const own = webview.cspSource;
  const policy = `default-src 'none'; script-src 'nonce-${nonce}'; style-src ${own}; font-src ${own}; ${allows}`;
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<link rel="stylesheet" href="${file('css')}">
<title>${title}</title>
</head>
<body${uri ? ` data-uri="${escaped(uri.toString())}"` : ''}>
<script nonce="${nonce}" src="${file('js')}"></script>
</body>
</html>`;
}

function escaped(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('"', '&quot;').replaceAll('<', '&lt;');
}
