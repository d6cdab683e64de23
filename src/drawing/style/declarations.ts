/** CSS text taken apart by css-tree: declarations of `style` attributes, rules of style sheets. */

import type { CssNode, Rule, Selector } from 'css-tree';
import parse from 'css-tree/parser';
import { Comment, tokenize } from 'css-tree/tokenizer';
import { MARKUP_ROOM, quoted, shortened } from '../../text/wording';

export interface Declaration {
  /** In lower case, but for custom properties. */
  readonly property: string;
  /** As written, without comments and without `!important`. */
  readonly value: string;
  readonly important: boolean;
}

export interface StyleRule {
  readonly selectors: readonly ParsedSelector[];
  readonly declarations: readonly Declaration[];
}

export interface ParsedSelector {
  readonly text: string;
  readonly node: Selector;
}

export interface StyleSheet {
  readonly rules: readonly StyleRule[];
  /** What was not taken, as a sentence each. */
  readonly notes: readonly string[];
}

/** Only rules and selectors are taken apart. */
const AS_WRITTEN = {
  parseValue: false,
  parseCustomProperty: false,
  parseAtrulePrelude: false,
  positions: true,
} as const;

/** Reads what a `style` attribute holds. Declarations that are not well formed are left out, as CSS asks. */
export function parseDeclarations(text: string): readonly Declaration[] {
  const list = parse(text, { ...AS_WRITTEN, context: 'declarationList' });
  return list.type === 'DeclarationList' ? readDeclarations(list.children) : [];
}

function readDeclarations(nodes: Iterable<CssNode>): readonly Declaration[] {
  const declarations: Declaration[] = [];
  for (const node of nodes) {
    if (node.type !== 'Declaration') continue;
    const custom = node.property.startsWith('--');
    const raw = node.value.type === 'Raw' ? node.value.value : '';
    declarations.push({
      property: custom ? node.property : node.property.toLowerCase(),
      value: raw.replace(/\/\*[\s\S]*?\*\//g, ' ').trim(),
      important: node.important !== false,
    });
  }
  return declarations;
}

/** Reads a style sheet. Rules for media other than a screen are left out; what cannot be honoured is noted. */
export function parseStyleSheet(text: string): StyleSheet {
  const rules: StyleRule[] = [];
  const notes: string[] = [];
  const sheet = parse(text, AS_WRITTEN);
  if (sheet.type === 'StyleSheet') readRules(text, sheet.children, rules, notes, 0);
  return { rules, notes };
}

/** Nested conditional rules deeper than this are not followed. */
const MAX_NESTING = 32;

function readRules(text: string, nodes: Iterable<CssNode>, rules: StyleRule[], notes: string[], depth: number): void {
  for (const node of nodes) {
    if (node.type === 'Rule') readRule(text, node, rules, notes);
    else if (node.type === 'Atrule') {
      const name = node.name.toLowerCase();
      const prelude = node.prelude ? written(text, node.prelude) : '';
      if (name === 'media' && node.block && depth < MAX_NESTING) {
        if (appliesToScreen(prelude)) readRules(text, node.block.children, rules, notes, depth + 1);
        else if (!/^\s*(print|speech|aural|braille|tty)\s*$/i.test(prelude)) {
          notes.push(
            `The rules in @media ${shortened(prelude, MARKUP_ROOM)} are not followed: only those for screen and all are.`,
          );
        }
      } else if (!['charset', 'font-face', 'namespace', 'keyframes', '-webkit-keyframes', 'page'].includes(name)) {
        notes.push(`@${shortened(node.name, MARKUP_ROOM)} is not followed: its rules are left out.`);
      }
    }
  }
}

/** Whether a media query list is met by a still picture on a screen, as far as media types tell. */
export function appliesToScreen(query: string): boolean {
  return query.trim() === '' || query.split(',').some((part) => /^\s*(only\s+)?(all|screen)\s*$/i.test(part));
}

function readRule(text: string, rule: Rule, rules: StyleRule[], notes: string[]): void {
  if (rule.prelude.type !== 'SelectorList') {
    notes.push(
      `The selector ${quoted([written(text, rule.prelude)], MARKUP_ROOM)[0]} cannot be read: its rule is left out.`,
    );
    return;
  }
  const selectors: ParsedSelector[] = [];
  for (const node of rule.prelude.children) {
    if (node.type === 'Selector') selectors.push({ text: written(text, node), node });
  }
  rules.push({ selectors, declarations: readDeclarations(rule.block.children) });
}

/** The text of a node without its comments. */
function written(text: string, { loc }: CssNode): string {
  const whole = text.slice(loc?.start.offset ?? 0, loc?.end.offset ?? 0);
  let kept = '';
  tokenize(whole, (type, start, end) => {
    if (type !== Comment) kept += whole.slice(start, end);
  });
  return kept.trim();
}
