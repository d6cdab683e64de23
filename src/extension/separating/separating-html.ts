import * as vscode from 'vscode';

/** The page of the panel. Nothing runs in it but our own script; it loads nothing from anywhere else. */
export function separatingHtml(
  webview: vscode.Webview,
  extensionUri: vscode.Uri,
  { nonce, picture }: { readonly nonce: string; readonly picture: vscode.Uri },
): string {
  const file = (name: string) => webview.asWebviewUri(vscode.Uri.joinPath(extensionUri, 'dist', name)).toString();
  const own = webview.cspSource;
  // Masks of hatches are pictures of our own, by way of data addresses.
  const policy = `default-src 'none'; script-src 'nonce-${nonce}'; style-src ${own}; font-src ${own}; img-src data:`;
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<link rel="stylesheet" href="${file('separating.css')}">
<title>Picture to Sheets</title>
</head>
<body data-uri="${escaped(picture.toString())}">
<script nonce="${nonce}" src="${file('separating.js')}"></script>
</body>
</html>`;
}

function escaped(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('"', '&quot;').replaceAll('<', '&lt;');
}
