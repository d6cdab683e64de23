/** Small helpers to make elements and to keep lists of them up to date without making them anew. */
import { SVG_NAMESPACE } from '../../markup/namespaces';

type Attributes = Readonly<Record<string, string | number>>;

export function html<K extends keyof HTMLElementTagNameMap>(
  name: K,
  attributes: Attributes = {},
  children: readonly (Node | string)[] = [],
): HTMLElementTagNameMap[K] {
  const made = document.createElement(name);
  setAttributes(made, attributes);
  made.append(...children);
  return made;
}

export function svg<K extends keyof SVGElementTagNameMap>(
  name: K,
  attributes: Attributes = {},
  children: readonly Node[] = [],
): SVGElementTagNameMap[K] {
  const made = document.createElementNS(SVG_NAMESPACE, name);
  setAttributes(made, attributes);
  made.append(...children);
  return made;
}

/** Writes only what differs. */
export function setAttributes(element: Element, attributes: Attributes): void {
  for (const [name, value] of Object.entries(attributes)) {
    const text = String(value);
    if (element.getAttribute(name) !== text) element.setAttribute(name, text);
  }
}

export function setText(element: Element, text: string): void {
  if (element.textContent !== text) element.textContent = text;
}

/** Gives `parent` one child for each item: those that are there are updated, missing ones made, others removed. */
export function syncChildren<Item, Child extends Element>(
  parent: Element,
  items: readonly Item[],
  make: () => Child,
  update: (child: Child, item: Item, index: number) => void,
): void {
  while (parent.children.length > items.length) parent.lastElementChild?.remove();
  while (parent.children.length < items.length) parent.append(make());
  items.forEach((item, index) => update(parent.children[index] as Child, item, index));
}
