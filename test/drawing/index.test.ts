import { describe, expect, it } from 'vitest';
import { boxes, colours, draw, drawMm, findings, inMillimetres } from './draw';

describe('no drawing', () => {
  it.each(['', 'just text', '<html/>', '<svg xmlns="urn:other"/>', '<!-- only a comment -->', '<'])('%j', (text) => {
    const drawing = draw(text);
    expect([drawing.width, drawing.height, drawing.shapes.length]).toEqual([0, 0, 0]);
    expect(drawing.problems.map(({ check, severity }) => [check, severity])).toEqual([['unreadable-markup', 'error']]);
    const { span } = drawing.problems[0]!;
    expect(span.from >= 0 && span.to <= text.length && span.from <= span.to).toBe(true);
  });

  it('without a namespace it is read as SVG, and that is said', () => {
    const drawing = draw('<svg width="10mm" height="10mm" viewBox="0 0 10 10"><rect width="5" height="5"/></svg>');
    expect(boxes(drawing)).toEqual([[0, 0, 5, 5]]);
    expect(drawing.problems.map(({ check, severity }) => [check, severity])).toEqual([['unreadable-markup', 'info']]);
  });

  it('a prefix is no hindrance; elements of other namespaces are not drawn', () => {
    const drawing = draw(
      '<s:svg xmlns:s="http://www.w3.org/2000/svg" width="10mm" height="10mm" viewBox="0 0 10 10">' +
        '<s:rect width="5" height="5"/><rect width="6" height="6"/>' +
        '<x:rect xmlns:x="urn:x" width="7" height="7"/></s:svg>',
    );
    expect(boxes(drawing)).toEqual([[0, 0, 5, 5]]);
  });
});

describe('what is painted', () => {
  it('fill before stroke, in document order; paint-order turns that round', () => {
    const parts = (attributes: string): string[] =>
      drawMm(`<rect width="5" height="5" stroke="red" ${attributes}/>`).shapes.map(({ part }) => part);
    expect(parts('')).toEqual(['fill', 'stroke']);
    expect(parts('paint-order="stroke"')).toEqual(['stroke', 'fill']);
    expect(parts('paint-order="markers fill"')).toEqual(['fill', 'stroke']);
    expect(parts('fill="none"')).toEqual(['stroke']);
  });

  it.each([
    'display="none"',
    'visibility="hidden"',
    'visibility="collapse"',
    'fill="none"',
    'fill="transparent"',
    'fill-opacity="0"',
    'opacity="0"',
    'style="fill:#f000"',
    'fill="rgba(1,2,3,0)"',
    'requiredExtensions="urn:x"',
    'systemLanguage="sw"',
  ])('nothing with %s', (attributes) => {
    expect(drawMm(`<rect width="5" height="5" ${attributes}/>`).shapes).toEqual([]);
  });

  it('display none holds for what is inside, visibility can be taken back', () => {
    expect(drawMm('<g display="none"><rect width="5" height="5" display="inline"/></g>').shapes.length).toBe(0);
    expect(drawMm('<g visibility="hidden"><rect width="5" height="5" visibility="visible"/></g>').shapes.length).toBe(
      1,
    );
  });

  it('never directly: what stands in defs, symbol, clipPath, mask, marker, pattern', () => {
    for (const name of ['defs', 'symbol', 'clipPath', 'mask', 'marker', 'pattern']) {
      expect(drawMm(`<${name}><rect width="5" height="5"/></${name}>`).shapes).toEqual([]);
    }
  });

  it('switch draws the first child whose conditions hold', () => {
    expect(
      colours(
        drawMm(
          '<switch><rect width="1" height="1" systemLanguage="de" fill="red"/><rect width="1" height="1" ' +
            'systemLanguage="fr, en-GB" fill="lime"/><rect width="1" height="1" fill="blue"/></switch>',
        ),
      ),
    ).toEqual(['#00ff00']);
  });

  it('opacities multiply', () => {
    const drawing = drawMm(
      '<g opacity=".5"><rect width="5" height="5" opacity=".5" fill-opacity="50%" fill="#ff000080"/></g>',
    );
    expect(drawing.shapes[0]?.opacity).toBeCloseTo(0.0625, 3);
    expect(findings(drawing)).toEqual([
      'not-cuttable: opacity=".5"',
      'not-cuttable: opacity=".5"',
      'not-cuttable: fill-opacity="50%"',
    ]);
  });

  it('the child of the root that a shape belongs to', () => {
    const drawing = drawMm('<g id="a"><g><rect width="1" height="1"/></g></g><rect id="b" width="1" height="1"/>');
    expect(drawing.shapes.map(({ topLevel }) => topLevel.attributes[0]?.value)).toEqual(['a', 'b']);
  });
});

describe('spans', () => {
  const spansOf = (content: string): string[] => {
    const drawing = drawMm(content);
    return drawing.shapes[0]!.subpaths.flatMap(({ spans }) =>
      spans.map(({ from, to }) => drawing.document.text.slice(from, to)),
    );
  };

  it('basic shapes point at their start tag, points at their pair', () => {
    expect(new Set(spansOf('<rect width="5" height="5"><title>x</title></rect>'))).toEqual(
      new Set(['<rect width="5" height="5">']),
    );
    expect(spansOf('<polygon points="0,0 5,0  5 5"/>')).toEqual(['5,0', '5 5', '0,0']);
  });

  it('commands are found through references in the attribute', () => {
    expect(spansOf('<path d="M0 0&#32;L5&#x20;5&#10;H0z"/>')).toEqual(['L5&#x20;5', 'H0', 'z']);
  });
});

describe('what cannot be taken', () => {
  it.each([
    ['<text>heron</text>', 'not-cuttable: <text>'],
    ['<image href="x.png" width="5" height="5"/>', 'not-cuttable: <image href="x.png" width="5" height="5"/>'],
    ['<foreignObject width="5" height="5"/>', 'not-cuttable: <foreignObject width="5" height="5"/>'],
    ['<rect width="5" height="5" filter="url(#f)"/>', 'not-cuttable: filter="url(#f)"'],
    ['<g mask="url(#m)"><rect width="5" height="5"/></g>', 'not-cuttable: mask="url(#m)"'],
    ['<rect width="5" height="5" style="mix-blend-mode:multiply"/>', 'not-cuttable: style="mix-blend-mode:multiply"'],
    ['<rect width="5" height="5" style="clip-path:circle(4px)"/>', 'not-cuttable: style="clip-path:circle(4px)"'],
    ['<rect width="5" height="5" style="rotate:4deg"/>', 'unsupported: style="rotate:4deg"'],
    ['<rect width="5" height="5" fill="url(#nothing) red"/>', 'unsupported: fill="url(#nothing) red"'],
    ['<path d="M0 0L5 5 x"/>', 'unreadable-path: x'],
    ['<polygon points="0 0 5 5 7"/>', 'unreadable-path: 7'],
    ['<rect width="wide" height="5"/>', 'unreadable-markup: wide'],
    ['<rect width="-4" height="5"/>', 'unreadable-markup: -4'],
    ['<rect width="5" height="5" transform="rotate(a)"/>', 'unreadable-markup: a'],
    ['<rect width="5" height="5"><animate attributeName="x"/></rect>', 'unsupported: <animate attributeName="x"/>'],
    ['<blob/>', 'unsupported: blob'],
    ['<style>@import "x.css";</style>', 'unsupported: <style>'],
    ['<style>rect::before{fill:red}</style>', 'unsupported: <style>'],
    ['<text display="none">heron</text>', undefined],
    ['<text visibility="hidden">heron</text>', undefined],
    ['<g><animate attributeName="x"/></g>', 'unsupported: <animate attributeName="x"/>'],
  ])('%s', (content, expected) => {
    expect(findings(drawMm(content))).toEqual(expected === undefined ? [] : [expected]);
  });

  it('a style sheet outside the file, and elements in an entity', () => {
    expect(findings(draw(`<?xml-stylesheet href="x.css"?>${inMillimetres('')}`))).toEqual([
      'unsupported: <?xml-stylesheet href="x.css"?>',
    ]);
    const drawing = draw(`<!DOCTYPE svg [<!ENTITY smile "<circle r='5'/>">]>${inMillimetres('<g>&smile;</g>&lt;')}`);
    expect(findings(drawing)).toEqual(['unsupported: &smile;']);
  });

  it('every message ends as a sentence and tells what to do', () => {
    const drawing = drawMm(
      '<text/><image/><foreignObject/><g filter="url(#f)" mask="url(#m)" opacity=".5"/><use href="#x"/>',
    );
    for (const { message } of drawing.problems) expect(message).toMatch(/^[A-Z"].{40,}\.$/);
  });
});

describe('gradients and patterns', () => {
  const stops = (...colourList: string[]): string =>
    colourList.map((colour) => `<stop stop-color="${colour}"/>`).join('');

  it('a gradient-filled shape is there, with the mean of the stops', () => {
    const drawing = drawMm(
      `<linearGradient id="g">${stops('#000', '#ff8000')}</linearGradient><rect width="5" height="5" fill="url(#g)"/>`,
    );
    expect(drawing.shapes[0]?.paint).toEqual({ kind: 'server', colour: '#804000' });
    expect(findings(drawing)).toEqual(['not-cuttable: fill="url(#g)"']);
  });

  it('stops of one colour are flat, also by reference; none at all paint nothing', () => {
    const drawing = drawMm(
      `<linearGradient id="a">${stops('red', 'red')}</linearGradient><radialGradient id="b" href="#a"/>` +
        '<linearGradient id="c"/><rect width="5" height="5" fill="url(#b)"/>' +
        '<rect width="5" height="5" fill="url(#c)"/>',
    );
    expect(drawing.shapes.map(({ paint }) => paint)).toEqual([{ kind: 'colour', colour: '#ff0000' }]);
    expect(drawing.problems).toEqual([]);
  });

  it('gradients that refer to each other end', () => {
    expect(
      drawMm(
        '<linearGradient id="a" href="#b"/><linearGradient id="b" href="#a"/>' +
          '<rect width="5" height="5" fill="url(#a)"/>',
      ).shapes,
    ).toEqual([]);
  });

  it('a broken reference falls back', () => {
    expect(colours(drawMm('<rect width="5" height="5" fill="url(#none) lime"/>'))).toEqual(['#00ff00']);
    expect(drawMm('<rect width="5" height="5" fill="url(#none)"/>').shapes).toEqual([]);
  });

  it('a pattern', () => {
    const drawing = drawMm('<pattern id="p"/><rect width="5" height="5" fill="url(&quot;#p&quot;)"/>');
    expect(drawing.shapes[0]?.paint.kind).toBe('server');
    expect(drawing.problems[0]?.check).toBe('not-cuttable');
  });
});
