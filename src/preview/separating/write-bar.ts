/** The end of it: where the sheets go, and the button that writes them. */
import { count } from '../../config/values';
import { html, setAttributes, setText } from '../dom/dom';
import { checkbox } from './dial-panel';

export interface WriteActions {
  write(): void;
  stop(): void;
  chooseFolder(): void;
  bridges(wanted: boolean): void;
}

export class WriteBar {
  private readonly actions: WriteActions;
  private readonly folder = html('span', { class: 'folder' });
  private readonly bridges: ReturnType<typeof checkbox>;
  private readonly bridgesNote = html('span', { class: 'note' });
  private readonly button = html('button', { type: 'button', class: 'tool primary write' });
  private readonly said = html('p', { class: 'state', role: 'status' });
  readonly element: HTMLElement;
  private isWriting = false;

  constructor(actions: WriteActions) {
    this.actions = actions;
    this.bridges = checkbox('Add the bridges that islands need', (on) => actions.bridges(on));
    this.bridges.element.append(this.bridgesNote);
    const change = html('button', { type: 'button', class: 'tool', 'aria-label': 'Change the folder' }, ['Change…']);
    change.addEventListener('click', () => actions.chooseFolder());
    this.button.addEventListener('click', () => (this.isWriting ? this.actions.stop() : this.actions.write()));
    this.element = html('section', { class: 'write-bar', 'aria-label': 'Write the sheets' }, [
      this.bridges.element,
      html('p', { class: 'folder-row' }, ['To ', this.folder, change]),
      this.button,
      this.said,
    ]);
    this.showWriting(false, '');
  }

  show(bridges: boolean, islands: number): void {
    this.bridges.input.checked = bridges;
    setText(this.bridgesNote, islands === 0 ? '' : ` (${count(islands, 'island')})`);
  }

  showFolder(folder: string): void {
    setText(this.folder, folder);
    setAttributes(this.folder, { title: folder });
  }

  showWriting(isWriting: boolean, said: string): void {
    this.isWriting = isWriting;
    setText(this.button, isWriting ? 'Stop' : 'Write the sheets');
    setText(this.said, said);
  }
}
