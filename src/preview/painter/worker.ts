/** The painter's thread: one painting for each job, in the order in which they are asked for. */
import type { PaintJob } from './paint-job';
import { ScenePainter } from './scene-painter';

/** What this file uses of a worker's global scope; the page's own types have it as a window. */
declare const self: {
  onmessage: (event: MessageEvent<PaintJob>) => void;
  postMessage(message: unknown, transfer: Transferable[]): void;
};

const painter = new ScenePainter();

self.onmessage = ({ data }) => {
  const painting = painter.paint(data);
  self.postMessage(painting, [painting.bitmap]);
};
