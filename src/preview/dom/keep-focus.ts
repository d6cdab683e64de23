/** The focus within the page, kept while another part of the window has it: browsers may forget it then. */
export function keepFocus(page: HTMLElement): void {
  let last: HTMLElement | SVGElement | undefined;
  page.addEventListener('focusin', ({ target }) => {
    if (target instanceof HTMLElement || target instanceof SVGElement) last = target;
  });
  window.addEventListener('focus', () => {
    if (document.activeElement !== document.body || !last?.isConnected || !last.checkVisibility()) return;
    last.focus({ preventScroll: true });
  });
}
