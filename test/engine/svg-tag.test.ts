import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { svg } from '../../src/engine/index';

/** Where this very line stands, as the tag finds it. */
const HERE = path.relative(process.cwd(), import.meta.filename).replaceAll(path.sep, '/');
const MARK = / data-tombolo-from="([^"]*):(\d+):(\d+)"/g;

describe('svg', () => {
  it('writes where the template stands into each of its start tags, and into nothing else', () => {
    const text = svg`<g id="a"><path d="M0 0"/><!-- <b --> 1 < 2</g>`;
    const places = [...text.matchAll(MARK)].map(([, file]) => file);
    expect(places).toEqual([HERE, HERE]);
    expect(text.replace(MARK, '')).toBe('<g id="a"><path d="M0 0"/><!-- <b --> 1 < 2</g>');
  });

  it('joins lists, leaves out what is not there, and keeps what other templates drew', () => {
    const dot = (x: number) => svg`<circle cx="${x}" r="1"/>`;
    const text = svg`<g>${[1, 2].map(dot)}${false}${undefined}${null}${0}</g>`;
    expect(text.replace(MARK, '')).toBe('<g><circle cx="1" r="1"/><circle cx="2" r="1"/>0</g>');
    const lines = [...text.matchAll(MARK)].map(([, , line]) => Number(line));
    expect(lines[1]).toBe(lines[2]);
    expect(lines[0]).toBe(lines[1]! + 1);
  });

  it('marks a tag whose attributes are worked out', () => {
    expect(svg`<path${' id="a"'}/>`).toMatch(/^<path data-tombolo-from="[^"]*" id="a"\/>$/);
  });
});
