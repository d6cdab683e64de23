/**
 * Source: SVG 2, "Styling" (https://www.w3.org/TR/SVG2/styling.html#PresentationAttributes), CSS Cascading and
 * Inheritance 4, Selectors 4, CSS Custom Properties 1. Three of them were seen to hold in @resvg/resvg-js 2.6.2 too,
 * which is asked here as well.
 */
import { describe, expect, it } from 'vitest';
import { colours, drawMm, inMillimetres } from '../drawing/draw';
import { renderText } from './paint';

const RECT = 'width="100" height="100"';

function colourOf(content: string): string | undefined {
  return colours(drawMm(content)).at(-1);
}

function rendererColour(content: string): string {
  const { pixels } = renderText(inMillimetres(content), 10);
  return `#${[0, 1, 2].map((channel) => (pixels[4 * 55 + channel] ?? 0).toString(16).padStart(2, '0')).join('')}`;
}

describe('presentation attributes', () => {
  it.each([
    ['come before all author sheets', `<style>*{fill:red}</style><rect ${RECT} fill="lime"/>`, '#ff0000'],
    [
      'a style attribute beats sheets',
      `<style>rect{fill:red}</style><rect ${RECT} fill="lime" style="fill:blue"/>`,
      '#0000ff',
    ],
    ['take no !important', `<rect ${RECT} fill="lime !important"/>`, '#000000'],
  ])('%s', (_name, content, expected) => {
    expect(colourOf(content)).toBe(expected);
    expect(rendererColour(content)).toBe(expected);
  });
});

describe('cascade', () => {
  it.each([
    [
      'weight decides before order',
      `<style>#i{fill:red} .c.c{fill:lime} rect{fill:blue}</style><rect id="i" class="c" ${RECT}/>`,
      '#ff0000',
    ],
    ['order decides among equals', `<style>.a{fill:red} .b{fill:lime}</style><rect class="b a" ${RECT}/>`, '#00ff00'],
    [
      '!important beats the style attribute',
      `<style>rect{fill:red!important}</style><rect style="fill:lime" ${RECT}/>`,
      '#ff0000',
    ],
    [
      '!important in the style attribute beats that',
      `<style>rect{fill:red!important}</style><rect style="fill:lime!important" ${RECT}/>`,
      '#00ff00',
    ],
    [
      'what cannot be read does not count',
      `<style>rect{fill:red} rect{fill:rgb(no)}</style><rect ${RECT}/>`,
      '#ff0000',
    ],
    ['inherit', `<g fill="red"><rect ${RECT} style="fill:inherit"/></g>`, '#ff0000'],
    ['initial', `<g fill="red"><rect ${RECT} style="fill:initial"/></g>`, '#000000'],
    ['unset inherits what is inherited', `<g fill="red"><rect ${RECT} style="fill:unset"/></g>`, '#ff0000'],
    [
      "currentColor is the element's own",
      `<g color="red" fill="currentColor"><rect ${RECT} color="lime"/></g>`,
      '#00ff00',
    ],
    [
      'CDATA and comments',
      `<style><![CDATA[ /* .x{fill:red} */ rect{fill:lime /* red */} ]]></style><rect ${RECT}/>`,
      '#00ff00',
    ],
    [
      'media screen counts, print does not',
      `<style>@media screen{rect{fill:lime}} @media print{rect{fill:red}}</style><rect ${RECT}/>`,
      '#00ff00',
    ],
    ['a sheet of another type does not count', `<style type="text/x">rect{fill:red}</style><rect ${RECT}/>`, '#000000'],
  ])('%s', (_name, content, expected) => {
    expect(colourOf(content)).toBe(expected);
  });
});

describe('selectors', () => {
  const body = `<g class="a b"><rect ${RECT}/><circle r="50"/><rect id="last" data-x="one two" ${RECT}/></g>`;
  it.each([
    ['g rect', true],
    ['svg > rect', false],
    ['g > rect', true],
    ['circle + rect', true],
    ['rect + rect', false],
    ['rect ~ rect', true],
    ['rect:first-child', false],
    ['rect:last-child', true],
    ['rect:nth-child(3)', true],
    ['rect:nth-child(2n)', false],
    ['rect:nth-of-type(2)', true],
    ['rect:nth-last-child(1)', true],
    ['rect:first-of-type', false],
    ['rect:last-of-type', true],
    ['rect:only-of-type', false],
    ['[data-x]', true],
    ['[data-x~="two"]', true],
    ['[data-x="one"]', false],
    ['[data-x^="one"]', true],
    ['.a.b > #last', true],
    ['.a.c > #last', false],
    ['rect:not(circle)', true],
    ['rect:not(rect)', false],
    [':is(rect, circle)', true],
    ['rect:hover', false],
    ['g:has(circle) rect', true],
    [':root rect', true],
    ['*|rect', true],
    ['g *', true],
    ['RECT', false],
    ['rect, circle', true],
    ['#last#last', true],
    ['.a rect:nth-child(odd):not(:first-child)', true],
  ])('%s matches the last rectangle: %s', (selector, matches) => {
    expect(colourOf(`<style>${selector.replace('>', '&gt;')}{fill:lime}</style>${body}`) === '#00ff00').toBe(matches);
  });

  // Selectors 4, "Calculating a selector's specificity": the list of examples.
  it.each([
    ['*', 'rect'],
    ['rect', 'rect.c'],
    ['g rect', '.c'],
    ['rect.c', '#i'],
    [':where(#i)', 'rect'],
    ['.c', ':is(.c, #i)'],
    ['.c.c', ':not(#none)'],
    ['rect.c', '.c:nth-child(1)'],
    ['svg g rect', '[id]'],
  ])('%s weighs less than %s', (light, heavy) => {
    expect(
      colourOf(`<style>${heavy}{fill:lime} ${light}{fill:red}</style><g><rect id="i" class="c" ${RECT}/></g>`),
    ).toBe('#00ff00');
  });
});

describe('custom properties', () => {
  it.each([
    ['inherited', '<style>svg{--paint:lime} rect{fill:var(--paint)}</style>', '#00ff00'],
    ['fallback', '<style>rect{fill:var(--none, lime)}</style>', '#00ff00'],
    ['fallback in a fallback', '<style>rect{fill:var(--none, var(--neither, lime))}</style>', '#00ff00'],
    ['one in another', '<style>svg{--a:var(--b);--b:lime} rect{fill:var(--a)}</style>', '#00ff00'],
    [
      'a circle counts as not stated',
      '<style>svg{--a:var(--b);--b:var(--a)} rect{fill:var(--a, lime)}</style>',
      '#00ff00',
    ],
    ['invalid when computed: inherited', '<style>svg{fill:lime} rect{fill:var(--none)}</style>', '#00ff00'],
    ['case counts', '<style>svg{--A:lime;--a:red} rect{fill:var(--A)}</style>', '#00ff00'],
  ])('%s', (_name, style, expected) => {
    expect(colourOf(`${style}<rect ${RECT}/>`)).toBe(expected);
  });
});
