/** The entry of the bench's page. */
import '@vscode-elements/elements/dist/vscode-button/index.js';
import { BenchPage, type Kept } from './bench-page';
import type { FromBench, ToBench } from './messages';

declare function acquireVsCodeApi(): {
  postMessage(message: FromBench): void;
  getState(): Kept | undefined;
  setState(state: Kept): void;
};

const editor = acquireVsCodeApi();

const page = new BenchPage({
  keep: (kept) => editor.setState(kept),
  reveal: (uri, from, to) => editor.postMessage({ type: 'reveal', uri, from, to }),
  begin: (uri) => editor.postMessage({ type: 'begin', uri }),
}, editor.getState());

document.body.append(page.element);
window.addEventListener('message', ({ data }: MessageEvent<ToBench>) => {
  if (data.type === 'stack') page.show(data.stack);
  else page.mark(data.outline);
});
editor.postMessage({ type: 'ready' });
