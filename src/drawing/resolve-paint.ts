/** What an element is filled or stroked with, once references are followed. */
import type { ElementNode } from '../markup/tree';
import { type DocumentIndex, hrefOf, resolveTarget } from './document-index';
import type { Colour, PaintValue } from './style/colour';
import type { ComputedStyle } from './style/computed-style';
import type { Styles } from './style/styles';
import type { Paint } from './types';

export interface ResolvedPaint {
  readonly paint: Paint;
  /** 0..1, of the colour itself. */
  readonly alpha: number;
  /** For paint servers: the element that paints. */
  readonly server?: ElementNode;
  /** A reference that leads nowhere, out of the file, or to what paints nothing. */
  readonly broken?: { readonly reference: string; readonly why: 'missing' | 'external' | 'no-server' };
}

const NO_PAINT: ResolvedPaint = { paint: { kind: 'none' }, alpha: 0 };

/** The colour that stands for patterns, whose mean is not worked out. */
const MID_GREY = '#808080';

/** Hops from gradient to gradient that are followed in search of stops. */
const MAX_HOPS = 32;

/** Paints that `context-fill` and `context-stroke` stand for. */
export interface ContextPaint {
  readonly fill: ResolvedPaint;
  readonly stroke: ResolvedPaint;
}

export class PaintResolver {
  private readonly index: DocumentIndex;
  private readonly styles: Styles;
  private readonly servers = new Map<ElementNode, ResolvedPaint>();
  /** By colours, which values that are written alike share. */
  private readonly flats = new WeakMap<Colour, ResolvedPaint>();

  constructor(index: DocumentIndex, styles: Styles) {
    this.index = index;
    this.styles = styles;
  }

  resolve(value: PaintValue, style: ComputedStyle, context: ContextPaint | undefined): ResolvedPaint {
    switch (value.kind) {
      case 'none':
        return NO_PAINT;
      case 'current-colour':
        return this.flat(style.inherited.color);
      case 'context':
        return context?.[value.of] ?? NO_PAINT;
      case 'colour':
        return this.flat(value.colour);
      case 'server':
        return this.resolveReference(value, style, context);
    }
  }

  private flat(colour: Colour): ResolvedPaint {
    let paint = this.flats.get(colour);
    if (!paint) {
      paint = { paint: { kind: 'colour', colour: colour.hex }, alpha: colour.alpha };
      this.flats.set(colour, paint);
    }
    return paint;
  }

  private resolveReference(
    value: PaintValue & { kind: 'server' },
    style: ComputedStyle,
    context: ContextPaint | undefined,
  ): ResolvedPaint {
    const target = resolveTarget(value.target, this.index);
    if (target.kind === 'element') {
      const server = this.serverPaint(target.element);
      if (server) return server;
    }
    const fallback = value.fallback ? this.resolve(value.fallback, style, context) : NO_PAINT;
    const why = target.kind === 'element' ? 'no-server' : target.kind;
    return { ...fallback, broken: { reference: value.target, why } };
  }

  private serverPaint(element: ElementNode): ResolvedPaint | undefined {
    const known = this.servers.get(element);
    if (known) return known;
    const name = element.namespace === this.index.namespace ? element.localName : '';
    let paint: ResolvedPaint | undefined;
    if (name === 'pattern') paint = { paint: { kind: 'server', colour: MID_GREY }, alpha: 1, server: element };
    else if (name === 'linearGradient' || name === 'radialGradient') paint = this.gradientPaint(element);
    if (paint) this.servers.set(element, paint);
    return paint;
  }

  /** Stops all alike, or a single one, paint flat (SVG 2, "Gradient stop notes"); none at all paint nothing. */
  private gradientPaint(gradient: ElementNode): ResolvedPaint {
    const stops = this.stopsOf(gradient);
    const [first] = stops;
    if (!first) return NO_PAINT;
    if (stops.every((stop) => stop.hex === first.hex && stop.alpha === first.alpha)) return this.flat(first);
    const alpha = stops.reduce((sum, stop) => sum + stop.alpha, 0) / stops.length;
    return { paint: { kind: 'server', colour: meanColour(stops) }, alpha, server: gradient };
  }

  private stopsOf(gradient: ElementNode): readonly Colour[] {
    let at: ElementNode | undefined = gradient;
    for (let hop = 0; at && hop < MAX_HOPS; hop += 1) {
      const stops = at.children.filter(
        (child): child is ElementNode =>
          child.kind === 'element' && child.localName === 'stop' && child.namespace === this.index.namespace,
      );
      if (stops.length > 0) return stops.map((stop) => this.stopColour(stop));
      const href = hrefOf(at);
      const target = href && resolveTarget(href.value, this.index);
      at = target?.kind === 'element' && /Gradient$/.test(target.element.localName) ? target.element : undefined;
    }
    return [];
  }

  private stopColour(stop: ElementNode): Colour {
    const { own, inherited } = this.styles.computeInPlace(stop);
    const value = own['stop-color'];
    const colour = value.kind === 'colour' ? value.colour : inherited.color;
    return { hex: colour.hex, alpha: colour.alpha * own['stop-opacity'] };
  }
}

function meanColour(colours: readonly Colour[]): string {
  const channels = [1, 3, 5].map(
    (at) => colours.reduce((sum, { hex }) => sum + parseInt(hex.slice(at, at + 2), 16), 0) / colours.length,
  );
  return `#${channels.map((value) => Math.round(value).toString(16).padStart(2, '0')).join('')}`;
}
