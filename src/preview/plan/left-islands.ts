/** In the bar of a plan: the islands that stay loose, each with its letter, why, and what would do. */

import { count } from '../../config/values';
import type { Point } from '../../geometry/base/curve-types';
import { html, setText, syncChildren } from '../dom/dom';

/** An island that stays loose, as it is told and shown. */
export interface ToldIsland {
  /** As the pieces of a sheet are lettered. */
  readonly letter: string;
  /** On it, mm of its sheet. */
  readonly at: Point;
  readonly outline: string;
  readonly sentence: string;
}

/** So many are told without being asked for. */
const TOLD_AT_ONCE = 2;

export class LeftIslands {
  readonly element = html('details', { class: 'left-islands' });
  private readonly summary = html('summary');
  private readonly list = html('ul');
  private islands: readonly ToldIsland[] = [];

  /** @param show brings an island into sight */
  constructor(show: (island: ToldIsland) => void) {
    this.element.append(this.summary, this.list);
    this.list.addEventListener('click', ({ target }) => {
      const row = target instanceof Element ? target.closest('li') : null;
      const island = row && this.islands[[...this.list.children].indexOf(row)];
      if (island) show(island);
    });
  }

  draw(islands: readonly ToldIsland[]): void {
    const isOther = islands.length !== this.islands.length;
    this.islands = islands;
    this.element.hidden = islands.length === 0;
    if (isOther) this.element.open = islands.length <= TOLD_AT_ONCE;
    setText(this.summary, `${count(islands.length, 'island')} left loose`);
    syncChildren(this.list, islands, makeRow, (row, { letter, sentence }) => {
      const [button] = row.children;
      const [, badge, words] = button?.children ?? [];
      if (badge) setText(badge, letter);
      if (words) setText(words, sentence);
    });
  }
}

function makeRow(): HTMLLIElement {
  const words = [
    html('span', { class: 'unseen' }, ['Island']),
    html('span', { class: 'left-letter' }),
    html('span', { class: 'left-why' }),
  ];
  return html('li', {}, [html('button', { type: 'button', title: 'Show it on the picture' }, words)]);
}
