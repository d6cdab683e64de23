import { expect, test } from 'vitest';
import { IDENTITY } from '../../../src/geometry/base/matrix';
import type { PaintedSheet, Painting, PaintJob, PaintView } from '../../../src/preview/painter/paint-job';
import { Painter, withoutKnown } from '../../../src/preview/painter/painter';

const part = (outline: string) => ({ role: 'paint', outline, fill: '#2f4654', opacity: 1 });
const sheets = (...outlines: string[]): PaintedSheet[] => [{ place: IDENTITY, parts: outlines.map(part) }];
const viewAt = (x: number): PaintView => ({
  viewport: { scale: 1, x, y: 0 },
  size: { width: 100, height: 80 },
  margin: 10,
  ratio: 1,
  fallen: 1,
});
const STYLES = {};

/** A thread that paints when the test says so. */
function made() {
  const jobs: PaintJob[] = [];
  const painted: number[] = [];
  let finish: (painting: Painting) => void = () => {};
  const painter = new Painter(
    ({ view }) => painted.push(view.viewport.x),
    (done) => {
      finish = done;
      return { send: (job) => jobs.push(job) };
    },
  );
  const done = () => finish({ bitmap: {} as ImageBitmap, view: jobs[jobs.length - 1]!.view });
  return { painter, jobs, painted, done };
}

test('nothing is painted before it is known how it is looked at', () => {
  const { painter, jobs } = made();
  painter.show(sheets('M0 0'), STYLES);
  expect(jobs).toEqual([]);
  painter.look(viewAt(0));
  expect(jobs).toHaveLength(1);
  expect(jobs[0]?.sheets).toEqual(sheets('M0 0'));
});

test('what is asked for during a job is asked for together after it, without what is old by then', () => {
  const { painter, jobs, painted, done } = made();
  painter.look(viewAt(0));
  painter.show(sheets('M0 0'), STYLES);
  for (let x = 1; x <= 5; x += 1) painter.look(viewAt(x));
  painter.show(sheets('M1 1'), STYLES);
  painter.show(sheets('M2 2'), STYLES);
  expect(jobs).toHaveLength(1);
  done();
  expect(jobs).toHaveLength(2);
  expect(jobs[1]?.sheets).toEqual(sheets('M2 2'));
  expect(jobs[1]?.view.viewport.x).toBe(5);
  done();
  expect(jobs).toHaveLength(2);
  expect(painted).toEqual([0, 5]);
});

test('a new view alone sends no pictures', () => {
  const { painter, jobs, done } = made();
  painter.look(viewAt(0));
  painter.show(sheets('M0 0'), STYLES);
  done();
  painter.look(viewAt(1));
  expect(jobs[1]).toEqual({ view: viewAt(1) });
});

test('outlines that the thread has are not sent again', () => {
  const before = sheets('M0 0', 'M1 1');
  const [sheet] = withoutKnown(sheets('M0 0', 'M3 3', 'M4 4'), before);
  expect(sheet?.parts.map(({ outline }) => outline)).toEqual([undefined, 'M3 3', 'M4 4']);
  expect(withoutKnown(before).flatMap(({ parts }) => parts.map(({ outline }) => outline))).toEqual(['M0 0', 'M1 1']);
});
