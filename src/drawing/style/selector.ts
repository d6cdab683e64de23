/** What css-tree's selectors tell before any element is looked at: their weight, and whether they are plain. */
import type { CssNode, Selector } from 'css-tree';

/** The counts of ids; of classes, attributes and pseudo-classes; of types and pseudo-elements, packed in one number. */
export type Specificity = number;

const ID = 1 << 20;
const CLASS = 1 << 10;
const TYPE = 1;

/** Selectors 4, "Calculating a selector's specificity". Counts above 1023 count as 1023. */
export function specificityOf(selector: Selector): Specificity {
  const counts = countsOf(selector, 0);
  const [ids, classes, types] = counts.map((count) => Math.min(count, 1023));
  return (ids ?? 0) * ID + (classes ?? 0) * CLASS + (types ?? 0) * TYPE;
}

type Counts = readonly [number, number, number];

/** Selectors within selectors deeper than this weigh nothing. */
const MAX_NESTING = 16;

function countsOf(selector: Selector, depth: number): Counts {
  let counts: Counts = [0, 0, 0];
  for (const part of selector.children) counts = add(counts, partCounts(part, depth));
  return counts;
}

function partCounts(part: CssNode, depth: number): Counts {
  switch (part.type) {
    case 'IdSelector':
      return [1, 0, 0];
    case 'ClassSelector':
    case 'AttributeSelector':
      return [0, 1, 0];
    case 'TypeSelector':
      return part.name === '*' || part.name.endsWith('|*') ? [0, 0, 0] : [0, 0, 1];
    case 'PseudoElementSelector':
      return [0, 0, 1];
    case 'PseudoClassSelector':
      return pseudoClassCounts(part.name.toLowerCase(), part.children ?? [], depth);
    default:
      return [0, 0, 0];
  }
}

function pseudoClassCounts(name: string, children: Iterable<CssNode>, depth: number): Counts {
  if (name === 'where') return [0, 0, 0];
  if (depth >= MAX_NESTING) return [0, 1, 0];
  if (name === 'is' || name === 'not' || name === 'has' || name === 'matches') return heaviest(children, depth + 1);
  if (name === 'nth-child' || name === 'nth-last-child') return add([0, 1, 0], heaviest(children, depth + 1));
  return [0, 1, 0];
}

function heaviest(nodes: Iterable<CssNode>, depth: number): Counts {
  let best: Counts = [0, 0, 0];
  for (const node of nodes) {
    let counts: Counts = [0, 0, 0];
    if (node.type === 'Selector') counts = countsOf(node, depth);
    else if (node.type === 'SelectorList') counts = heaviest(node.children, depth);
    else if (node.type === 'Nth' && node.selector) counts = heaviest(node.selector.children, depth);
    if (compare(counts, best) > 0) best = counts;
  }
  return best;
}

function compare(a: Counts, b: Counts): number {
  return a[0] - b[0] || a[1] - b[1] || a[2] - b[2];
}

function add(a: Counts, b: Counts): Counts {
  return [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
}

/** `*|rect` asks for any namespace, which is all that can be asked for without `@namespace`: it is `rect`. */
function typeName(written: string): readonly string[] {
  const name = written.startsWith('*|') ? written.slice(2) : written;
  return name === '*' ? [] : [name];
}

/** The selector without `*|`, which says nothing more and which css-select does not read. */
export function withoutAnyNamespace(text: string): string {
  return text.replace(/(^|[\s>+~(,])\*\|/g, '$1');
}

/** What the last compound of a selector asks for by name. */
export interface Compound {
  readonly id: string | undefined;
  readonly classes: readonly string[];
  readonly type: string | undefined;
  /** True where the whole selector is this compound: names alone decide. */
  readonly whole: boolean;
}

export function lastCompound(selector: Selector): Compound {
  const parts = [...selector.children];
  const cut = parts.findLastIndex((part) => part.type === 'Combinator');
  const last = parts.slice(cut + 1);
  const types = last.flatMap((part) => (part.type === 'TypeSelector' ? typeName(part.name) : []));
  const ids = last.flatMap((part) => (part.type === 'IdSelector' ? [part.name] : []));
  const plain = last.every((part) => ['TypeSelector', 'ClassSelector', 'IdSelector'].includes(part.type));
  const namespaced = types.some((name) => name.includes('|'));
  return {
    id: ids[0],
    classes: last.flatMap((part) => (part.type === 'ClassSelector' ? [part.name] : [])),
    type: namespaced ? undefined : types[0],
    whole: cut < 0 && plain && ids.length < 2 && !namespaced,
  };
}
