/** What stands in the toolbar of the bench and in its menu. */
import type { ViewMode } from '../picture/scene';
import type { PreviewStack } from '../protocol/index';
import { html } from './dom/dom';
import { whyNoPlan } from './panels/bridge-layer';
import type { Command, CommandGroup } from './panels/command';
import { Toolbar, type ToolbarGroup } from './panels/toolbar';
import type { BenchState } from './state/state';

/** What the commands read and do. */
export interface BenchControls {
  state(): BenchState;
  stack(): PreviewStack | undefined;
  pinned(): boolean;
  areaShown(): boolean;
  mode(mode: ViewMode): void;
  zoom(factor: number): void;
  fit(): void;
  trueSize(): void;
  marks(): void;
  pin(): void;
  saveAs(): void;
  writeCut(): void;
  writeJob(): void;
  showArea(): void;
  /** Plans the bridges of the layer in hand. */
  planLayer(): void;
  calibrate(): void;
}

const VIEWS: readonly { readonly mode: ViewMode; readonly name: string; readonly icon: string; hint: string }[] = [
  { mode: 'print', name: 'Print', icon: 'paintcan', hint: 'all layers, sprayed in order' },
  { mode: 'sheet', name: 'Single sheet', icon: 'file', hint: 'one layer as it comes from the cutter' },
  { mode: 'sheets', name: 'All sheets', icon: 'files', hint: 'side by side, in spray order' },
];

/**
 * @param nearness shows how large the picture is
 * @param options opens below its button
 */
export function benchToolbar(
  controls: BenchControls,
  tools: CommandGroup,
  nearness: HTMLElement,
  options: HTMLElement,
): Toolbar {
  const groups: ToolbarGroup[] = [
    { name: 'View', rank: 5, commands: viewCommands(controls) },
    { ...tools, rank: 4 },
    { name: 'Zoom', rank: 2, figure: nearness, commands: zoomCommands(controls) },
    { name: 'Size', rank: 1, commands: sizeCommands(controls) },
    { name: 'Marks', rank: 3, commands: [marksCommand(controls)] },
  ];
  const button: Command = { name: 'Display options', icon: 'settings', kind: 'action', run: () => undefined };
  return new Toolbar(groups, { button, panel: options }, menuCommands(controls));
}

/** How large the picture is on the screen, for the toolbar. */
export const makeNearness = (): HTMLElement =>
  html('output', { class: 'nearness', 'aria-label': 'Size on the screen' });

function viewCommands({ state, mode }: BenchControls): Command[] {
  return VIEWS.map(({ mode: view, ...words }) => ({
    ...words,
    kind: 'choice',
    isOn: () => state().mode === view,
    run: () => mode(view),
  }));
}

function zoomCommands({ zoom }: BenchControls): Command[] {
  return [
    { name: 'Zoom out', icon: 'zoom-out', key: '−', kind: 'action', run: () => zoom(1 / 1.25) },
    { name: 'Zoom in', icon: 'zoom-in', key: '+', kind: 'action', run: () => zoom(1.25) },
  ];
}

function sizeCommands({ fit, trueSize }: BenchControls): Command[] {
  return [
    { name: 'Fit to window', icon: 'screen-full', key: '0', kind: 'action', run: fit },
    { name: 'Actual size', icon: 'screen-normal', kind: 'action', run: trueSize },
  ];
}

function marksCommand({ state, marks }: BenchControls): Command {
  return {
    name: 'Marks',
    icon: 'eye',
    hint: 'show the findings on the picture',
    key: 'H',
    kind: 'toggle',
    isOn: () => state().marks,
    run: marks,
  };
}

function layerCommand({ state, stack, planLayer }: BenchControls): Command {
  return {
    name: 'Bridge layer by style…',
    icon: 'link',
    key: 'L',
    kind: 'action',
    isThere: () => {
      const now = stack();
      return now !== undefined && whyNoPlan(now, state().sheet) === undefined;
    },
    run: planLayer,
  };
}

function menuCommands(controls: BenchControls): Command[][] {
  const { stack, pinned, areaShown, pin, saveAs, writeCut, writeJob, showArea, calibrate } = controls;
  return [
    [
      {
        name: 'Cutting area',
        icon: 'screen-cut',
        kind: 'toggle',
        isOn: areaShown,
        isThere: () => stack()?.bed !== undefined,
        run: showArea,
      },
      { name: 'Calibrate screen…', icon: 'symbol-ruler', kind: 'action', run: calibrate },
    ],
    [layerCommand(controls)],
    [
      {
        name: 'Write cut files…',
        icon: 'go-to-file',
        hint: 'for the cutter, one for each sheet',
        kind: 'action',
        run: writeCut,
      },
      {
        name: 'Page for the wall…',
        icon: 'checklist',
        hint: 'what is needed while spraying',
        kind: 'action',
        run: writeJob,
      },
    ],
    [
      { name: 'Keep showing this file', icon: 'pin', kind: 'toggle', isOn: pinned, run: pin },
      { name: 'Save picture…', icon: 'save', hint: 'as PNG or SVG', kind: 'action', run: saveAs },
    ],
  ];
}
