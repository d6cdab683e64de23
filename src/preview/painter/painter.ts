/**
 * Has pictures painted off the page's thread: nobody who types beside the bench waits for them. There is one job at a
 * time; what is asked for meanwhile is asked for together when that is done, so that no picture is painted that is old
 * already.
 */
import type { PaintedPart, PaintedSheet, Painting, PaintJob, PaintStyles, PaintView } from './paint-job';

/** Takes jobs one by one, and answers each. */
export interface PaintThread {
  send(job: PaintJob): void;
}

export type StartThread = (painted: (painting: Painting) => void) => PaintThread;

export class Painter {
  private readonly thread: PaintThread;
  private busy = false;
  private sheets: readonly PaintedSheet[] = [];
  /** As the thread has them. */
  private sent: readonly PaintedSheet[] | undefined;
  private styles: PaintStyles | undefined;
  private sentStyles: PaintStyles | undefined;
  private view: PaintView | undefined;
  private sentView: PaintView | undefined;

  /** @param painted is called with each painting; the newest is the last */
  constructor(painted: (painting: Painting) => void, start: StartThread) {
    this.thread = start((painting) => {
      this.busy = false;
      painted(painting);
      this.next();
    });
  }

  /** What is to be painted from now on. */
  show(sheets: readonly PaintedSheet[], styles: PaintStyles): void {
    this.sheets = sheets;
    this.styles = styles;
    this.next();
  }

  look(view: PaintView): void {
    this.view = view;
    this.next();
  }

  private next(): void {
    const { sheets, styles, view } = this;
    if (this.busy || !view || !styles) return;
    if (sheets === this.sent && styles === this.sentStyles && view === this.sentView) return;
    this.busy = true;
    this.thread.send({
      ...(sheets !== this.sent && { sheets: withoutKnown(sheets, this.sent) }),
      ...(styles !== this.sentStyles && { styles }),
      view,
    });
    [this.sent, this.sentStyles, this.sentView] = [sheets, styles, view];
  }
}

/** Leaves out the outlines that the thread has from the job before. */
export function withoutKnown(
  sheets: readonly PaintedSheet[],
  before: readonly PaintedSheet[] = [],
): readonly PaintedSheet[] {
  return sheets.map(({ place, parts }, order) => ({
    place,
    parts: parts.map((part, index): PaintedPart => {
      const { outline, ...rest } = part;
      return outline === before[order]?.parts[index]?.outline ? rest : part;
    }),
  }));
}
