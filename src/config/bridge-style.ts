/** How the bridges of a layer are to look, as `tombolo.json` and `tombolo bridge --style` say it. */
import type { Node } from 'jsonc-parser';
import { type Decoder, decodeEntries, decodeFields, decodeOneOf, decodeWord, type ReportProblem } from './decode';

/** `auto` is as the drawing itself asks for: upright in lettering, mirrored where it is mirrored, else the calmest. */
export const BRIDGE_STYLES = ['auto', 'upright', 'level', 'shortest', 'fewest', 'hidden'] as const;
export type BridgeStyle = (typeof BRIDGE_STYLES)[number];

/** `rounded` fills the sharp inner corners where a bridge meets its banks, at which it would tear. */
export const BRIDGE_ROOTS = ['square', 'rounded'] as const;
export type BridgeRoots = (typeof BRIDGE_ROOTS)[number];

export interface BridgeStyles {
  /** Of layers that have none of their own. */
  readonly style: BridgeStyle;
  /** By the names of layers. */
  readonly layers: Readonly<Record<string, BridgeStyle>>;
  /** By default `square`. */
  readonly roots?: BridgeRoots;
  /** The file of a plan whose bridges every new build of the drawing gets, relative to `tombolo.json`. */
  readonly plan?: string;
}

export const AUTO_STYLES: BridgeStyles = { style: 'auto', layers: {} };

/** @param layer its name */
export function bridgeStyleOf({ bridges }: { readonly bridges: BridgeStyles }, layer: string): BridgeStyle {
  const own = Object.hasOwn(bridges.layers, layer) ? bridges.layers[layer] : undefined;
  return own ?? bridges.style;
}

// Made when it is asked for: who reads no configuration does not carry what reads it.
const decodeStyle: Decoder<BridgeStyle> = (node, report) =>
  decodeOneOf(BRIDGE_STYLES, 'style of bridges')(node, report);

const decodeRoots: Decoder<BridgeRoots> = (node, report) => decodeOneOf(BRIDGE_ROOTS, 'form of roots')(node, report);

/** One style for all, or an object with `style` for all and `layers` for some. */
export const decodeBridges: Decoder<BridgeStyles> = (node, report) => {
  if (node.type !== 'object') {
    const style = decodeStyle(node, report);
    return style && { ...AUTO_STYLES, style };
  }
  let { style, layers } = AUTO_STYLES;
  let roots: BridgeRoots | undefined;
  let plan: string | undefined;
  decodeFields(node, 'bridges', report, {
    style: (value) => {
      style = decodeStyle(value, report) ?? style;
    },
    layers: (value) => {
      layers = decodeLayers(value, report);
    },
    roots: (value) => {
      roots = decodeRoots(value, report);
    },
    plan: (value) => {
      plan = decodeWord(value, report);
    },
  });
  return { style, layers, ...(roots && { roots }), ...(plan !== undefined && { plan }) };
};

function decodeLayers(node: Node, report: ReportProblem): BridgeStyles['layers'] {
  const layers: [string, BridgeStyle][] = [];
  decodeEntries(node, 'the layers of "bridges"', report, (_, name, value) => {
    const style = decodeStyle(value, report);
    if (style) layers.push([name, style]);
  });
  return Object.fromEntries(layers);
}
