/** The bar below the picture while the bridges of a layer are planned: how they look, what would be put in, what stays. */
import type { BridgeStyle } from '../../config/bridge-style';
import { html, setAttributes, setText, syncChildren } from '../dom/dom';
import { LeftIslands, type ToldIsland } from './left-islands';
import { StyleChoice } from './style-choice';

export interface PlanBarContent {
  /** The layer's. */
  readonly name: string;
  readonly sentence: string;
  readonly tone: 'plain' | 'busy' | 'refused';
  readonly style: BridgeStyle | undefined;
  /** How many would be put in; 0 where there is nothing to have. */
  readonly bridges: number;
  /** Whether another style than the project's can be kept there. */
  readonly keepable: boolean;
  /** Whether a bridge stands elsewhere than it was planned. */
  readonly moved: boolean;
  /** What comes with the bridges, a sentence each. */
  readonly told: readonly string[];
  readonly left: readonly ToldIsland[];
}

export interface PlanBarActions {
  choose(style: BridgeStyle): void;
  apply(): void;
  cancel(): void;
  /** Puts all bridges back where they were planned. */
  reset(): void;
  show(island: ToldIsland): void;
}

const ICONS = { plain: 'link', busy: 'loading codicon-modifier-spin', refused: 'error' } as const;

export class PlanBar {
  readonly element: HTMLElement;
  private readonly icon = html('span', { 'aria-hidden': 'true' });
  private readonly sentence = html('span');
  private readonly styles: StyleChoice;
  private readonly keepBox = html('input', { type: 'checkbox' });
  private readonly keepLabel = html('label', { class: 'keep-style' }, [this.keepBox, 'Keep style']);
  private readonly applyButton = html('button', { type: 'button', class: 'tool primary' });
  private readonly resetButton = html(
    'button',
    { type: 'button', class: 'tool', title: 'Put all bridges back where they were planned' },
    ['Reset'],
  );
  private readonly told = html('ul', { class: 'plan-told' });
  private readonly left: LeftIslands;

  constructor(actions: PlanBarActions) {
    const cancel = html('button', { type: 'button', class: 'tool' }, ['Cancel']);
    this.applyButton.addEventListener('click', () => this.applyButton.ariaDisabled !== 'true' && actions.apply());
    cancel.addEventListener('click', () => actions.cancel());
    this.resetButton.addEventListener('click', () => actions.reset());
    this.styles = new StyleChoice((style) => actions.choose(style));
    this.left = new LeftIslands((island) => actions.show(island));
    this.element = html('div', { class: 'plan-bar', role: 'group' }, [
      html('p', {}, [this.icon, this.sentence]),
      this.styles.element,
      this.keepLabel,
      html('div', { class: 'plan-buttons' }, [this.resetButton, this.applyButton, cancel]),
      this.told,
      this.left.element,
    ]);
    this.element.hidden = true;
    this.element.addEventListener('keydown', (event) => this.followKeys(event, actions));
  }

  /** @param content undefined takes the bar away */
  draw(content: PlanBarContent | undefined): void {
    this.element.hidden = content === undefined;
    if (!content) return;
    const { name, sentence, tone, style, bridges, keepable, moved, told, left } = content;
    setAttributes(this.element, { 'aria-label': `Bridges of "${name}"`, 'data-tone': tone });
    setAttributes(this.icon, { class: `codicon codicon-${ICONS[tone]}` });
    setText(this.sentence, sentence);
    this.styles.draw(style);
    this.drawKeep(name, keepable);
    // It keeps the focus where it has it: a button that is disabled outright would lose it.
    setAttributes(this.applyButton, { 'aria-disabled': String(bridges === 0) });
    setText(this.applyButton, bridges === 1 ? 'Add bridge' : 'Add bridges');
    this.resetButton.hidden = !moved;
    this.told.hidden = told.length === 0;
    syncChildren(
      this.told,
      told,
      () => html('li'),
      (line, sentence) => setText(line, sentence),
    );
    this.left.draw(left);
  }

  private drawKeep(name: string, keepable: boolean): void {
    const words = `Keep style for "${name}" in tombolo.json`;
    setAttributes(this.keepBox, { 'aria-label': words });
    setAttributes(this.keepLabel, { title: words });
    // Once it was there it keeps its room: the picture shall not jump with every style.
    if (keepable) this.keepLabel.hidden = false;
    this.keepLabel.style.visibility = keepable ? '' : 'hidden';
  }

  /** Whether the style is to be kept. */
  get keeps(): boolean {
    return this.keepBox.checked && this.keepLabel.checkVisibility({ visibilityProperty: true });
  }

  /** For a plan of another layer nothing is chosen yet. */
  begin(): void {
    this.keepBox.checked = false;
    this.keepLabel.hidden = true;
  }

  focus(): void {
    this.styles.focus();
  }

  private followKeys(event: KeyboardEvent, actions: PlanBarActions): void {
    const { key, target } = event;
    const pressed = target instanceof Element && target.matches('button, summary');
    if (key === 'Escape') actions.cancel();
    else if (key === 'Enter' && !pressed) actions.apply();
    else return;
    event.preventDefault();
    event.stopPropagation();
  }
}
