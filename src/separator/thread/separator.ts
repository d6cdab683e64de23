/**
 * Pictures, separated as somebody asks who moves dials: a rough answer at once, the full one when nothing newer was asked
 * for meanwhile. A run that nobody waits for any more is stopped within milliseconds.
 */
import { Stopped, underWatch } from '../../base/checkpoint';
import { readConfig } from '../../engine/index';
import type { FromSeparator, PictureDials, ToSeparator } from '../../protocol/separating';
import { NothingToSeparate, type Picture, PictureSource, type Separation, separate } from '../../separate/index';
import { UnreadablePicture } from '../file/header';
import { dialsOf, dialsToShow } from './dials';
import { sheetsOf } from './sheets';
import { shownPicture, shownSeparation } from './shown';

/** Milliseconds that the hand rests before the full answer is worked out. */
const HAND_RESTS = 250;

/** Milliseconds that a rough answer is to take; it has as many pixels as that allows, within bounds. */
const ROUGH_WITHIN = 90;
const FEWEST_ACROSS = 140;
const MOST_ACROSS = 400;
const FIRST_ACROSS = 240;

type Decode = (bytes: Uint8Array) => Picture | Promise<Picture>;

export class Separator {
  private readonly post: (message: FromSeparator) => void;
  private readonly newest: () => number;
  private readonly decode: Decode;
  private source: PictureSource | undefined;
  private before = '';
  private across = FIRST_ACROSS;

  /**
   * @param newest the number of what was asked last, as it is known at once, and not only when its message is read
   * @param decode throws UnreadablePicture
   */
  constructor(post: (message: FromSeparator) => void, newest: () => number, decode: Decode) {
    this.decode = decode;
    this.post = post;
    this.newest = newest;
  }

  async receive(message: ToSeparator): Promise<void> {
    if (message.type === 'open') return this.tell(0, () => this.open(message.bytes, message.before));
    if (message.id !== this.newest()) return;
    if (message.type === 'sheets') return this.tell(message.id, () => this.sheets(message));
    await this.tell(message.id, () => this.rough(message.id, message.dials));
    await new Promise((resolve) => setTimeout(resolve, HAND_RESTS));
    if (message.id === this.newest()) await this.tell(message.id, () => this.full(message.id, message.dials));
  }

  private async open(bytes: Uint8Array, before: string): Promise<void> {
    this.before = before;
    this.source = new PictureSource(await this.decode(bytes));
    this.post({ type: 'opened', picture: shownPicture(this.source), dials: dialsToShow(readConfig(before).config) });
  }

  private rough(id: number, dials: PictureDials): void {
    const start = performance.now();
    const separation = this.separated(dials, this.across);
    this.answer(id, true, separation);
    const took = Math.max(1, performance.now() - start);
    const next = this.across * Math.sqrt(ROUGH_WITHIN / took);
    this.across = Math.round(Math.max(FEWEST_ACROSS, Math.min(MOST_ACROSS, next)));
  }

  private full(id: number, dials: PictureDials): void {
    this.answer(
      id,
      false,
      this.whileWanted(id, () => this.separated(dials)),
    );
  }

  private sheets({ id, dials, project }: Extract<ToSeparator, { type: 'sheets' }>): void {
    const made = this.whileWanted(id, () => sheetsOf(this.separated(dials), dials, project));
    this.post({ type: 'sheets', id, ...made });
  }

  private separated(dials: PictureDials, across?: number): Separation {
    if (!this.source) throw new NothingToSeparate('is not open');
    return separate(
      this.source,
      dialsOf(dials, readConfig(this.before).config),
      across === undefined ? {} : { across },
    );
  }

  private answer(id: number, isRough: boolean, separation: Separation): void {
    this.post({ type: 'answer', id, isRough, separation: shownSeparation(separation) });
  }

  private whileWanted<T>(id: number, work: () => T): T {
    return underWatch(() => (this.newest() === id ? undefined : 'cancelled'), work);
  }

  /** Tells in one line why there is no answer. */
  private async tell(id: number, work: () => void | Promise<void>): Promise<void> {
    try {
      await work();
    } catch (error) {
      if (error instanceof Stopped) this.post({ type: 'stopped', id });
      else this.post({ type: 'refused', id, message: wordsOf(error) });
    }
  }
}

function wordsOf(error: unknown): string {
  if (error instanceof NothingToSeparate || error instanceof UnreadablePicture) return error.message;
  return `could not be separated: ${error instanceof Error ? error.message : String(error)}`;
}
