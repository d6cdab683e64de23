/**
 * Bridges for a whole layer, planned on the picture: seen in a style before anything is written, moved one by one with what
 * is alike, and put in as one change of the text. Nothing is written before that is asked for.
 */
import type { BridgeStyle } from '../../config/bridge-style';
import type { LayerId } from '../../engine/index';
import type { Point } from '../../geometry/base/curve-types';
import { apply } from '../../geometry/base/matrix';
import type { LayerPlan } from '../../protocol/layer-plan';
import type { BridgeBar } from '../tools/bridge-bar';
import type { ToolContext } from '../tools/tool-context';
import { LayerPlanState } from './layer-plan-state';
import { PlanBar } from './plan-bar';
import { PlanGestures } from './plan-gestures';
import { PlanOverlay } from './plan-overlay';
import { PlanQuestions } from './plan-questions';
import { toldIslands } from './told-islands';

export class LayerPlanner {
  readonly overlay = new PlanOverlay();
  readonly bar: PlanBar;
  readonly gestures: PlanGestures;
  private state: LayerPlanState | undefined;
  /** Enter was pressed while the bridges were being checked. */
  private applyWhenReady = false;
  /** What had the focus when the plan was asked for. */
  private opener: Element | null = null;
  private spoken = '';

  private readonly context: ToolContext;
  private readonly notices: BridgeBar;
  private readonly questions: PlanQuestions;

  /** @param notices tells what was done */
  constructor(context: ToolContext, notices: BridgeBar) {
    this.context = context;
    this.notices = notices;
    this.questions = new PlanQuestions(context.host);
    this.bar = new PlanBar({
      choose: (style) => this.choose(style),
      apply: () => this.apply(),
      cancel: () => this.close(),
      reset: () => this.reset(),
      show: ({ at }) => this.show(at),
    });
    this.gestures = new PlanGestures(context, {
      state: () => this.state,
      aimed: () => this.follow(),
      moved: () => this.prove(),
      apply: () => this.apply(),
      close: () => this.close(),
      show: (at) => this.show(at),
    });
  }

  /** Whether clicks, drags and keys on the picture are for the plan. */
  get active(): boolean {
    return this.state?.isOpen === true;
  }

  open(layer: LayerId): void {
    const name = this.context.stack?.layers.find(({ id }) => id === layer)?.name ?? '';
    this.opener = document.activeElement;
    this.state = new LayerPlanState(layer, name);
    this.bar.begin();
    this.plan(undefined);
    // The bar takes its room now; after that the picture shall not move under the pointer.
    this.context.host.holdView(true);
    this.bar.focus();
  }

  close(): void {
    if (!this.active) return;
    const held = this.bar.element.contains(document.activeElement);
    this.questions.drop();
    this.state = undefined;
    this.redraw();
    this.context.host.holdView(false);
    if (held) this.giveFocusBack();
  }

  /** The text has changed: what was put in is seen in it now, and what was planned is planned anew. */
  renew(isOther: boolean): void {
    const { state } = this;
    if (!state) return;
    const isThere = this.context.stack?.layers.some(({ id }) => id === state.layer) === true;
    if (!state.isOpen) this.state = undefined;
    else if (isOther || !isThere) this.close();
    else this.plan(state.style);
  }

  /** A plan of a layer that does not show any more is dropped. */
  dropUnseen(): void {
    if (this.state && !this.context.placeOf(this.state.layer)) this.close();
  }

  /** @returns whether the plan had a step to take back, or to do again */
  takeBack(again: boolean): boolean {
    const { state } = this;
    if (!state?.isOpen || state.drag || !state.bridges.takeBack(again)) return false;
    this.changed(state);
    return true;
  }

  /** With each new view, and whenever something has changed. */
  draw(): void {
    this.overlay.draw(this.drawing(), this.context.viewport);
  }

  private drawing() {
    const { state, context } = this;
    const place = state && context.placeOf(state.layer);
    if (!state || !place) return undefined;
    const left = toldIslands(state, context.stack);
    return { place, strips: state.strips, active: this.gestures.active, left };
  }

  private choose(style: BridgeStyle): void {
    this.plan(style);
  }

  private plan(style: BridgeStyle | undefined): void {
    const { state } = this;
    if (!state) return;
    this.notices.dropNotice();
    this.applyWhenReady = false;
    state.begin(style);
    this.redraw();
    const { layer } = state;
    void this.questions.plan(
      { layer, style, moved: [] },
      {
        sketch: (sketch) => {
          state.takeSketch(sketch);
          this.redraw();
        },
        plan: (plan) => {
          // What nobody has seen is not put in.
          if (plan && !state.takePlan(plan)) this.applyWhenReady = false;
          if (!plan) state.fail();
          this.settle();
        },
      },
    );
  }

  /** What was moved stands elsewhere again. */
  private changed(state: LayerPlanState): void {
    [this.applyWhenReady, state.notice] = [false, undefined];
    state.awaitProof();
    this.prove();
  }

  private prove(): void {
    const { state } = this;
    if (!state) return;
    if (state.stage !== 'checking') state.awaitProof();
    this.redraw();
    const { layer, style, bridges } = state;
    void this.questions.prove({ layer, style, moved: bridges.moved }, (plan: LayerPlan | undefined) => {
      if (plan) state.judge(plan);
      else state.fail();
      this.settle();
    });
  }

  private follow(): void {
    const { state } = this;
    this.applyWhenReady = false;
    this.redraw();
    if (!state?.drag?.moved) return;
    const { layer, style, bridges, drag } = state;
    const heard = (): void => {
      this.gestures.heard();
      this.redraw();
    };
    void this.questions.follow({ asked: { layer, style, moved: bridges.moved }, drag, heard });
  }

  private settle(): void {
    const { applyWhenReady } = this;
    this.applyWhenReady = false;
    this.redraw();
    if (applyWhenReady) this.apply();
  }

  private reset(): void {
    if (this.state?.bridges.reset()) this.changed(this.state);
    this.bar.focus();
  }

  private apply(): void {
    const { state } = this;
    if (state?.drag || state?.stage === 'checking') this.applyWhenReady = true;
    else if (state?.stage === 'ready') void this.putIn(state);
  }

  private async putIn(state: LayerPlanState): Promise<void> {
    const { context, notices } = this;
    const count = state.bridges.all.length;
    const keeps = this.bar.keeps;
    this.applyWhenReady = false;
    state.stage = 'added';
    const done = await context.host.putIn(keeps);
    if (!done) return this.plan(state.style);
    this.redraw();
    context.host.holdView(false);
    const [bridges, them] = count === 1 ? ['Bridge added', 'the bridge'] : ['Bridges added', 'the bridges'];
    const told = keeps ? `${bridges}, style kept in tombolo.json.` : `${bridges}.`;
    notices.tellDone(told, context.host.undo, them);
    context.focusPicture();
  }

  /** @param at mm of the layer's sheet */
  private show(at: Point): void {
    const place = this.state && this.context.placeOf(this.state.layer);
    if (place) this.context.host.bringIntoView(apply(place, at));
  }

  private giveFocusBack(): void {
    const { opener } = this;
    if (opener instanceof HTMLElement && opener.isConnected && opener.checkVisibility()) opener.focus();
    else this.context.focusPicture();
  }

  private redraw(): void {
    const { state } = this;
    this.bar.draw(state?.isOpen ? contentOf(state, this.context) : undefined);
    const said = state?.isOpen ? [state.sentence, ...state.told].join(' ') : '';
    if (said !== this.spoken && said !== '') this.context.say(said);
    this.spoken = said;
    this.context.redraw();
  }
}

function contentOf(state: LayerPlanState, { stack }: ToolContext) {
  const { name, sentence, isRefusing, stage, style, keepable, bridges, told } = state;
  const isBusy = stage === 'planning' || stage === 'checking';
  return {
    name,
    sentence,
    tone: isRefusing ? 'refused' : isBusy && !state.drag ? 'busy' : 'plain',
    style,
    bridges: stage === 'ready' || stage === 'checking' ? bridges.all.length : 0,
    keepable,
    moved: bridges.moved.length > 0,
    told,
    left: toldIslands(state, stack),
  } as const;
}
