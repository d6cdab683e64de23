/** Writes the style of a layer's bridges into `tombolo.json`, and leaves all else of it as it is. */
import { findNodeAtLocation, modify, parseTree } from 'jsonc-parser';
import type { TextEdit } from '../text/text';
import { AUTO_STYLES, type BridgeStyle, type BridgeStyles, bridgeStyleOf } from './bridge-style';

/**
 * @param text of `tombolo.json`; its comments and its layout stay
 * @param bridges what it says now
 * @param layer by its name
 * @returns edits of the text; none where it says so already
 */
export function styleEdits(text: string, bridges: BridgeStyles, layer: string, style: BridgeStyle): TextEdit[] {
  if (bridgeStyleOf({ bridges }, layer) === style) return [];
  // What all layers have needs no word of its own.
  const value = style === bridges.style ? undefined : style;
  return setting(text, bridges, layer, value).map(({ offset, length, content }) => ({
    span: { from: offset, to: offset + length },
    text: content,
  }));
}

function setting(text: string, bridges: BridgeStyles, layer: string, value: BridgeStyle | undefined) {
  const root = parseTree(text);
  const node = root && findNodeAtLocation(root, ['bridges']);
  const formattingOptions = { ...layoutOf(text), eol: text.includes('\r\n') ? '\r\n' : '\n' };
  const options = { formattingOptions };
  if (node?.type === 'object') {
    const isLast = value === undefined && Object.keys(bridges.layers).length === 1;
    return modify(text, isLast ? ['bridges', 'layers'] : ['bridges', 'layers', layer], value, options);
  }
  const all = bridges.style === AUTO_STYLES.style ? {} : { style: bridges.style };
  return modify(text, ['bridges'], { ...all, layers: { [layer]: value } }, options);
}

/** As the text is laid out: by the white space before its first key that stands on a line of its own. */
function layoutOf(text: string): { readonly insertSpaces: boolean; readonly tabSize: number } {
  const before = /\n([ \t]+)"/.exec(text)?.[1] ?? '  ';
  return before.includes('\t') ? { insertSpaces: false, tabSize: 2 } : { insertSpaces: true, tabSize: before.length };
}
