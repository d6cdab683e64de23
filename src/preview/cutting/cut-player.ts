/** Plays the cuts of a sheet: by itself, cut by cut, or as a slider is drawn. */

import { prefersReducedMotion } from '../canvas/motion';
import { html, setAttributes, setText } from '../dom/dom';
import { millimetres } from '../dom/scale-steps';
import type { CutCourse } from './cut-course';

/** Seconds that a whole sheet takes: short ones are not dragged out, long ones still end. */
const [SHORTEST, LONGEST] = [4, 30] as const;
/** mm of a second, in between. */
const PACE = 120;

const KINDS = { opening: 'opening', piece: 'loose piece', mark: 'register mark', edge: "the sheet's edge" } as const;

export interface PlayerActions {
  /** The tool has come so many mm. */
  moved(way: number): void;
  /** Something to be told aloud. */
  say(text: string): void;
}

export class CutPlayer {
  readonly element: HTMLElement;
  private readonly play = html('button', { type: 'button', class: 'tool' });
  private readonly slider = html('input', { type: 'range', min: 0, step: 1, 'aria-label': 'Cuts that are done' });
  private readonly told = html('output', { class: 'told' });
  private course: CutCourse | undefined;
  private frame = 0;
  private way = 0;

  private readonly actions: PlayerActions;

  constructor(actions: PlayerActions) {
    this.actions = actions;
    this.play.addEventListener('click', () => this.press());
    this.slider.addEventListener('input', () => {
      // Whoever stops draws, and that writes the slider's value anew.
      const done = Number(this.slider.value);
      this.pause();
      this.move(this.course?.after(done) ?? 0);
    });
    const row = html('div', { class: 'slider cut-slider' }, [this.play, this.slider]);
    this.element = html('div', { class: 'cut-player', role: 'group', 'aria-label': 'Cut order' }, [row, this.told]);
  }

  get played(): number {
    return this.way;
  }

  /**
   * Takes another sheet, all cut; or none.
   * @param kept whether it is the same sheet as before, with as much of it cut
   */
  show(course: CutCourse | undefined, kept = false): void {
    const done = kept ? this.course?.at(this.way).done : undefined;
    this.pause();
    this.course = course;
    this.element.hidden = course === undefined;
    if (!course) return;
    setAttributes(this.slider, { max: course.cuts.length });
    this.move(done === undefined ? course.length : course.after(done));
    if (!kept) this.element.scrollIntoView({ block: 'nearest' });
  }

  /** Stops where it is. */
  pause(): void {
    cancelAnimationFrame(this.frame);
    this.frame = 0;
    this.draw();
  }

  private press(): void {
    if (prefersReducedMotion()) this.next();
    else if (this.frame !== 0) this.pause();
    else this.start();
  }

  /** Nothing moves by itself: each press does one cut more. */
  private next(): void {
    const { course } = this;
    if (!course) return;
    const { done } = course.at(this.way);
    this.move(course.after(done >= course.cuts.length ? 1 : done + 1));
    this.actions.say(this.told.textContent ?? '');
  }

  private start(): void {
    const { course } = this;
    if (!course || course.length === 0) return;
    const seconds = Math.min(Math.max(course.length / PACE, SHORTEST), LONGEST);
    const from = this.way >= course.length ? 0 : this.way;
    const begun = performance.now();
    const step = (): void => {
      const way = from + ((performance.now() - begun) / 1000) * (course.length / seconds);
      this.move(Math.min(way, course.length));
      if (way >= course.length) this.pause();
      else this.frame = requestAnimationFrame(step);
    };
    this.frame = requestAnimationFrame(step);
    this.draw();
  }

  private move(way: number): void {
    this.way = way;
    this.draw();
    this.actions.moved(way);
  }

  private draw(): void {
    const { course } = this;
    if (!course) return;
    const { done, begun } = course.at(this.way);
    const now = course.cuts[begun.length > 1 ? done : Math.max(done - 1, 0)];
    const still = prefersReducedMotion();
    const name = still ? 'Next cut' : this.frame === 0 ? 'Play' : 'Pause';
    const icon = still ? 'debug-step-over' : this.frame === 0 ? 'play' : 'debug-pause';
    this.play.replaceChildren(html('span', { class: `codicon codicon-${icon}`, 'aria-hidden': 'true' }), ` ${name}`);
    this.slider.value = String(done);
    const share = course.cuts.length === 0 ? 0 : done / course.cuts.length;
    this.slider.style.setProperty('--from', '0');
    this.slider.style.setProperty('--to', String(share));
    const number = begun.length > 1 ? done + 1 : done;
    const text =
      number === 0 || !now
        ? `${course.cuts.length} cuts, none done`
        : `Cut ${number} of ${course.cuts.length}: ${KINDS[now.kind]}, ${millimetres(Math.round(now.length))} mm`;
    setText(this.told, text);
    setAttributes(this.slider, { 'aria-valuetext': text });
  }
}
