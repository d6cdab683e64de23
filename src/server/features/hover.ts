/** What the text says where the pointer rests: at once what is known, with its measures where they come in time. */
import { type Hover, MarkupKind } from 'vscode-languageserver';
import type { TextDocument } from 'vscode-languageserver-textdocument';
import { formatMillimetres, formatSides } from '../../config/values';
import type { ShapeDescription } from '../../engine/index';
import type { BridgeSize } from '../../protocol/engine-worker';
import type { FindingFact, LayerFact, TagFacts } from '../../protocol/facts';
import { Priority } from '../../protocol/run-signals';
import { whyNot } from '../../report/refusal';
import { escapeMarkdown } from '../../text/markdown';
import type { Span } from '../../text/text';
import type { KnownDocument } from '../documents/known-document';
import type { EngineClient } from '../engine/engine-client';

/** Milliseconds that the measures are waited for. */
const WAIT = 30;

/**
 * The shape there; and of the findings there what their messages leave out, and why fixes that were tried by now cannot
 * be had. The messages themselves the editor shows beside it.
 * @param offset of the pointer in the live text
 */
export async function hoverAt(
  known: KnownDocument,
  live: TextDocument,
  offset: number,
  engine: EngineClient,
): Promise<Hover | undefined> {
  const place = known.shiftTo(live).back(offset);
  const tag = tagAt(known.facts.tags, place);
  const shape = tag && (await shapeOf(known, tag.span, engine));
  const short = tag && shortText(known.document.getText().slice(tag.span.from, tag.span.to), tag.layer);
  const drawn = tag && shape !== null ? [{ span: tag.span, text: shape ? textOf(shape) : (short ?? '') }] : [];
  const bridge = tag && (await bridgeSideAt(known, place, engine));
  const side = tag && bridge ? [{ span: tag.span, text: bridgeText(bridge) }] : [];
  const told: Told[] = [...drawn, ...side, ...findingsAt(known, place)];
  const [first] = told;
  if (!first) return undefined;
  const picture = await pictureAt(known, place, engine);
  // The box shows about as much as the picture and the first lines.
  const value = [...(picture === undefined ? [] : [pictureText(picture)]), ...told.map(({ text }) => text)].join(
    '\n\n',
  );
  return { contents: { kind: MarkupKind.Markdown, value }, range: known.rangeIn(live, first.span) };
}

interface Told {
  readonly span: Span;
  readonly text: string;
}

function findingsAt(known: KnownDocument, offset: number): Told[] {
  return known.facts.findings
    .filter(({ span }) => span.from <= offset && offset <= span.to)
    .flatMap((finding) => {
      const { check, detail, span } = finding;
      const parts = detail === undefined ? [] : [`**${escapeMarkdown(check)}**: ${escapeMarkdown(detail)}`];
      const refusals = refusalsOf(known, finding);
      if (refusals.length > 0) parts.push(['Why no fix:', ...refusals].join('\n'));
      return parts.length === 0 ? [] : [{ span, text: parts.join('\n\n') }];
    });
}

/** A hover proves nothing: it tells what is known. */
function refusalsOf(known: KnownDocument, { id }: FindingFact): string[] {
  return (known.offersOf(id) ?? []).flatMap((offer) => {
    const proof = known.proof(offer.id);
    return proof?.outcome === 'refused' ? [`- ${escapeMarkdown(offer.title)}: ${escapeMarkdown(whyNot(proof))}`] : [];
  });
}

/** @returns undefined where it is not known in time, null where the tag draws nothing that has an area */
async function shapeOf(
  { uri, version, shapes }: KnownDocument,
  { from }: Span,
  engine: EngineClient,
): Promise<ShapeDescription | null | undefined> {
  const shape = shapes.get(from);
  if (shape !== undefined) return shape;
  const isBusy = engine.checking;
  const told = engine.ask({ kind: 'hover', uri, version, offset: from }, Priority.glance).answer.then((answer) => {
    if (answer !== undefined) shapes.set(from, answer);
    return answer;
  });
  // During a check the answer comes for the next time.
  return isBusy ? undefined : inTime(told);
}

/** What is at hand of the bridge that the text there draws a side of. */
async function bridgeSideAt(
  { uri, version }: KnownDocument,
  offset: number,
  engine: EngineClient,
): Promise<BridgeSize | undefined> {
  if (engine.checking) return undefined;
  return inTime(engine.ask({ kind: 'bridgeSide', uri, version, offset }, Priority.glance).answer);
}

/** Of the place of the most serious finding there. */
async function pictureAt(known: KnownDocument, offset: number, engine: EngineClient): Promise<string | undefined> {
  const found = known.facts.findings.find(({ span }) => span.from <= offset && offset <= span.to);
  if (!found) return undefined;
  const before = known.pictures.get(found.id);
  if (before !== undefined || engine.checking) return before;
  const { uri, version } = known;
  const told = engine.ask({ kind: 'placePicture', uri, version, finding: found.id }, Priority.glance).answer;
  const kept = told.then((svg) => {
    if (svg !== undefined) known.pictures.set(found.id, svg);
    return svg;
  });
  return inTime(kept);
}

function pictureText(svg: string): string {
  return `![The place of the finding](data:image/svg+xml;base64,${base64(svg)})`;
}

function inTime<T>(answer: Promise<T>): Promise<T | undefined> {
  return Promise.race([answer, new Promise<undefined>((resolve) => setTimeout(() => resolve(undefined), WAIT))]);
}

function bridgeText({ width, length }: BridgeSize): string {
  const size = `${formatMillimetres(width)} wide, ${formatMillimetres(length)} long`;
  return `Bridge, ${size}: change it with Refactor… (Ctrl+Shift+R) or on the bench.`;
}

/** The start tag of something drawn at an offset of the text that was checked. */
function tagAt({ from, to, layer, layers }: TagFacts, offset: number) {
  let [low, high] = [0, from.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((from[middle] ?? 0) <= offset) low = middle + 1;
    else high = middle;
  }
  const [start, end] = [from[low - 1], to[low - 1]];
  if (start === undefined || end === undefined || offset >= end) return undefined;
  return { span: { from: start, to: end }, layer: layers[layer[low - 1] ?? -1] };
}

function textOf({ name, id, times, width, height, area, cutLength, layers }: ShapeDescription): string {
  const title = `**${escapeMarkdown(id === undefined ? name : `${name} ${id}`)}**${times > 1 ? `, drawn ${times} times` : ''}`;
  const size = formatSides(width, height, 2);
  const measures = `${size} · ${area.toFixed(2)} mm² · ${cutLength.toFixed(2)} mm of cut`;
  return [title, measures, ...(layers.length > 0 ? layers.map(standsIn) : ['in no layer of the stack'])].join('  \n');
}

/** What can be said without measuring. */
function shortText(tag: string, layer: LayerFact | undefined): string {
  const name = /^<([^\s/>]+)/.exec(tag)?.[1] ?? '';
  const id = /\sid\s*=\s*["']([^"']*)["']/.exec(tag)?.[1];
  const title = `**${escapeMarkdown(id === undefined ? name : `${name} ${id}`)}**`;
  return [title, 'not measured yet', ...(layer ? [standsIn(layer)] : [])].join('  \n');
}

const standsIn = ({ name, paint, reading }: LayerFact): string =>
  `layer ${escapeMarkdown(name)}, paint ${paint}, read as ${reading}`;

/** Of the text as UTF-8. */
function base64(text: string): string {
  return btoa(Array.from(new TextEncoder().encode(text), (byte) => String.fromCharCode(byte)).join(''));
}
