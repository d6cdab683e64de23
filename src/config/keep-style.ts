/** Writes the style of a layer's bridges into `tombolo.json`. */
import { findNodeAtLocation, parseTree } from 'jsonc-parser';
import type { TextEdit } from '../text/text';
import { AUTO_STYLES, type BridgeStyle, type BridgeStyles, bridgeStyleOf } from './bridge-style';
import { configEdits } from './edit-config';

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
  const root = parseTree(text);
  const node = root && findNodeAtLocation(root, ['bridges']);
  if (node?.type === 'object') {
    const isLast = value === undefined && Object.keys(bridges.layers).length === 1;
    return configEdits(text, isLast ? ['bridges', 'layers'] : ['bridges', 'layers', layer], value);
  }
  const all = bridges.style === AUTO_STYLES.style ? {} : { style: bridges.style };
  return configEdits(text, ['bridges'], { ...all, layers: { [layer]: value } });
}
