/** A movement that ends by itself. */

/** Milliseconds before it begins, and that it takes. */
const DELAY = 150;
const DURATION = 450;

/**
 * @param show is called with the share of the way, from 0 to 1, slowly at first, as things fall
 * @returns what ends it where it is
 */
export function animate(show: (share: number) => void): () => void {
  let frame = 0;
  const start = performance.now();
  const step = () => {
    const share = Math.min(Math.max((performance.now() - start - DELAY) / DURATION, 0), 1);
    show(share * share);
    if (share < 1) frame = requestAnimationFrame(step);
  };
  step();
  return () => cancelAnimationFrame(frame);
}

export function prefersReducedMotion(): boolean {
  return (
    document.body.classList.contains('vscode-reduce-motion') || matchMedia('(prefers-reduced-motion: reduce)').matches
  );
}
