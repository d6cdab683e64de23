import { describe, expect, it } from 'vitest';
import { parseMarkup } from '../../src/markup/parse';
import { attributeOf } from '../../src/markup/query';
import { problemsOf, shown, underlinedIn } from './show';

describe('well-formed markup', () => {
  const text =
    '\uFEFF<?xml version="1.0"?>\r\n<!-- 🦩 é -->\n<svg:svg xmlns:svg="http://www.w3.org/2000/svg"' +
    "\n  width = '1mm' >" +
    '<title>Reiher ü &amp; Schilf</title><style><![CDATA[a{}]]></style><svg:g/></svg:svg >\n';
  const document = parseMarkup(text);
  const root = document.root!;
  const slice = ({ from, to }: { from: number; to: number }): string => text.slice(from, to);

  it('has no problems', () => expect(document.problems).toEqual([]));

  it('knows where each part stands', () => {
    expect(slice(root.startTag)).toMatch(/^<svg:svg xmlns[\s\S]*'1mm' >$/);
    expect(slice(root.nameSpan)).toBe('svg:svg');
    expect(slice(root.endTag!)).toBe('</svg:svg >');
    expect(slice(root.span)).toBe(text.slice(text.indexOf('<svg:svg'), -1));
    const width = attributeOf(root, 'width')!;
    expect([width.span, width.nameSpan, width.valueSpan].map(slice)).toEqual(["width = '1mm'", 'width', '1mm']);
  });

  it('keeps comments, instructions, text and CDATA', () => {
    expect(document.children.map((node) => [node.kind, slice(node.span)])).toEqual([
      ['instruction', '<?xml version="1.0"?>'],
      ['text', '\r\n'],
      ['comment', '<!-- 🦩 é -->'],
      ['text', '\n'],
      ['element', slice(root.span)],
      ['text', '\n'],
    ]);
    const [title, style] = root.children.map((node) => (node.kind === 'element' ? node.children[0] : undefined));
    expect(title).toMatchObject({ kind: 'text', value: 'Reiher ü & Schilf' });
    expect(style).toMatchObject({ kind: 'cdata', value: 'a{}' });
    expect(style?.kind === 'cdata' && slice(style.contentSpan)).toBe('a{}');
  });
});

describe('namespaces', () => {
  it('resolves prefixes, the default, and what inner elements declare anew', () => {
    const inner = '<g xmlns="T" xmlns:a="B"><a:h/></g><i/></svg>';
    const { root } = parseMarkup('<svg xmlns="S" xmlns:a="A"><a:g a:x="1" y="2"/>' + inner);
    const [first, second, third] = root!.children;
    expect(first).toMatchObject({ name: 'a:g', localName: 'g', namespace: 'A' });
    expect(first?.kind === 'element' && first.attributes).toMatchObject([
      { localName: 'x', namespace: 'A' },
      { localName: 'y', namespace: '' },
    ]);
    expect(second).toMatchObject({ namespace: 'T', children: [{ name: 'a:h', namespace: 'B' }] });
    expect(third).toMatchObject({ namespace: 'S' });
  });

  it('gives no namespace where none is declared', () => expect(parseMarkup('<svg/>').root!.namespace).toBe(''));

  it('takes xlink as meant where it is not declared, and says so', () => {
    const { root, problems } = parseMarkup('<use xlink:href="#a" b:c=""/>');
    expect(root!.attributes.map(({ namespace }) => namespace)).toEqual(['http://www.w3.org/1999/xlink', '']);
    expect(problems.map(({ message }) => message)).toEqual([
      'The prefix xlink is not declared. Write xmlns:xlink="http://www.w3.org/1999/xlink" on the outermost element.',
      'The prefix b is not declared.',
    ]);
  });
});

describe('values', () => {
  it.each([
    ['a\tb\nc\rd\r\ne', 'a b c d e', [0, 1, 2, 3, 4, 5, 6, 7, 9, 10]],
    ['x&lt;y', 'x<y', [0, 1, 5, 6]],
    ['&#x1F426;!', '🐦!', [0, 0, 9, 10]],
    ['🐦&#65;é', '🐦Aé', [0, 1, 2, 7, 8]],
    ['&#10;&#9;', '\n\t', [0, 5, 9]],
    ['&nope;&', '&nope;&', [0, 1, 2, 3, 4, 5, 6, 7]],
    ['', '', [0]],
  ])('%j has the value %j and the way back', (written, value, offsets) => {
    const before = '<a b="';
    const found = parseMarkup(`${before}${written}"/>`).root!.attributes[0]!;
    expect(found.value).toBe(value);
    const back = Array.from({ length: value.length + 1 }, (_, index) => found.textOffset(index) - before.length);
    expect(back).toEqual(offsets);
  });

  it('expands the entities that the document type declares', () => {
    const text =
      '<!DOCTYPE svg PUBLIC "a>b" "c" [\n<!-- ]> --><!ENTITY ns_svg "http://www.w3.org/2000/svg">' +
      "<!ENTITY st '&one;: &#35;f00'><!ENTITY one 'fill'><!ENTITY one 'late'><!ENTITY far SYSTEM 'x.txt'>\n]>\n" +
      '<svg xmlns="&ns_svg;" style="a&st;b" c="&far;"/>';
    const { root, problems } = parseMarkup(text);
    expect(root!.namespace).toBe('http://www.w3.org/2000/svg');
    const style = attributeOf(root!, 'style')!;
    expect(style.value).toBe('afill: #f00b');
    expect(text.slice(style.textOffset(1), style.textOffset(style.value.length - 1))).toBe('&st;');
    expect(problems).toMatchObject([{ message: 'The text of &far; is in another file, which is not read.' }]);
  });

  it('does not let entities grow beyond measure, nor run in circles', () => {
    const bombs = Array.from({ length: 30 }, (_, n) => `<!ENTITY a${n + 1} "${`&a${n};`.repeat(10)}">`).join('');
    const circle = '<!ENTITY p "&q;"><!ENTITY q "&p;">';
    const text = `<!DOCTYPE s [<!ENTITY a0 "ha">${bombs}${circle}]><s a="&a30;" p="&p;">&a29;</s>`;
    const { root, problems } = parseMarkup(text);
    expect(attributeOf(root!, 'a')!.value).toBe('&a30;');
    expect(problems.map(({ span }) => text.slice(span.from, span.to))).toEqual(['&a30;', '&p;', '&a29;']);
    const many = `<!DOCTYPE s [<!ENTITY x "${'x'.repeat(100_000)}">]><s>${'&x;'.repeat(10_000)}</s>`;
    const [child] = parseMarkup(many).root!.children;
    expect(child?.kind === 'text' && child.value.length).toBeLessThan(5e6);
  });
});

/** What stands in the file; the tree in short; what is underlined. */
const RECOVERIES: readonly [text: string, tree: string, ...underlined: string[]][] = [
  ['<s><p d="M0 0\n<g x="1"/><h/></s>', 's(p![d="M0 0"], g[x="1"], h)', 'd="'],
  ['<s><p d="M0 0/>\n<p d="M1 1"/></s>', 's(p[d="M0 0"], text "\\n", p[d="M1 1"])', 'd="'],
  ['<s><p d="M0 0 fill="red" x="1"/><g/></s>', 's(p[d="M0 0" fill="red" x="1"], g)', 'd="'],
  ["<s><p d='M0 0\n</s>", 's(p![d="M0 0"])', "d='"],
  ['<s><t x="1>ja</t></s>', 's(t[x="1"](text "ja"))', 'x="'],
  ['<s><p d="M0 0<!-- c --></s>', 's(p![d="M0 0"], comment " c ")', 'd="'],
  ['<s><r x="1" <g/></s>', 's(r![x="1"], g)', '<r'],
  ['<s><r <g/></s>', 's(r!, g)', '<r'],
  ['<s><r<g/></s>', 's(r!, g)', '<r'],
  ['<s><g fil</g></s>', 's(g[fil=""])', '<g', 'fil'],
  ['<s><g fil<h/></s>', 's(g![fil=""], h)', '<g', 'fil'],
  ['<s><g x=1<h/></s>', 's(g![x="1"], h)', '<g', 'x=1'],
  ['<s><g id="a<h/></g></s>', 's(g[id="a"](h))', 'id="'],
  ['<s><g><p></g></s>', 's(g(p!))', 'p'],
  ['<s><g>', 's!(g!)', 's', 'g'],
  ['<s><g></x></g></s>', 's(g)', '</x>'],
  ['<s></x', 's!', 's', '</x', '</x'],
  ['<s><g></g <h/></s>', 's(g, h)', '</g'],
  ['<s><g></g<h/></s>', 's(g, h)', '</g'],
  ['<s></ s>', 's', '</ s'],
  ['<s></s x="1">', 's', ' x="1"'],
  ['<s></></s>', 's(text "</>")', '<'],
  ['<s x="1" x="2"/>', 's[x="1"]', 'x'],
  ['<s x/>', 's[x=""]', 'x'],
  ['<s x y="1"/>', 's[x="" y="1"]', 'x'],
  ['<s x=>t</s>', 's[x=""](text "t")', 'x'],
  ['<s x= y="1"/>', 's[x="" y="1"]', 'x'],
  ['<s x=1 y=2/>', 's[x="1" y="2"]', 'x=1', 'y=2'],
  ['<s x=1" y="2"/>', 's[x="1" y="2"]', 'x=1"'],
  ['<s x="1"y="2"/>', 's[x="1" y="2"]', 'y'],
  ['<s / x="1"/>', 's[x="1"]', '/'],
  ['<s x="1"/ >', 's[x="1"]', '/'],
  ['<s x="a < b"/>', 's[x="a < b"]', '<'],
  ['<s 1x="2"/>', 's[1x="2"]', '1x'],
  ['<s>1 < 2 <3 & 4</s>', 's(text "1 < 2 <3 & 4")', '<', '<', '&'],
  ['<s>a ]]> b</s>', 's(text "a ]]> b")', ']]>'],
  ['<s>&nope;&#0;&#xD800;</s>', 's(text "&nope;&#0;&#xD800;")', '&nope;', '&#0;', '&#xD800;'],
  ['<s>\u0007</s>', 's(text "\\u0007")', '\u0007'],
  ['<s><!-- a -- b --></s>', 's(comment " a -- b ")', '--'],
  ['<s><!-- a\n<g/></s>', 's(comment " a", text "\\n", g)', '<!--'],
  ['<s><!-- a -><g/></s>', 's(comment " a ->", g)', '<!--'],
  ['<s><![CDATA[ a</s>', 's(cdata " a")', '<![CDATA['],
  ['<s><?php echo <g/></s>', 's(instruction "php echo ", g)', '<?'],
  ['<s><!FOO><g/></s>', 's(g)', '<!FOO>'],
  ['<?xml version="1.0"\n<s/>', 'instruction "xml version=\\"1.0\\"\\n" s', '<?'],
  ['<!DOCTYPE s\n<s/>', 'doctype "<!DOCTYPE s\\n" s', '<!DOCTYPE'],
  ['<!DOCTYPE s [<!ENTITY a "b>\n<s/>', 'doctype "<!DOCTYPE s [" text "\\n" s', '<!DOCTYPE', '<!ENTITY '],
  [' <?xml version="1.0"?><s/>', 'text " " instruction "xml version=\\"1.0\\"" s', '<?xml'],
  ['<s/><!DOCTYPE s>', 's doctype "<!DOCTYPE s>"', '<!DOCTYPE'],
  ['<s/><t/>', 's t', 't'],
  ['<s/> tail ', 's text " tail "', 'tail'],
  ['head<s/>', 'text "head" s', 'head'],
  ['', '', ''],
  [' \n', 'text " \\n"', ' '],
  ['<!-- only -->', 'comment " only "', '<'],
  ['no markup', 'text "no markup"', 'no markup'],
  ['<', 'text "<"', '<', '<'],
  ['<s', 's!', '<s', 's'],
  ['<s ', 's!', '<s', 's'],
  ['<s/', 's!', '<s', 's'],
  ['<s x', 's![x=""]', '<s', 's', 'x'],
  ['<s x=', 's![x=""]', '<s', 's', 'x'],
  ['<s x="', 's![x=""]', 's', 'x="'],
  ['<s x="1', 's![x="1"]', 's', 'x="'],
  ['<s x="1"', 's![x="1"]', '<s', 's'],
  ['<s/><!', 's', '<!'],
  ['<s/></', 's', '</'],
  ['<s>&', 's!(text "&")', 's', '&'],
];

describe('broken and half-typed markup', () => {
  it.each(RECOVERIES)('reads %j as %s', (text, tree, ...underlined) => {
    expect(shown(text)).toBe(tree);
    expect(underlinedIn(parseMarkup(text))).toEqual(underlined);
    expect(parseMarkup(text).problems.every(({ severity: gravity }) => gravity === 'fatal')).toBe(true);
  });

  it('says what is wrong in a sentence', () => {
    expect(problemsOf('<s><p d="M0 0 <g></s>')).toEqual([
      'd=" | The value of d has no closing quote.',
      'g | <g> is not closed: </g> is missing before </s>.',
    ]);
    expect(problemsOf('<s><g></rect></g></s>')).toEqual(['</rect> | </rect> closes nothing: the open element is <g>.']);
  });

  it('lists 200 problems, and then that there are more', () => {
    const { problems } = parseMarkup(`<s>${'&'.repeat(1000)}</s>`);
    expect(problems).toHaveLength(201);
    expect(problems.at(-1)!.message).toBe('There are more than 200 problems; the others are not listed.');
  });
});

describe('size', () => {
  it('reads 100,000 elements inside each other, closed or not', () => {
    const closed = parseMarkup('<g>'.repeat(100_000) + '</g>'.repeat(100_000));
    expect(closed.problems).toEqual([]);
    expect(closed.root!.span).toEqual({ from: 0, to: 700_000 });
    expect(parseMarkup('<g>'.repeat(100_000)).root!.span).toEqual({ from: 0, to: 300_000 });
  });

  const tagPieces = ['<a ', '<a', '<', '<a x', '<a x="', "<a x='>", '</a', '</a x ', '</'];

  it.each([...tagPieces, '<!-- ', '<![CDATA[', '<?a ', '<!DOCTYPE ['])(
    'takes %j many times over without reading the rest of the text for each',
    (piece) => {
      const count = 60_000;
      expect(parseMarkup(piece.repeat(count)).problems.length).toBeGreaterThan(0);
      expect(parseMarkup(`<a b="${piece.repeat(count)}`).problems.length).toBeGreaterThan(0);
    },
  );
});
