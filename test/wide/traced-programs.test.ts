/** Traced programs that take long to begin, or need Debian's Python: the same promises as in `test/trace`. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it, test } from 'vitest';
import { expectTraced } from '../trace/expect-traced';
import { placedElements } from '../trace/places';
import { IN_PYTHON, textOf, WITH_LIBRARIES } from '../trace/programs';
import { asPath, TraceWorkshop } from '../trace/workshop';

let workshop: TraceWorkshop;
beforeAll(async () => {
  workshop = await TraceWorkshop.create();
});
afterAll(() => workshop.dispose());

describe('a traced program', () => {
  it.each([...WITH_LIBRARIES, ...IN_PYTHON])('$title', async (program) => {
    await workshop.empty();
    await workshop.file(program.file, textOf(program));
    if (program.build) expect(await workshop.plain(program.build)).toMatchObject({ code: 0 });
    await expectTraced(workshop, program);
  });
});

const fixture = (name: string) => readFileSync(path.join(import.meta.dirname, '../trace/programs', name), 'utf8');

describe('a program in JavaScript', () => {
  it.each([
    ["process.kill(process.pid, 'SIGKILL'); '<g>'", 137],
    ['const a = ;', 1],
    [
      "const list = ['a', 'b']\n'<g/>'.repeat(2)\nconsole.log(list, /<g>/.test('<g>'), '<g>' === `<g>`, { '<g>': 1 }['<g>'])",
      0,
    ],
    ["console.log('<svg/><a href=\"x\"><g></g></a>'.replace('<g>', '<g id=\"1\">').indexOf('<svg'))", 0],
  ])('%j prints and ends as it does by itself', async (text, code) => {
    await workshop.empty();
    await workshop.file('gen.mjs', text);
    const plain = await workshop.plain(['node', 'gen.mjs', 'a', 'b c']);
    const traced = await workshop.traced(['node', 'gen.mjs', 'a', 'b c']);
    expect(traced).toMatchObject({ code, stdout: plain.stdout });
    expect(asPath(traced.stderr)).toBe(asPath(plain.stderr));
  });

  it('that prints in many portions has each mark taken out whole', async () => {
    await workshop.empty();
    await workshop.file('gen.mjs', fixture('portions.mjs'));
    const plain = await workshop.plain(['node', 'gen.mjs']);
    expect((await workshop.traced(['node', 'gen.mjs'])).stdout).toBe(plain.stdout);
  });
});

describe('a program in Python', () => {
  const run = async (text: string) => {
    await workshop.empty();
    await workshop.file('gen.py', text);
    const command = ['/usr/bin/python3', 'gen.py'];
    return { plain: await workshop.plain(command), traced: await workshop.traced(command) };
  };

  it.each([
    ["import sys\nprint('<svg>', file=sys.stderr)\nsys.exit(3)", 3],
    ["def draw():\n    raise ValueError('<g>')\ndraw()", 1],
    ["import sys, atexit\natexit.register(print, 'done')\nprint('<path/>', sys.argv, __name__, sys.path[0] != '')", 0],
    ['import sys\nprint(sys.path)', 0],
    ['x = (', 1],
  ])('%j prints and ends as it does by itself', async (text, code) => {
    const { plain, traced } = await run(text);
    expect(traced).toMatchObject({ code, stdout: plain.stdout, stderr: plain.stderr });
    expect(plain.code).toBe(code);
  });

  it('marks the modules that it imports, and leaves no compiled ones', async () => {
    await workshop.empty();
    await workshop.file('shapes.py', 'def dot(x):\n    return f\'<circle id="d{x}" r="1"/>\'\n');
    await workshop.file('gen.py', "import shapes\nopen('out.svg', 'w').write('<svg>' + shapes.dot(1) + '</svg>')\n");
    const { outputs } = await workshop.traced(['/usr/bin/python3', 'gen.py']);
    expect(workshop.read('out.svg')).toBe('<svg><circle id="d1" r="1"/></svg>');
    const [output] = outputs.filter(({ file }) => file.endsWith('out.svg'));
    expect(output?.marks?.places).toEqual([['gen.py:2:29'], ['shapes.py:2:14', 'gen.py:2:38']]);
    expect(workshop.has('__pycache__')).toBe(false);
  });
});

describe('what lxml writes itself', () => {
  it.each([
    ["tree.write('../elsewhere.svg')"],
    ["tree.write(file='../elsewhere.svg', xml_declaration=True, encoding='utf-8')"],
    ["import pathlib\ntree.write(pathlib.Path('..') / 'elsewhere.svg')"],
    ["svg.getroottree().write_c14n('../elsewhere.svg')"],
    ["name = '../elsewhere.svg'\nfor each in [tree]: each.write(name, pretty_print=True)"],
  ])('outside of the working folder is stripped, too: %s', async (write) => {
    await workshop.empty();
    const made = "from lxml import etree\nsvg = etree.Element('svg')\netree.SubElement(svg, 'path', d='M0 0h9v9z')\n";
    await workshop.file('gen.py', `${made}tree = etree.ElementTree(svg)\n${write}\n`);
    const command = ['/usr/bin/python3', 'gen.py'];
    expect(await workshop.plain(command)).toMatchObject({ code: 0 });
    const plain = workshop.read('../elsewhere.svg');
    const { outputs } = await workshop.traced(command);
    expect(workshop.read('../elsewhere.svg')).toBe(plain);
    const [output] = outputs.filter(({ file }) => file.endsWith('elsewhere.svg'));
    expect(output?.marks?.places).toEqual([['gen.py:2:7'], ['gen.py:3:1']]);
  });

  it('what else is written, and to what, is as it was', async () => {
    await workshop.empty();
    const text =
      "import io, sys\nout = io.StringIO()\nout.write('a.svg')\nsys.stdout.write(out.getvalue())\n" +
      "class Pen:\n    def write(self, *parts, **named): print(parts, named)\nPen().write(*['b.svg'], file='c.svg')\nPen().write()\n";
    await workshop.file('gen.py', text);
    const command = ['/usr/bin/python3', 'gen.py'];
    const plain = await workshop.plain(command);
    const traced = await workshop.traced(command);
    expect(plain).toMatchObject({ code: 0, stderr: '' });
    expect(traced).toMatchObject({ code: 0, stdout: plain.stdout, stderr: '' });
    expect(traced.outputs).toEqual([]);
  });
});

test('the demo in Python draws what it draws in JavaScript, traced or not', async () => {
  await workshop.empty();
  const demo = path.resolve(import.meta.dirname, '../../media/demo/posts');
  for (const name of ['posts.mjs', 'posts.py']) await workshop.file(name, readFileSync(path.join(demo, name), 'utf8'));
  const words = ['number=98', 'reeds=4', 'sway=2', 'sun=18'];
  expect(await workshop.plain(['node', 'posts.mjs', ...words])).toMatchObject({ code: 0 });
  const drawn = workshop.read('post-98.svg');
  await workshop.plain(['/usr/bin/python3', 'posts.py', ...words]);
  expect(workshop.read('post-98.svg')).toBe(drawn);
  const { outputs } = await workshop.traced(['/usr/bin/python3', 'posts.py', ...words]);
  expect(workshop.read('post-98.svg')).toBe(drawn);
  expect(placedElements(drawn, outputs[0]!.marks!).every(({ places }) => places.length > 0)).toBe(true);
});
