/** What the artist has chosen to see. */
import type { ViewMode } from '../../picture/scene';
import type { PreviewFinding, PreviewStack } from '../../protocol/index';
import type { Slip } from './slip';

export interface BenchState {
  readonly mode: ViewMode;
  /** The layer whose sheet is shown in `sheet` mode. */
  readonly sheet: number;
  /** Keys of layers that are switched off where several are shown. */
  readonly hidden: readonly string[];
  /** Number of the finding that was last chosen. */
  readonly selected: number | undefined;
  /** Whether findings are marked on the picture. */
  readonly marks: boolean;
  /** Which findings are left out of list and picture. */
  readonly filter: FindingFilter;
  /** What is painted on, `#rrggbb`; undefined for what the project says, else the usual. */
  readonly ground: string | undefined;
  /** Of each coat of paint, 0..1. */
  readonly opacity: number;
  /** Step between sheets that are spread apart, 0..1; undefined for side by side. */
  readonly apart: number | undefined;
  /** By layer key: how far each sheet has slipped. */
  readonly slips: Readonly<Record<string, Slip>>;
  /** Whether a drag on the print shifts the layer that it begins on. */
  readonly slipping: boolean;
  /** Key of the layer that sliders and keys shift. */
  readonly held: string | undefined;
}

/** Checks, and layers by their keys. */
export interface FindingFilter {
  readonly checks: readonly string[];
  readonly layers: readonly string[];
}

export const NO_FILTER: FindingFilter = { checks: [], layers: [] };

export const FIRST_STATE: BenchState = {
  mode: 'print',
  sheet: 0,
  hidden: [],
  selected: undefined,
  marks: true,
  filter: NO_FILTER,
  ground: undefined,
  opacity: 1,
  apart: undefined,
  slips: {},
  slipping: false,
  held: undefined,
};

/** What tells a stack's layers apart, in their order: the name, counted where several have the same. */
export function layerKeys({ layers }: PreviewStack): string[] {
  const count = new Map<string, number>();
  return layers.map(({ name }) => {
    const times = (count.get(name) ?? 0) + 1;
    count.set(name, times);
    return times === 1 ? name : `${name} (${times})`;
  });
}

export function isLayerShown({ mode, sheet, hidden }: BenchState, stack: PreviewStack, index: number): boolean {
  if (mode === 'sheet') return index === sheet;
  return !hidden.includes(layerKeys(stack)[index] ?? '');
}

/** Findings about the whole file show with any layer. */
export function isFindingShown(state: BenchState, stack: PreviewStack, { check, layer }: PreviewFinding): boolean {
  const { checks, layers } = state.filter;
  if (checks.includes(check)) return false;
  return layer === undefined || (isLayerShown(state, stack, layer) && !layers.includes(layerKeys(stack)[layer] ?? ''));
}

/** The state for a newer stack. It may have other layers; what was chosen stays so as long as it is there. */
export function carryOver(state: BenchState, before: PreviewStack | undefined, stack: PreviewStack): BenchState {
  const selected = stack.findings.some(({ number }) => number === state.selected) ? state.selected : undefined;
  return { ...state, sheet: carriedSheet(state, before, stack), selected };
}

/** The sheet that was looked at stays the one, though layers change their order. */
function carriedSheet({ sheet }: BenchState, before: PreviewStack | undefined, stack: PreviewStack): number {
  const key = before && layerKeys(before)[sheet];
  const found = key === undefined ? -1 : layerKeys(stack).indexOf(key);
  return found >= 0 ? found : Math.min(sheet, Math.max(stack.layers.length - 1, 0));
}

/** A state that was kept by an earlier version of the page, or by nobody: whatever does not fit is as at first. */
export function restoredState(kept: unknown): BenchState {
  if (typeof kept !== 'object' || kept === null) return FIRST_STATE;
  const known = kept as Partial<Record<keyof BenchState, unknown>>;
  const words = (value: unknown) => (Array.isArray(value) ? value.filter((word) => typeof word === 'string') : []);
  const share = (value: unknown) => (typeof value === 'number' && value >= 0 && value <= 1 ? value : undefined);
  return {
    ...FIRST_STATE,
    mode: known.mode === 'sheet' || known.mode === 'sheets' ? known.mode : 'print',
    sheet: typeof known.sheet === 'number' && known.sheet >= 0 ? Math.floor(known.sheet) : 0,
    hidden: words(known.hidden),
    selected: typeof known.selected === 'number' ? known.selected : undefined,
    marks: known.marks !== false,
    filter: restoredFilter(known.filter, words),
    ground: typeof known.ground === 'string' && /^#[0-9a-f]{6}$/i.test(known.ground) ? known.ground : undefined,
    opacity: share(known.opacity) ?? 1,
    apart: share(known.apart),
    slips: restoredSlips(known.slips),
    held: typeof known.held === 'string' ? known.held : undefined,
  };
}

function restoredFilter(kept: unknown, words: (value: unknown) => string[]): FindingFilter {
  if (typeof kept !== 'object' || kept === null) return NO_FILTER;
  const { checks, layers } = kept as Partial<Record<keyof FindingFilter, unknown>>;
  return { checks: words(checks), layers: words(layers) };
}

function restoredSlips(kept: unknown): BenchState['slips'] {
  if (typeof kept !== 'object' || kept === null) return {};
  const isSlip = (value: unknown): value is Slip => {
    const { x, y, turn } = value as Partial<Slip>;
    return [x, y, turn].every((part) => typeof part === 'number' && Number.isFinite(part));
  };
  return Object.fromEntries(Object.entries(kept).filter(([, value]) => value !== null && isSlip(value)));
}
