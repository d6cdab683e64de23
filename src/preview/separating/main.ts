/** The entry of the page that shows a picture becoming sheets. */
import type { FromPicturePage, PictureDials, ToPicturePage } from '../../protocol/separating';
import { PicturePage } from './page';

/** What the editor keeps of the page while it is hidden, and when the window is loaded again. */
interface Kept {
  readonly uri?: string;
  readonly dials?: PictureDials;
}

declare function acquireVsCodeApi(): {
  postMessage(message: FromPicturePage): void;
  getState(): Kept | undefined;
  setState(state: Kept): void;
};

const editor = acquireVsCodeApi();
const { uri } = document.body.dataset;
const kept = editor.getState();

const page = new PicturePage(
  (message) => editor.postMessage(message),
  (dials) => editor.setState({ ...(uri !== undefined && { uri }), dials }),
  kept?.uri === uri ? kept?.dials : undefined,
);

document.body.append(page.element);
window.addEventListener('message', ({ data, origin }: MessageEvent<ToPicturePage>) => {
  // The editor speaks through the frame round the page, which has the page's own origin; others have nothing to say here.
  if (origin === window.origin) page.hear(data);
});
editor.postMessage({ type: 'ready' });
