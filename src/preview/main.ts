/** The entry of the bench's page. */
import '@vscode-elements/elements/dist/vscode-button/index.js';
import type { FromBench, ToBench } from '../protocol/webview';
import { BenchPage } from './app';
import { followTheme } from './dom/badge-ink';
import { drawPicture } from './export-picture';
import type { SavedPage } from './page-host';
import { BenchRequests } from './state/requests';

declare function acquireVsCodeApi(): {
  postMessage(message: FromBench): void;
  getState(): SavedPage | undefined;
  setState(state: SavedPage): void;
};

const editor = acquireVsCodeApi();

const questions = new BenchRequests((id, question) => editor.postMessage({ type: 'ask', id, question }));

const page = new BenchPage(
  {
    requests: questions,
    saveState: (kept) => editor.setState(kept),
    reveal: (uri, from, to) => editor.postMessage({ type: 'reveal', uri, from, to }),
    begin: (uri) => editor.postMessage({ type: 'begin', uri }),
    pin: (pinned) => editor.postMessage({ type: 'pin', pinned }),
    screen: (pixelsPerInch) => editor.postMessage({ type: 'screen', pixelsPerInch }),
    undo: (again) => editor.postMessage({ type: again ? 'redo' : 'undo' }),
    save: () => editor.postMessage({ type: 'save' }),
    saveAs: () => editor.postMessage({ type: 'saveAs' }),
    writeCut: () => editor.postMessage({ type: 'writeCut' }),
    writeJob: () => editor.postMessage({ type: 'writeJob' }),
    bestOrder: (version) => editor.postMessage({ type: 'bestOrder', version }),
    reorder: ({ uri, version, layers }, from, onto) => {
      const [layer, to] = [layers[from]?.id, layers[onto]?.id];
      if (layer !== undefined && to !== undefined) editor.postMessage({ type: 'reorder', uri, version, layer, to });
    },
  },
  editor.getState(),
);

document.body.append(page.element);
followTheme();
window.addEventListener('message', ({ data, origin }: MessageEvent<ToBench>) => {
  // The editor speaks through the frame round the page, which has the page's own origin; others have nothing to say here.
  if (origin !== window.origin) return;
  if (data.type === 'stack') page.show(data.stack);
  else if (data.type === 'mark') page.mark(data);
  else if (data.type === 'screen') page.setScreen(data.pixelsPerInch);
  else if (data.type === 'gone') page.gone(data.name);
  else if (data.type === 'focus') page.focusAgain();
  else if (data.type === 'answer') questions.hear(data.id, data.answer);
  else if (data.type === 'draw')
    void drawPicture(page, data.format).then((bytes) => editor.postMessage({ type: 'picture', bytes }));
});
editor.postMessage({ type: 'ready' });
