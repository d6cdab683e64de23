/** Where painters work. */
import painterCode from 'painter-code';
import type { Painting } from './paint-job';
import type { PaintThread } from './painter';
import { ScenePainter } from './scene-painter';

/** A thread where the browser starts one, else the page's own. */
export function startThread(painted: (painting: Painting) => void): PaintThread {
  try {
    const worker = new Worker(URL.createObjectURL(new Blob([painterCode], { type: 'text/javascript' })));
    worker.onmessage = ({ data }: MessageEvent<Painting>) => painted(data);
    return { send: (job) => worker.postMessage(job) };
  } catch {
    const painter = new ScenePainter();
    return { send: (job) => setTimeout(() => painted(painter.paint(job))) };
  }
}
