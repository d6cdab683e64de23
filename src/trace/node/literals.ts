/** Finds the string and template literals of a program that may write start tags. */
import { type ParserOptions, parse } from '@babel/parser';

/** Where marks go in a literal, and what may be done there. Offsets in the program's text. */
export interface MarkedLiteral {
  /** `template`: may take a placeholder. `string`: may become a sum. `fixed`: must stay one literal. */
  readonly kind: 'template' | 'string' | 'fixed';
  readonly from: number;
  readonly to: number;
  /** The text between the quotes, or between placeholders: where it begins and ends. */
  readonly pieces: readonly { readonly from: number; readonly to: number }[];
}

/** Whatever follows a `<` and is worked out is a name: the mark goes behind it. */
export interface WorkedOutName {
  /** Where the `<` stands. */
  readonly at: number;
  readonly in: 'template' | 'sum' | 'fixed';
  /** What gives the name. */
  readonly from: number;
  readonly to: number;
}

export interface Literals {
  readonly literals: readonly MarkedLiteral[];
  readonly names: readonly WorkedOutName[];
  /** Names of elements that the program looks for in its own text in such a way that a mark would hide them. */
  readonly sought: ReadonlySet<string>;
}

interface Node {
  readonly type: string;
  readonly start: number;
  readonly end: number;
  readonly [key: string]: unknown;
}

/** Arguments of these are looked for, not written. */
const SEARCHES =
  /^(?:split|indexOf|lastIndexOf|includes|startsWith|endsWith|match|matchAll|search|test|exec|replace|replaceAll|RegExp)$/;
const LEFT_ALONE =
  /^(?:ImportDeclaration|ExportAllDeclaration|JSXText|JSXAttribute|TSLiteralType|TSEnumDeclaration|TSExternalModuleReference|Directive)$/;
const OTHER_LANGUAGES = /^(?:css|gql|graphql|sql)$/;

/**
 * @param file its ending tells the language
 * @returns undefined where the text cannot be read: the program is then left to say so
 */
export function literalsOf(source: string, file: string): Literals | undefined {
  try {
    const program = parse(source, optionsFor(file)).program as unknown as Node;
    return new LiteralFinder(source).find(program);
  } catch {
    return undefined;
  }
}

function optionsFor(file: string): ParserOptions {
  const typescript = /\.[cm]?tsx?$/.test(file);
  const jsx = !/\.[cm]?ts$/.test(file);
  return {
    sourceType: 'unambiguous',
    errorRecovery: true,
    attachComment: false,
    allowReturnOutsideFunction: true,
    plugins: [...(typescript ? (['typescript', 'decorators'] as const) : []), ...(jsx ? (['jsx'] as const) : [])],
  };
}

class LiteralFinder {
  private readonly literals: MarkedLiteral[] = [];
  private readonly names: WorkedOutName[] = [];
  private readonly sought = new Set<string>();

  private readonly source: string;

  constructor(source: string) {
    this.source = source;
  }

  find(program: Node): Literals {
    const waiting: Node[] = [program];
    for (let node = waiting.pop(); node; node = waiting.pop()) {
      if (LEFT_ALONE.test(node.type)) continue;
      this.look(node);
      for (const [key, child] of childrenOf(node)) if (!this.isSought(node, key, child)) waiting.push(child);
    }
    return { literals: this.literals, names: this.names, sought: this.sought };
  }

  private look(node: Node): void {
    if (node.type === 'StringLiteral') this.string(node, 'string');
    else if (node.type === 'TemplateLiteral') this.template(node, 'template');
    else if (node.type === 'RegExpLiteral') this.seek(node);
    else if (node.type === 'BinaryExpression' && node.operator === '+') this.sum(node);
    // A statement that begins with a bracket would go on with the line before.
    else if (node.type === 'ExpressionStatement') this.statements.add(node.start);
    else if (node.type === 'TaggedTemplateExpression') this.tagged(node);
  }

  /** Where statements begin. */
  private readonly statements = new Set<number>();
  private readonly ofTags = new Map<Node, 'fixed' | 'none'>();

  private string(node: Node, kind: 'string'): void {
    const quote = this.source[node.start];
    if (quote !== '"' && quote !== "'") return;
    const piece = { from: node.start + 1, to: node.end - 1 };
    const fixed = this.statements.has(node.start);
    this.literals.push({ kind: fixed ? 'fixed' : kind, from: node.start, to: node.end, pieces: [piece] });
  }

  private template(node: Node, kind: 'template'): void {
    const tag = this.ofTags.get(node);
    if (tag === 'none') return;
    const pieces = (node.quasis as Node[]).map(({ start, end }) => ({ from: start, to: end }));
    this.literals.push({ kind: tag ?? kind, from: node.start, to: node.end, pieces });
    for (const [index, { to }] of pieces.entries()) {
      const next = pieces[index + 1];
      if (!next || !/(?:^|[^\\])<$/.test(this.source.slice(Math.max(pieces[index]?.from ?? 0, to - 2), to))) continue;
      const follows = this.source.slice(next.from, next.to);
      const isName = /^(?:[\s/>]|$)/.test(follows);
      if (isName) this.names.push({ at: to - 1, in: tag ?? kind, from: to, to: next.from });
    }
  }

  /** `'<' + name + …` */
  private sum(node: Node): void {
    const left = node.left as Node;
    const right = node.right as Node;
    const before = left.type === 'BinaryExpression' ? (left.right as Node) : left;
    if (before.type !== 'StringLiteral' || right.type === 'StringLiteral') return;
    if (!this.source.slice(before.start + 1, before.end - 1).endsWith('<')) return;
    this.names.push({ at: before.end - 2, in: 'sum', from: right.start, to: right.end });
  }

  private tagged(node: Node): void {
    const { type, name } = node.tag as Node & { readonly name?: string };
    const other = type === 'Identifier' && OTHER_LANGUAGES.test(name ?? '');
    this.ofTags.set(node.quasi as Node, other ? 'none' : 'fixed');
  }

  /** Whether a child is compared or looked for rather than written; what it looks for is then noted. */
  private isSought(node: Node, key: string, child: Node): boolean {
    if (!isCompared(node, key) && !isSearch(node, key, child)) return false;
    if (child.type !== 'StringLiteral' && child.type !== 'TemplateLiteral' && child.type !== 'RegExpLiteral')
      return false;
    this.seek(child);
    return true;
  }

  private seek({ start, end }: Node): void {
    const pattern = /<([A-Za-z][\w:.-]*)(?=\s*\/?>|\s+[^\s'"`/]|\\s[*+]?[^\s/])/g;
    for (const [, name] of this.source.slice(start, end).matchAll(pattern)) if (name) this.sought.add(name);
  }
}

function isCompared(node: Node, key: string): boolean {
  if (node.type === 'BinaryExpression') return /^[!=]==?$/.test(String(node.operator));
  if (node.type === 'SwitchCase') return key === 'test';
  if (key === 'key') return true;
  return key === 'property' && node.type.endsWith('MemberExpression');
}

function isSearch(node: Node, key: string, child: Node): boolean {
  if (key !== 'arguments') return false;
  const callee = node.callee as Node & { readonly name?: string; readonly property?: { readonly name?: string } };
  const name = callee.property?.name ?? callee.name ?? '';
  return SEARCHES.test(name) && (node.arguments as Node[])[0] === child;
}

function* childrenOf(node: Node): Generator<readonly [string, Node]> {
  for (const [key, value] of Object.entries(node)) {
    if (key === 'loc' || key === 'extra' || key === 'errors') continue;
    for (const child of Array.isArray(value) ? (value as unknown[]) : [value]) {
      if (isNode(child)) yield [key, child];
    }
  }
}

function isNode(value: unknown): value is Node {
  return typeof value === 'object' && value !== null && typeof (value as Node).type === 'string';
}
