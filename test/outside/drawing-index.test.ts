/**
 * Every element and every property of SVG 2: it is read, or a finding tells that it is not, or it bears on nothing that
 * is cut. Beside each reading stands what @resvg/resvg-js paints, where that renderer knows the feature.
 *
 * Source: SVG 2, "Element Index" (https://www.w3.org/TR/SVG2/eltindex.html) and "Property Index"
 * (https://www.w3.org/TR/SVG2/propidx.html), the latter with the properties of other specifications that SVG 2
 * describes or names as presentation attributes: CSS Masking 1, Filter Effects 1, Compositing 1, CSS Transforms 1,
 * CSS Fonts 3, CSS Text 3, CSS Writing Modes 3.
 */
import { describe, expect, it } from 'vitest';
import type { Drawing, Subpath } from '../../src/drawing/types';
import { colours, draw, filledArea, inMillimetres } from '../drawing/draw';
import { compare, renderDrawing, renderText } from './paint';

const WIDTH = 400;

/** What is told of a drawing, beyond that of another. */
function told(drawing: Drawing, before?: Drawing): string[] {
  const known = new Set(before?.problems.map(({ message }) => message));
  return drawing.problems.filter(({ message }) => !known.has(message)).map(({ check }) => check);
}

/** All that is painted: areas, places, colours. */
function painted(drawing: Drawing): string {
  const shapes = drawing.shapes.map(({ subpaths, fillRule, clips, opacity }) => {
    const within = clips.map(({ parts }) => parts.map((part) => [part.fillRule, curvesOf(part.subpaths)]));
    return [curvesOf(subpaths), fillRule, within, opacity];
  });
  return JSON.stringify([shapes, colours(drawing)]);
}

const curvesOf = (subpaths: readonly Subpath[]): unknown => subpaths.map(({ curves }) => curves);

/** Whether a renderer paints the text as we read it. */
function expectAsRendered(text: string): void {
  const { painted: theirs, ours, wrong } = compare(renderText(text, WIDTH), renderDrawing(draw(text), WIDTH));
  expect(Math.abs(theirs - ours)).toBeLessThan(0.005 * Math.max(theirs, 1) + 4);
  expect(wrong).toBeLessThanOrEqual(12);
}

const sameCover = (one: string, other: string): boolean => {
  const { apart } = compare(renderText(one, WIDTH), renderText(other, WIDTH));
  return apart < 1;
};

/**
 * `drawn`: it leaves shapes, as the renderer does. `used`: it acts on what refers to it, which differs with it, as in
 * the renderer. `nothing`: it paints nothing, in the renderer too. Else the check that tells of it.
 */
type Gives = 'drawn' | 'used' | 'nothing' | 'not-cuttable' | 'unsupported';

const RECT = '<rect width="30" height="20" fill="red"/>';
const HREF = 'href="data:image/png;base64,iVBORw0KGgo="';
const XHTML = 'xmlns="http://www.w3.org/1999/xhtml"';
const inFilter = (name: string): string => `<filter id="x"><${name}/></filter><g filter="url(#x)">${RECT}</g>`;
const alone = (name: string): string => `<${name}>${RECT}</${name}>`;

const ELEMENTS: readonly (readonly [name: string, content: string, gives: Gives])[] = [
  ['a', `<a href="#x">${RECT}</a>`, 'drawn'],
  ['animate', '<rect width="9" height="9"><animate attributeName="x" to="9"/></rect>', 'unsupported'],
  ['animateMotion', '<rect width="9" height="9"><animateMotion path="M0 0h9"/></rect>', 'unsupported'],
  ['animateTransform', '<g><animateTransform attributeName="transform" type="rotate" to="9"/></g>', 'unsupported'],
  ['audio', `<audio ${XHTML} src="a.ogg"/>`, 'not-cuttable'],
  ['canvas', `<canvas ${XHTML} width="9" height="9"/>`, 'not-cuttable'],
  ['circle', '<circle cx="20" cy="20" r="9"/>', 'drawn'],
  ['clipPath', `<clipPath id="x"><rect width="9" height="9"/></clipPath><g clip-path="url(#x)">${RECT}</g>`, 'used'],
  ['defs', alone('defs'), 'nothing'],
  ['desc', '<desc>what it is</desc>', 'nothing'],
  ['discard', '<discard begin="2s"/>', 'unsupported'],
  ['ellipse', '<ellipse cx="20" cy="20" rx="9" ry="5"/>', 'drawn'],
  ['feBlend', inFilter('feBlend'), 'not-cuttable'],
  ['feColorMatrix', inFilter('feColorMatrix'), 'not-cuttable'],
  ['feComponentTransfer', inFilter('feComponentTransfer'), 'not-cuttable'],
  ['feComposite', inFilter('feComposite'), 'not-cuttable'],
  ['feConvolveMatrix', inFilter('feConvolveMatrix'), 'not-cuttable'],
  ['feDiffuseLighting', inFilter('feDiffuseLighting'), 'not-cuttable'],
  ['feDisplacementMap', inFilter('feDisplacementMap'), 'not-cuttable'],
  ['feDistantLight', inFilter('feDistantLight'), 'not-cuttable'],
  ['feDropShadow', inFilter('feDropShadow'), 'not-cuttable'],
  ['feFlood', inFilter('feFlood'), 'not-cuttable'],
  ['feFuncA', inFilter('feFuncA'), 'not-cuttable'],
  ['feFuncB', inFilter('feFuncB'), 'not-cuttable'],
  ['feFuncG', inFilter('feFuncG'), 'not-cuttable'],
  ['feFuncR', inFilter('feFuncR'), 'not-cuttable'],
  ['feGaussianBlur', inFilter('feGaussianBlur'), 'not-cuttable'],
  ['feImage', inFilter('feImage'), 'not-cuttable'],
  ['feMerge', inFilter('feMerge'), 'not-cuttable'],
  ['feMergeNode', inFilter('feMergeNode'), 'not-cuttable'],
  ['feMorphology', inFilter('feMorphology'), 'not-cuttable'],
  ['feOffset', inFilter('feOffset'), 'not-cuttable'],
  ['fePointLight', inFilter('fePointLight'), 'not-cuttable'],
  ['feSpecularLighting', inFilter('feSpecularLighting'), 'not-cuttable'],
  ['feSpotLight', inFilter('feSpotLight'), 'not-cuttable'],
  ['feTile', inFilter('feTile'), 'not-cuttable'],
  ['feTurbulence', inFilter('feTurbulence'), 'not-cuttable'],
  ['filter', '<filter id="x"/>', 'nothing'],
  ['foreignObject', '<foreignObject width="9" height="9"/>', 'not-cuttable'],
  ['g', alone('g'), 'drawn'],
  ['iframe', `<iframe ${XHTML} src="a.html"/>`, 'not-cuttable'],
  ['image', `<image ${HREF} width="9" height="9"/>`, 'not-cuttable'],
  ['line', '<line x1="9" y1="9" x2="40" y2="30" stroke="red" stroke-width="4"/>', 'drawn'],
  [
    'linearGradient',
    '<linearGradient id="x"><stop stop-color="red"/><stop offset="1"/></linearGradient>' +
      '<rect width="9" height="9" fill="url(#x)"/>',
    'not-cuttable',
  ],
  [
    'marker',
    '<marker id="x" markerUnits="userSpaceOnUse"><rect width="9" height="9"/></marker>' +
      '<path d="M20 20h9" stroke="red" marker-end="url(#x)"/>',
    'used',
  ],
  ['mask', `<mask id="x">${RECT}</mask><g mask="url(#x)">${RECT}</g>`, 'not-cuttable'],
  ['metadata', '<metadata>by hand</metadata>', 'nothing'],
  ['mpath', '<g><animateMotion><mpath href="#x"/></animateMotion></g>', 'unsupported'],
  ['path', '<path d="M9 9h30v20z"/>', 'drawn'],
  [
    'pattern',
    '<pattern id="x" width=".5" height=".5"><rect width="4" height="4"/></pattern><rect width="9" height="9" fill="url(#x)"/>',
    'not-cuttable',
  ],
  ['polygon', '<polygon points="9,9 40,9 20,30"/>', 'drawn'],
  ['polyline', '<polyline points="9,9 40,9 20,30"/>', 'drawn'],
  [
    'radialGradient',
    '<radialGradient id="x"><stop stop-color="red"/><stop offset="1"/></radialGradient>' +
      '<rect width="9" height="9" fill="url(#x)"/>',
    'not-cuttable',
  ],
  ['rect', RECT, 'drawn'],
  ['script', '<script>document.documentElement.remove()</script>', 'unsupported'],
  ['set', '<rect width="9" height="9"><set attributeName="x" to="9"/></rect>', 'unsupported'],
  [
    'stop',
    '<linearGradient id="x"><stop stop-color="lime"/></linearGradient><rect width="9" height="9" fill="url(#x)"/>',
    'used',
  ],
  ['style', `<style>rect{fill:lime}</style>${RECT}`, 'used'],
  ['svg', `<svg x="9" width="20" height="10">${RECT}</svg>`, 'drawn'],
  ['switch', alone('switch'), 'drawn'],
  ['symbol', `<symbol id="x" viewBox="0 0 40 40">${RECT}</symbol><use href="#x" width="50" height="50"/>`, 'used'],
  ['text', '<text y="20">word</text>', 'not-cuttable'],
  ['textPath', '<text><textPath path="M0 9h50">word</textPath></text>', 'not-cuttable'],
  ['title', '<title>a name</title>', 'nothing'],
  ['tspan', '<text y="20"><tspan>word</tspan></text>', 'not-cuttable'],
  ['unknown', alone('unknown'), 'unsupported'],
  ['use', `<defs><g id="x">${RECT}</g></defs><use href="#x" x="30"/>`, 'drawn'],
  ['video', `<video ${XHTML} src="a.webm"/>`, 'not-cuttable'],
  ['view', '<view id="x" viewBox="0 0 9 9"/>', 'nothing'],
];

describe('SVG 2, "Element Index": what each element gives', () => {
  it('names each once', () => {
    expect(new Set(ELEMENTS.map(([name]) => name)).size).toBe(ELEMENTS.length);
  });

  it.each(ELEMENTS)('%s', (name, content, gives) => {
    const text = inMillimetres(content);
    expect(text).toMatch(new RegExp(`<${name}[ />]`));
    const drawing = draw(text);
    if (gives === 'drawn' || gives === 'used') {
      expect(drawing.shapes.length).toBeGreaterThan(0);
      expect(told(drawing)).toEqual([]);
      expectAsRendered(text);
      const without = draw(text.replaceAll(new RegExp(`(</?)${name}(?=[ />])`, 'g'), '$1metadata'));
      expect(painted(drawing)).not.toBe(painted(without));
    } else if (gives === 'nothing') {
      expect([drawing.shapes, told(drawing)]).toEqual([[], []]);
      expectAsRendered(text);
    } else expect(told(drawing)).toContain(gives);
  });

  it.each([
    ['tspan', '<tspan>word</tspan>'],
    ['textPath', '<textPath path="M0 0h9">word</textPath>'],
    ['feFlood', '<feFlood/>'],
    ['foreign terms of SVG 2 drafts', '<hatch id="h"/><rect width="9" height="9" fill="url(#h)"/>'],
    ['a language that is not read', '<g systemLanguage="de"><rect width="9" height="9"/></g>'],
    ['an extension that nobody has', '<rect width="9" height="9" requiredExtensions="http://example.invalid/"/>'],
    ['a script in defs', '<defs><script>1</script></defs>'],
  ])('out of its place, or unmet: %s is told', (_, content) => {
    expect(told(draw(inMillimetres(content)))).toEqual(['unsupported']);
  });

  it('of a switch, what is not chosen needs no word', () => {
    const content = `<switch><g systemLanguage="de">${RECT}</g>${RECT}</switch>`;
    expect(told(draw(inMillimetres(content)))).toEqual([]);
  });
});

/** What a property is stated on; `$` stands for the `style` attribute. */
const GROUNDS = {
  shape: '<path d="M20 60L50 20L80 60" fill="red" stroke="blue" stroke-width="6" $/>',
  curve: '<path d="M10 20h80M10 50h80" stroke="blue" stroke-width="6" stroke-dasharray="9" $/>',
  star: '<path d="M50 10L73 81 13 37H87L27 81z" $/>',
  bend: '<path d="M20 60L50 20L80 60" fill="none" stroke="blue" stroke-width="9" $/>',
  rect: '<rect width="40" height="30" $/>',
  round: '<rect width="40" height="30" rx="4" ry="4" $/>',
  circle: '<circle cx="30" cy="30" r="9" $/>',
  current: '<rect width="40" height="30" fill="currentColor" $/>',
  rotated: '<rect x="9" y="9" width="40" height="30" transform="rotate(20)" $/>',
  viewport: '<svg width="30" height="30" $><rect width="50" height="9"/></svg>',
  scaled: '<path transform="scale(3 1)" d="M5 20h20v20" fill="none" stroke="blue" stroke-width="4" $/>',
  clip: '<clipPath id="k"><path d="M50 10L73 81 13 37H87L27 81z" $/></clipPath><rect width="99" height="99" clip-path="url(#k)"/>',
  stop: '<linearGradient id="l"><stop $/></linearGradient><rect width="9" height="9" fill="url(#l)"/>',
  font: '<rect width="2em" height="9" $/>',
  text: '<text y="20" $>word</text>',
  flood: '<filter id="q"><feFlood $/></filter><rect width="9" height="9" filter="url(#q)"/>',
  mask: '<mask id="n" $><rect width="9" height="9"/></mask><rect width="9" height="9" mask="url(#n)"/>',
} as const;

const DEFS =
  '<clipPath id="c"><rect width="50" height="40"/></clipPath>' +
  '<marker id="m" markerUnits="userSpaceOnUse" overflow="visible"><rect width="9" height="9"/></marker>';

/**
 * `read`: what is painted differs with it, and the renderer paints the same; `geometry`: the same, where the renderer
 * knows the attribute of that name alone; `alone`: the same, of what the renderer does not know. `screen`: it bears on nothing that is cut, in the renderer either. `within`: of a part that is told as a
 * whole. Else the check that tells of it.
 */
type Bears = 'read' | 'geometry' | 'alone' | 'screen' | 'within' | 'not-cuttable' | 'unsupported' | 'unreadable-markup';

const PROPERTIES: readonly (readonly [name: string, value: string, ground: keyof typeof GROUNDS, bears: Bears])[] = [
  // Property Index of SVG 2.
  ['alignment-baseline', 'middle', 'text', 'within'],
  ['baseline-shift', 'super', 'text', 'within'],
  ['color', 'lime', 'current', 'read'],
  ['color-interpolation', 'linearRGB', 'shape', 'screen'],
  ['color-rendering', 'optimizeSpeed', 'shape', 'screen'],
  ['cursor', 'pointer', 'shape', 'screen'],
  ['dominant-baseline', 'middle', 'text', 'within'],
  ['fill', 'lime', 'shape', 'read'],
  ['fill-opacity', '0', 'shape', 'read'],
  ['fill-rule', 'evenodd', 'star', 'read'],
  ['glyph-orientation-vertical', '0', 'text', 'within'],
  ['glyph-orientation-horizontal', '0', 'text', 'within'],
  ['image-rendering', 'pixelated', 'shape', 'screen'],
  ['inline-size', '9px', 'text', 'within'],
  ['marker', 'url(#m)', 'shape', 'alone'],
  ['marker-end', 'url(#m)', 'shape', 'read'],
  ['marker-mid', 'url(#m)', 'shape', 'read'],
  ['marker-start', 'url(#m)', 'shape', 'read'],
  ['overflow', 'visible', 'viewport', 'read'],
  ['paint-order', 'stroke', 'shape', 'read'],
  ['pointer-events', 'none', 'shape', 'screen'],
  ['shape-rendering', 'crispEdges', 'shape', 'screen'],
  ['stop-color', 'lime', 'stop', 'read'],
  ['stop-opacity', '0', 'stop', 'read'],
  ['stroke', 'lime', 'shape', 'read'],
  ['stroke-dasharray', '5 9', 'bend', 'read'],
  ['stroke-dashoffset', '4', 'curve', 'read'],
  ['stroke-linecap', 'round', 'bend', 'read'],
  ['stroke-linejoin', 'round', 'bend', 'read'],
  ['stroke-miterlimit', '1', 'bend', 'read'],
  ['stroke-opacity', '0', 'shape', 'read'],
  ['stroke-width', '2', 'shape', 'read'],
  ['text-anchor', 'end', 'text', 'within'],
  ['text-decoration-fill', 'red', 'text', 'within'],
  ['text-decoration-stroke', 'red', 'text', 'within'],
  ['text-rendering', 'geometricPrecision', 'text', 'within'],
  ['transform', 'translate(9px, 4px)', 'shape', 'alone'],
  ['vector-effect', 'non-scaling-stroke', 'scaled', 'alone'],
  ['x', '9px', 'rect', 'geometry'],
  ['y', '9px', 'rect', 'geometry'],
  ['cx', '40px', 'circle', 'geometry'],
  ['cy', '40px', 'circle', 'geometry'],
  ['r', '5px', 'circle', 'geometry'],
  ['rx', '9px', 'round', 'geometry'],
  ['ry', '9px', 'round', 'geometry'],
  ['d', 'path("M9 9h20v9z")', 'star', 'alone'],
  // Described in SVG 2, of other specifications.
  ['display', 'none', 'shape', 'read'],
  ['opacity', '0', 'shape', 'read'],
  ['visibility', 'hidden', 'shape', 'read'],
  ['width', '9px', 'rect', 'geometry'],
  ['height', '9px', 'rect', 'geometry'],
  ['line-height', '2', 'text', 'within'],
  ['shape-image-threshold', '.5', 'text', 'within'],
  ['shape-inside', 'url(#c)', 'text', 'within'],
  ['shape-margin', '9px', 'text', 'within'],
  ['shape-padding', '9px', 'text', 'within'],
  ['shape-subtract', 'url(#c)', 'text', 'within'],
  ['text-overflow', 'ellipsis', 'text', 'within'],
  ['white-space', 'pre', 'text', 'within'],
  ['font', '9px serif', 'text', 'within'],
  ['font-family', 'serif', 'text', 'within'],
  ['font-feature-settings', '"liga"', 'text', 'within'],
  ['font-kerning', 'none', 'text', 'within'],
  ['font-size', '9px', 'font', 'read'],
  ['font-size-adjust', '1', 'text', 'within'],
  ['font-stretch', 'condensed', 'text', 'within'],
  ['font-style', 'italic', 'text', 'within'],
  ['font-variant', 'small-caps', 'text', 'within'],
  ['font-variant-ligatures', 'none', 'text', 'within'],
  ['font-weight', 'bold', 'text', 'within'],
  ['hanging-punctuation', 'first', 'text', 'within'],
  ['hyphens', 'auto', 'text', 'within'],
  ['letter-spacing', '3px', 'text', 'within'],
  ['line-break', 'strict', 'text', 'within'],
  ['overflow-wrap', 'anywhere', 'text', 'within'],
  ['tab-size', '4', 'text', 'within'],
  ['text-align', 'end', 'text', 'within'],
  ['text-align-all', 'end', 'text', 'within'],
  ['text-align-last', 'end', 'text', 'within'],
  ['text-combine-upright', 'all', 'text', 'within'],
  ['text-decoration', 'underline', 'text', 'within'],
  ['text-decoration-color', 'red', 'text', 'within'],
  ['text-decoration-line', 'underline', 'text', 'within'],
  ['text-decoration-style', 'wavy', 'text', 'within'],
  ['text-indent', '9px', 'text', 'within'],
  ['text-justify', 'none', 'text', 'within'],
  ['text-orientation', 'upright', 'text', 'within'],
  ['text-transform', 'uppercase', 'text', 'within'],
  ['direction', 'rtl', 'text', 'within'],
  ['unicode-bidi', 'bidi-override', 'text', 'within'],
  ['vertical-align', 'super', 'text', 'within'],
  ['word-break', 'break-all', 'text', 'within'],
  ['word-spacing', '9px', 'text', 'within'],
  ['writing-mode', 'vertical-rl', 'text', 'within'],
  // CSS Masking 1.
  ['clip', 'rect(0 9px 9px 0)', 'shape', 'unsupported'],
  ['clip-path', 'url(#c)', 'shape', 'read'],
  ['clip-path', 'circle(9px)', 'shape', 'not-cuttable'],
  ['clip-rule', 'evenodd', 'clip', 'read'],
  ['mask', 'url(#k)', 'shape', 'not-cuttable'],
  ['mask-border', 'url(#k)', 'shape', 'unsupported'],
  ['mask-border-source', 'url(#k)', 'shape', 'unsupported'],
  ['mask-image', 'url(#k)', 'shape', 'unsupported'],
  ['mask-type', 'alpha', 'mask', 'within'],
  // Filter Effects 1.
  ['backdrop-filter', 'blur(3px)', 'shape', 'unsupported'],
  ['color-interpolation-filters', 'sRGB', 'flood', 'within'],
  ['filter', 'blur(3px)', 'shape', 'not-cuttable'],
  ['flood-color', 'lime', 'flood', 'within'],
  ['flood-opacity', '.5', 'flood', 'within'],
  ['lighting-color', 'lime', 'flood', 'within'],
  // Compositing 1.
  ['isolation', 'isolate', 'shape', 'screen'],
  ['mix-blend-mode', 'multiply', 'shape', 'not-cuttable'],
  // CSS Transforms 1 and 2, Motion Path 1, Animations 1.
  ['transform-box', 'fill-box', 'rotated', 'alone'],
  ['transform-origin', '20px 15px', 'rotated', 'alone'],
  ['translate', '9px', 'shape', 'unsupported'],
  ['rotate', '9deg', 'shape', 'unsupported'],
  ['scale', '2', 'shape', 'unsupported'],
  ['offset', 'path("M0 0h9")', 'shape', 'unsupported'],
  ['offset-path', 'path("M0 0h9")', 'shape', 'unsupported'],
  ['animation', 'turn 3s', 'shape', 'unsupported'],
  ['animation-name', 'turn', 'shape', 'unsupported'],
  // Values that some programs follow and the reader does not.
  ['fill', 'color(display-p3 1 0 0)', 'shape', 'unreadable-markup'],
  ['fill', 'light-dark(red, blue)', 'shape', 'unreadable-markup'],
  ['stroke-width', 'calc(1px + 2px)', 'shape', 'unreadable-markup'],
  ['stroke-width', '1vw', 'shape', 'unreadable-markup'],
  ['stroke-dasharray', '5vmin', 'shape', 'unreadable-markup'],
  ['opacity', 'calc(.5)', 'shape', 'unreadable-markup'],
  ['width', '10vw', 'rect', 'unreadable-markup'],
  ['width', '10vmax', 'rect', 'unreadable-markup'],
  ['height', 'calc(9px * 2)', 'rect', 'unreadable-markup'],
  ['transform', 'rotate3d(1, 1, 1, 45deg)', 'shape', 'unreadable-markup'],
  ['vector-effect', 'non-rotation', 'shape', 'unsupported'],
  ['stroke-linejoin', 'arcs', 'bend', 'unsupported'],
  ['stroke-linejoin', 'miter-clip', 'bend', 'unsupported'],
];

describe('SVG 2, "Property Index": what each property bears on', () => {
  it.each(PROPERTIES)('%s: %s', (name, value, ground, bears) => {
    const write = (style: string): string => inMillimetres(`${DEFS}${GROUNDS[ground].replace('$', style)}`);
    const [text, plain] = [write(`style='${name}:${value}'`), write('')];
    const [drawing, without] = [draw(text), draw(plain)];
    if (bears === 'read' || bears === 'geometry' || bears === 'alone') {
      expect(painted(drawing)).not.toBe(painted(without));
      expect(told(drawing, without)).toEqual([]);
      if (bears === 'read') expectAsRendered(text);
      if (bears !== 'geometry') return;
      const attribute = GROUNDS[ground].replace(new RegExp(` ${name}="[^"]*"`), '').replace('$', `${name}="${value}"`);
      expectAsRendered(inMillimetres(attribute));
      expect(painted(draw(inMillimetres(attribute)))).toBe(painted(drawing));
    } else if (bears === 'screen' || bears === 'within') {
      expect([painted(drawing), told(drawing, without)]).toEqual([painted(without), []]);
      if (bears === 'within') expect(told(without)).toEqual(['not-cuttable']);
      else if (name !== 'shape-rendering') expect(sameCover(text, plain)).toBe(true);
    } else expect(told(drawing, without)).toEqual([bears]);
  });

  it.each(PROPERTIES.filter(([, , , bears]) => bears === 'unreadable-markup'))(
    '%s: %s is told from a style sheet too',
    (name, value, ground) => {
      const rule = `<style>path, rect { ${name}: ${value} }</style>`;
      const content = DEFS.replace(/<rect/g, '<circle') + GROUNDS[ground].replace('$', '');
      expect(told(draw(inMillimetres(rule + content)))).toContain('unreadable-markup');
    },
  );

  it('a value that another one beats is not told', () => {
    const content = '<rect width="9" height="9" fill="nonsense" style="fill: red"/>';
    expect(told(draw(inMillimetres(content)))).toEqual([]);
  });
});

describe('line joins that SVG 2 adds', () => {
  it.each(['miter-clip', 'arcs'])('%s is read as mitred, as the renderer does', (join) => {
    for (const limit of [1, 1.6, 3]) {
      const attributes = `stroke="red" stroke-width="10" stroke-linejoin="${join}" stroke-miterlimit="${limit}"`;
      expectAsRendered(inMillimetres(`<path d="M20 70L50 20L80 70" fill="none" ${attributes}/>`));
    }
  });
});

describe('units of fonts', () => {
  it('rem is the font size of the outermost element, whatever is stated further in', () => {
    const text = inMillimetres(
      '<g font-size="3"><rect x="1rem" y="2em" width="2rem" height="1ch"/></g>',
      'font-size="10"',
    );
    const [shape] = draw(text).shapes;
    expect(shape && filledArea(shape)).toBeCloseTo(20 * 1.5, 6);
  });
});
