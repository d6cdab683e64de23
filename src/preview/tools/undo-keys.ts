/** Undo and redo by their usual keys, from anywhere on the bench. */

/**
 * The keys go no farther: the editor would take them for the page itself, in which there is nothing to take back.
 * Fields that are written in keep them.
 * @param run is told whether it shall be done again
 */
export function followUndoKeys(page: HTMLElement, run: (again: boolean) => void): void {
  page.addEventListener('keydown', (event) => {
    const again = wantsRedo(event);
    if (again === undefined || isWrittenIn(event.target)) return;
    event.preventDefault();
    event.stopPropagation();
    run(again);
  });
}

/** True for redo, false for undo, undefined for any other key. */
export function wantsRedo(
  event: Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'metaKey' | 'shiftKey' | 'altKey'>,
): boolean | undefined {
  const { key, ctrlKey, metaKey, shiftKey, altKey } = event;
  if (!(ctrlKey || metaKey) || altKey) return undefined;
  if (key.toLowerCase() === 'z') return shiftKey;
  return key.toLowerCase() === 'y' && ctrlKey && !shiftKey ? true : undefined;
}

const WRITTEN_IN: ReadonlySet<string> = new Set(['text', 'search', 'number', 'url', 'email', 'password', 'tel']);

function isWrittenIn(target: EventTarget | null): boolean {
  if (target instanceof HTMLTextAreaElement) return true;
  return target instanceof HTMLInputElement && WRITTEN_IN.has(target.type);
}
