/** Undo, redo and save by their usual keys, from anywhere on the bench. */

export interface DocumentActions {
  /** Takes back the last change, or does it again. */
  undo(again: boolean): void;
  save(): void;
}

type Keys = Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'metaKey' | 'shiftKey' | 'altKey'>;

/**
 * The keys go no farther: the editor would take them for the page itself, in which there is nothing to take back or to
 * save. Fields that are written in keep undo and redo.
 */
export function followDocumentKeys(page: HTMLElement, actions: DocumentActions): void {
  page.addEventListener('keydown', (event) => {
    const again = wantsRedo(event);
    const isUndo = again !== undefined && !isWrittenIn(event.target);
    if (!isUndo && !wantsSave(event)) return;
    event.preventDefault();
    event.stopPropagation();
    if (isUndo) actions.undo(again);
    else actions.save();
  });
}

export function wantsSave({ key, ctrlKey, metaKey, shiftKey, altKey }: Keys): boolean {
  return (ctrlKey || metaKey) && !shiftKey && !altKey && key.toLowerCase() === 's';
}

/** True for redo, false for undo, undefined for any other key. */
export function wantsRedo(event: Keys): boolean | undefined {
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
