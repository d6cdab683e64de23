/** What stands beside the picture: the layers, the misregistration, the cutting and the findings. */
import type { PreviewStack } from '../../protocol/index';
import { CutPanel, type ShownCourse } from '../cutting/cut-panel';
import { html } from '../dom/dom';
import type { Arrangement } from '../state/arrangement';
import type { BenchRequests } from '../state/requests';
import type { Slip } from '../state/slip';
import { type BenchState, isFindingShown, isLayerShown, layerKeys } from '../state/state';
import { BridgeLayerButton } from './bridge-layer';
import { FindingFilterHead } from './finding-filter';
import { FindingList, type FindingRow } from './finding-list';
import { LayerList, type LayerRow } from './layer-list';
import { Lists } from './lists';
import { OrderPanel } from './order-panel';
import { type SlipFigures, SlipPanel } from './slip-panel';

/** What the panels ask of the page. */
export interface SidePanelsActions {
  readonly requests: BenchRequests;
  change(change: Partial<BenchState>): void;
  /** Looks at everything anew, as another panel has come into sight. */
  draw(): void;
  useLayer(index: number): void;
  moveLayer(index: number, to: number): void;
  bestOrder(version: number): void;
  planLayer(): void;
  slip(slip: Slip): void;
  sweep(): void;
  /** @param number of the finding */
  chooseFinding(number: number): void;
  showCutOrder(shown: boolean): void;
  /** The order of the cuts is drawn up to another one. */
  drawCuts(): void;
  writeCut(): void;
  writeJob(): void;
  /** Tells those who do not see it. */
  say(text: string): void;
}

export class SidePanels {
  private readonly layers: LayerList;
  private readonly order: OrderPanel;
  private readonly cutting: CutPanel;
  private readonly bridgeLayer: BridgeLayerButton;
  private readonly findings: FindingList;
  private readonly findingHead: FindingFilterHead;
  private readonly slips: SlipPanel;
  private readonly lists: Lists;

  constructor(actions: SidePanelsActions) {
    const { requests, change, say } = actions;
    const choose = (sheet: number) => change({ sheet });
    this.layers = new LayerList({ use: actions.useLayer, choose, move: actions.moveLayer, say });
    this.order = new OrderPanel({ ask: () => requests.ask({ kind: 'bestOrder' }), apply: actions.bestOrder, say });
    this.cutting = new CutPanel({
      figures: () => requests.ask({ kind: 'cutFigures' }),
      order: (layer) => requests.ask({ kind: 'cutOrder', layer }),
      choose,
      show: actions.showCutOrder,
      moved: actions.drawCuts,
      writeCut: actions.writeCut,
      writeJob: actions.writeJob,
      say,
    });
    this.bridgeLayer = new BridgeLayerButton(actions.planLayer);
    this.findings = new FindingList(actions.chooseFinding);
    this.findingHead = new FindingFilterHead(change);
    this.slips = new SlipPanel({ change, slip: actions.slip, sweep: actions.sweep });
    this.lists = this.makeLists(actions.draw);
    for (const { element } of [this.slips, this.cutting]) element.addEventListener('toggle', actions.draw);
  }

  get element(): HTMLElement {
    return this.lists.element;
  }

  /** The cuts that are to be drawn over the sheet. */
  get drawnCuts(): ShownCourse | undefined {
    return this.cutting.drawing;
  }

  get isSlipShown(): boolean {
    return this.slips.shown;
  }

  arrange(arrangement: Arrangement): void {
    this.lists.arrange(arrangement);
  }

  showLayers(): void {
    this.lists.choose('layers');
  }

  draw(stack: PreviewStack, state: BenchState, figures: SlipFigures): void {
    this.slips.draw(stack, state, figures);
    this.layers.draw(layerRows(stack, state), state);
    this.bridgeLayer.draw(stack, state);
    this.order.draw(stack);
    this.cutting.draw(stack, state.sheet, state.mode === 'sheet');
    const findings = findingRows(stack, state);
    this.findings.draw(findings);
    this.findingHead.draw(stack, state, findings.length);
    this.lists.count('findings', findings.length);
    this.lists.count('layers', stack.layers.length);
    this.lists.offer('slip', state.mode === 'print');
  }

  private makeLists(changed: () => void): Lists {
    const commands = html('div', { class: 'layer-commands' }, [this.bridgeLayer.element, this.order.element]);
    const layers = html('div', {}, [html('h2', {}, ['Layers (spray order)']), this.layers.element, commands]);
    const findings = html('div', {}, [this.findingHead.element, this.findings.element]);
    return new Lists(
      [
        [
          { id: 'layers', title: 'Layers', element: layers },
          { id: 'slip', title: 'Misregistration', short: 'Slip', element: this.slips.element },
          { id: 'cutting', title: 'Cutting', element: this.cutting.element },
        ],
        [{ id: 'findings', title: 'Findings', element: findings }],
      ],
      'findings',
      changed,
    );
  }
}

function layerRows(stack: PreviewStack, state: BenchState): LayerRow[] {
  const keys = layerKeys(stack);
  return stack.layers.map((layer, index) => ({
    layer,
    key: keys[index] ?? '',
    shown: isLayerShown(state, stack, index),
  }));
}

function findingRows(stack: PreviewStack, state: BenchState): FindingRow[] {
  return stack.findings
    .filter((finding) => isFindingShown(state, stack, finding))
    .map((finding) => ({
      finding,
      selected: finding.number === state.selected,
      layerName: finding.layer === undefined ? undefined : stack.layers[finding.layer]?.name,
    }));
}
