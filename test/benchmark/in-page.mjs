// What runs inside the measured page. Each function is sent there as its text: it can use nothing from outside itself.

/** Before the page's own script: stands in for the editor, and puts a clock before and behind the page's listener. */
export function watchMessages() {
  globalThis.acquireVsCodeApi = () => ({ postMessage() {}, getState() {}, setState() {} });
  const lap = {};
  globalThis.addEventListener('message', (event) => {
    const start = performance.now();
    // The message is read when it is first asked for.
    if (event.data.type !== 'stack') return;
    lap.read = performance.now();
    lap.message = lap.read - start;
  });
  globalThis.whereIsIt = () => document.querySelector('.canvas > g[transform^="matrix"]').getAttribute('transform');
  globalThis.showStack = (stack) =>
    new Promise((resolve) => {
      globalThis.addEventListener(
        'message',
        () => {
          lap.work = performance.now() - lap.read;
          const start = performance.now();
          document.querySelector('.canvas').getBoundingClientRect();
          document.querySelector('.canvas > g').getBBox();
          lap.layout = performance.now() - start;
          requestAnimationFrame(() => requestAnimationFrame(() => resolve({ ...lap })));
        },
        { once: true },
      );
      globalThis.postMessage({ type: 'stack', stack }, '*');
    });
}

/** Drags and wheels over the canvas as fast as frames come. */
export async function moveAbout() {
  const FRAMES = 90;
  const canvas = document.querySelector('.canvas');
  const { left, top } = canvas.getBoundingClientRect();
  // Made events have no pointer that could be captured.
  canvas.setPointerCapture = () => {};
  const fire = (Kind, type, x, y, more) =>
    canvas.dispatchEvent(
      new Kind(type, {
        clientX: left + x,
        clientY: top + y,
        bubbles: true,
        cancelable: true,
        pointerId: 1,
        ...more,
      }),
    );
  const drag = (type, x, y) => fire(PointerEvent, type, x, y, { buttons: 1 });
  const wheel = (deltaY) => fire(WheelEvent, 'wheel', 400, 300, { deltaY });
  const frame = () => new Promise(requestAnimationFrame);
  /** The lowest rate that holds for half a second. */
  const lowestRate = (laps) =>
    Math.min(
      ...laps.map((_, first) => {
        let [sum, count] = [0, 0];
        for (; sum < 500 && first + count < laps.length; count += 1) sum += laps[first + count];
        return sum < 500 ? Infinity : (1000 * count) / sum;
      }),
    );
  const run = async (step) => {
    const [laps, scripts] = [[], []];
    let last = await frame();
    for (let i = 0; i < FRAMES; i += 1) {
      const start = performance.now();
      step(i);
      scripts.push(performance.now() - start);
      const now = await frame();
      laps.push(now - last);
      last = now;
    }
    const [sorted, work] = [laps, scripts].map((values) => [...values].sort((a, b) => a - b));
    const sum = sorted.reduce((a, b) => a + b, 0);
    return {
      frames: FRAMES,
      rate: (1000 * FRAMES) / sum,
      lowest: lowestRate(laps),
      middle: sorted[FRAMES >> 1],
      slowest: sorted[FRAMES - 1],
      late: sorted.filter((lap) => lap > 33.4).length,
      script: work[FRAMES >> 1],
    };
  };
  const dragged = async (direction) => {
    drag('pointerdown', 400, 300);
    const figures = await run((i) => drag('pointermove', 400 + direction * i * 3, 300 + direction * i * 2));
    drag('pointerup', 700, 500);
    return figures;
  };
  return {
    'pan, whole': await dragged(1),
    'zoom in': await run(() => wheel(-20)),
    'pan, near': await dragged(-1),
    'zoom out': await run(() => wheel(20)),
  };
}
