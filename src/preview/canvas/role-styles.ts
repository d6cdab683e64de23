/** How the style sheet has the parts of pictures painted, for a painter that sees no style sheet. */
import { svg } from '../dom/dom';
import type { PaintedSheet, PaintStyle, PaintStyles } from '../painter/paint-job';

/** A colour that no style sheet has: what keeps it has none of its own. */
const UNSTYLED = { attribute: '#010203', computed: 'rgb(1, 2, 3)' };

/** Lines across what is hatched are a role of their own. */
const HATCH_LINE = 'hatch-line';

export class RoleStyles {
  /** Takes on one role after the other, and none when nobody asks. */
  private readonly probe = svg('path', { fill: UNSTYLED.attribute });
  private readonly holder = svg('svg', { class: 'probe', 'aria-hidden': 'true' }, [this.probe]);
  private known: { readonly text: string; readonly styles: PaintStyles } = { text: '', styles: {} };

  /** The very same object as long as nothing has changed. */
  of(sheets: readonly PaintedSheet[]): PaintStyles {
    if (!this.holder.isConnected) document.body.append(this.holder);
    const roles = new Set([HATCH_LINE, ...sheets.flatMap(({ parts }) => parts.map(({ role }) => role))]);
    const styles = Object.fromEntries([...roles].map((role) => [role, this.styleOf(role)]));
    this.probe.removeAttribute('class');
    const text = JSON.stringify(styles);
    if (text !== this.known.text) this.known = { text, styles };
    return this.known.styles;
  }

  private styleOf(role: string): PaintStyle {
    this.probe.setAttribute('class', role);
    const { fill, stroke, strokeWidth, strokeOpacity, filter } = getComputedStyle(this.probe);
    return {
      ...(fill !== UNSTYLED.computed && { fill }),
      ...(stroke !== 'none' && { stroke }),
      strokeWidth: Number.parseFloat(strokeWidth),
      strokeOpacity: Number(strokeOpacity),
      filter,
    };
  }
}
