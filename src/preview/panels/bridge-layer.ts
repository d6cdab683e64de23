/** Below the layers: plans the bridges of the layer that is in hand. */
import type { PreviewStack } from '../../protocol/index';
import { html, setAttributes, setText } from '../dom/dom';

export class BridgeLayerButton {
  readonly element = html('button', { type: 'button', class: 'tool bridge-layer', 'aria-keyshortcuts': 'L' });
  private reason: string | undefined;

  constructor(plan: () => void) {
    this.element.addEventListener('click', () => {
      if (this.reason === undefined) plan();
    });
  }

  /** @param sheet the index of the layer that is in hand */
  draw(stack: PreviewStack, { sheet }: { readonly sheet: number }): void {
    const layer = stack.layers[sheet];
    this.reason = whyNoPlan(stack, sheet);
    // A button that is disabled outright loses the focus, and nobody hears why.
    setAttributes(this.element, {
      'aria-disabled': String(this.reason !== undefined),
      title: this.reason ?? `Plan the bridges of "${layer?.name}" in a style, and see them before they are added (L)`,
    });
    setText(this.element, `Bridge "${layer?.name ?? ''}"…`);
    this.element.hidden = layer === undefined;
  }
}

/** Why there is nothing to plan for a layer; undefined where there is. */
export function whyNoPlan({ layers }: PreviewStack, sheet: number): string | undefined {
  const layer = layers[sheet];
  if (!layer) return 'There is no layer.';
  return layer.islands.length === 0 ? `"${layer.name}" has no islands.` : undefined;
}
