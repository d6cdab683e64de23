import * as vscode from 'vscode';

/**
 * The page of the bench. Nothing runs in it but our own script; it loads nothing from anywhere else. Our own pictures
 * become PNG by way of a data address, and are painted by a worker of its own text.
 */
export function benchHtml(webview: vscode.Webview, extensionUri: vscode.Uri, nonce: string): string {
  const file = (name: string) => webview.asWebviewUri(vscode.Uri.joinPath(extensionUri, 'dist', name)).toString();
  const own = webview.cspSource;
  const policy =
    `default-src 'none'; script-src 'nonce-${nonce}'; style-src ${own}; font-src ${own}; ` +
    'img-src data:; worker-src blob:';
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<link rel="stylesheet" href="${file('preview.css')}">
<title>Stencil Preview</title>
</head>
<body>
<script nonce="${nonce}" src="${file('preview.js')}"></script>
</body>
</html>`;
}
