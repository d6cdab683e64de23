/** The findings as buttons, for those who do not use the picture or do not see it. */
import type { PreviewFinding } from '../../protocol/index';
import { html, setAttributes, setText, syncChildren } from '../dom/dom';

export interface FindingRow {
  readonly finding: PreviewFinding;
  readonly layerName: string | undefined;
  readonly selected: boolean;
}

export class FindingList {
  readonly element = html('ol', { class: 'findings' });

  /** @param choose is called with the number of the finding whose button was used */
  constructor(choose: (number: number) => void) {
    this.element.addEventListener('click', ({ target }) => {
      const button = target instanceof Element ? target.closest('button') : null;
      if (button?.dataset.finding !== undefined) choose(Number(button.dataset.finding));
    });
  }

  draw(rows: readonly FindingRow[]): void {
    syncChildren(this.element, rows, makeRow, (item, { finding, layerName, selected }) => {
      const button = item.firstElementChild as HTMLButtonElement;
      setAttributes(button, {
        class: `finding ${finding.severity}`,
        'data-finding': finding.number,
        'aria-current': String(selected),
        title: finding.detail ?? '',
      });
      const [badge, title, message] = button.children;
      if (badge) setText(badge, String(finding.number));
      if (title) setText(title, titleOf(finding, layerName));
      if (message) setText(message, finding.message);
    });
  }
}

function makeRow(): HTMLLIElement {
  return html('li', {}, [
    html('button', { type: 'button' }, [
      html('span', { class: 'badge' }),
      html('span', { class: 'title' }),
      html('span', { class: 'message' }),
    ]),
  ]);
}

function titleOf({ check, severity }: PreviewFinding, layerName: string | undefined): string {
  const title = `${check}, ${severity}`;
  return layerName === undefined ? title : `${title}, in ${layerName}`;
}
