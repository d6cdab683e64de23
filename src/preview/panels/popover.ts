/** Panels that open below a button, over everything else. */
import { setAttributes } from '../dom/dom';

/** CSS pixels that stay free between a panel and the edges of the window. */
const RIM = 4;

/** Opens it below the button, as far to the right as the button or the window allows. */
export function openBelow(panel: HTMLElement, button: HTMLElement): void {
  panel.showPopover();
  const { left, bottom } = button.getBoundingClientRect();
  const x = Math.min(left, window.innerWidth - panel.offsetWidth - RIM);
  panel.style.setProperty('left', `${Math.max(x, RIM)}px`);
  panel.style.setProperty('top', `${bottom + 2}px`);
  panel.style.setProperty('max-height', `${window.innerHeight - bottom - 2 - RIM}px`);
}

/** A button that opens and closes a panel, and says whether it is open. */
export function opens(button: HTMLElement, panel: HTMLElement, open: () => void): void {
  setAttributes(button, { 'aria-expanded': 'false' });
  let wasOpen = false;
  // A click elsewhere, the button's own among them, closes the panel before the click is heard.
  button.addEventListener('pointerdown', () => {
    wasOpen = panel.matches(':popover-open');
  });
  button.addEventListener('click', () => {
    if (!wasOpen) open();
    wasOpen = false;
  });
  panel.addEventListener('toggle', () => {
    setAttributes(button, { 'aria-expanded': String(panel.matches(':popover-open')) });
  });
}
