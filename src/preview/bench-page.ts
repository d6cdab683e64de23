/** The whole page: keeps what is chosen, and shows each new stack without losing the place. */
import type { Stack } from '../server/protocol';
import { carryOver, FIRST_STATE, isFindingShown, isLayerShown, type BenchState } from './bench-state';
import { html, setText } from './dom';
import { FindingList } from './finding-list';
import { LayerList } from './layer-list';
import { Surface } from './surface';
import { Toolbar } from './toolbar';
import type { View } from './view';

/** What is kept when the panel is hidden or the editor starts anew. */
export interface Kept {
  readonly uri: string | undefined;
  readonly state: BenchState;
  readonly view: View | undefined;
}

export interface PageHost {
  keep(kept: Kept): void;
  reveal(uri: string, from: number, to: number): void;
  begin(uri: string): void;
}

export class BenchPage {
  readonly element: HTMLElement;
  private stack: Stack | undefined;
  private state: BenchState;
  private uri: string | undefined;
  private readonly surface: Surface;
  private readonly toolbar: Toolbar;
  private readonly layers = new LayerList((index) => this.layerUsed(index));
  private readonly findings = new FindingList((index) => this.choose(index));
  private readonly heading = html('h2');
  private readonly notice: HTMLElement;

  constructor(private readonly host: PageHost, kept: Kept | undefined) {
    this.state = kept?.state ?? FIRST_STATE;
    this.uri = kept?.uri;
    this.surface = new Surface((index) => this.choose(index), (view, chosen) => this.moved(view, chosen));
    this.surface.look(kept?.view);
    this.toolbar = new Toolbar({
      mode: (mode) => this.change({ mode }),
      zoom: (factor) => this.surface.zoom(factor),
      fit: () => this.surface.look(undefined),
      trueSize: () => this.surface.trueSize(),
    });
    this.notice = this.makeNotice();
    this.element = html('main', { class: 'bench' }, [
      this.toolbar.element, this.notice, this.surface.element,
      html('div', { class: 'lists' }, [
        html('section', { 'aria-label': 'Layers' }, [
          html('h2', {}, ['Layers, first painted first']), this.layers.element,
        ]),
        html('section', { 'aria-label': 'Findings' }, [this.heading, this.findings.element]),
      ]),
    ]);
  }

  show(stack: Stack): void {
    const another = stack.uri !== this.uri;
    this.uri = stack.uri;
    this.state = another ? FIRST_STATE : carryOver(this.state, this.stack, stack);
    this.stack = stack;
    if (another) this.surface.look(undefined);
    this.draw();
  }

  /** Marks what the text at the caret draws. */
  mark(outline: string): void {
    this.surface.mark(outline);
  }

  private draw(): void {
    const { stack, state } = this;
    if (!stack) return;
    this.notice.hidden = stack.stencil;
    this.surface.draw(stack, state);
    const rows = stack.layers.map((layer, index) => ({ layer, shown: isLayerShown(state, stack, index) }));
    this.layers.draw(rows, state.mode);
    const shown = stack.findings.flatMap((finding, index) => isFindingShown(state, stack, finding) ? [{
      finding, index, selected: index === state.selected,
      layerName: finding.layer === undefined ? undefined : stack.layers[finding.layer]?.name,
    }] : []);
    this.findings.draw(shown);
    setText(this.heading, headingFor(shown.length, stack.findings.length));
  }

  private change(change: Partial<BenchState>): void {
    this.state = { ...this.state, ...change };
    this.draw();
  }

  private layerUsed(index: number): void {
    const name = this.stack?.layers[index]?.name;
    if (name === undefined) return;
    const { mode, hidden } = this.state;
    if (mode === 'sheet') this.change({ sheet: index });
    else this.change({ hidden: hidden.includes(name) ? hidden.filter((other) => other !== name) : [...hidden, name] });
  }

  private choose(index: number): void {
    const finding = this.stack?.findings[index];
    if (!this.stack || !finding) return;
    this.change({ selected: index });
    this.surface.bringIntoView(index);
    this.host.reveal(this.stack.uri, finding.from, finding.to);
  }

  private moved(view: View, chosen: View | undefined): void {
    this.toolbar.draw(this.state.mode, view);
    this.host.keep({ uri: this.uri, state: this.state, view: chosen });
  }

  private makeNotice(): HTMLElement {
    const button = html('vscode-button' as 'button', {}, ['Begin a stencil here']);
    button.addEventListener('click', () => {
      if (this.uri !== undefined) this.host.begin(this.uri);
    });
    const text = 'This drawing has not been called a stencil yet, so nothing is underlined in its text.';
    const notice = html('div', { class: 'notice' }, [html('p', {}, [text]), button]);
    notice.hidden = true;
    return notice;
  }
}

function headingFor(shown: number, all: number): string {
  if (all === 0) return 'Findings: none';
  return shown === all ? `Findings: ${all}` : `Findings: ${shown} of ${all} shown`;
}
