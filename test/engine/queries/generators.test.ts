import { describe, expect, it } from 'vitest';
import { check, generatorsIn } from '../../../src/engine/index';
import type { GeneratorMarks } from '../../../src/report/generator';
import { WITH_ISLAND } from '../../cli/stencils';

/** An island, with what is written into the start tags of the root and of the path. */
function island(root: string, path: string): string {
  return WITH_ISLAND.replace('<svg', `<svg ${root}`).replace('<path', `<path ${path}`);
}

function fromOf(text: string) {
  return check(text).findings.find((finding) => finding.check === 'floating-island')!.from;
}

const at = (line: number, character: number) => ({ start: { line, character }, end: { line, character } });

describe('data-tombolo-from', () => {
  it('leads a finding to the program, counted from one as written and from nought as told', () => {
    const from = fromOf(island('', 'data-tombolo-from="trail/gen.mjs:7:13"'));
    expect(from).toEqual({ path: 'trail/gen.mjs', range: at(6, 12), callers: [], drawn: '<path>, drawn here' });
  });

  it('is inherited from the elements round it, and the nearest counts', () => {
    expect(fromOf(island('data-tombolo-from="gen.mjs:1:1"', ''))).toMatchObject({ path: 'gen.mjs', range: at(0, 0) });
    expect(fromOf(island('data-tombolo-from="gen.mjs:1:1"', 'data-tombolo-from="gen.mjs:3:2"'))?.range).toEqual(
      at(2, 1),
    );
  });

  it('may name a path with colons and blanks', () => {
    expect(fromOf(island('', 'data-tombolo-from="C:/the trail/gen.mjs:3:4"'))?.path).toBe('C:/the trail/gen.mjs');
  });

  it.each(['', 'gen.mjs', 'gen.mjs:3', ':3:4', 'gen.mjs:0:4', 'gen.mjs:3:x', 'gen.mjs:3:1234567890123'])(
    'that says no place (%j) says nothing',
    (value) => expect(fromOf(island('', `data-tombolo-from="${value}"`))).toBeUndefined(),
  );

  it('tells which of what is drawn there it is, by its id or by its name', () => {
    const ring = (x: number, id: string) =>
      `<path ${id} data-tombolo-from="gen.py:4:5" fill-rule="evenodd" d="M${x} 10h15v20h-15z m5 5v10h5v-10z"/>`;
    const text = `<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="40mm" viewBox="0 0 60 40">${ring(
      2,
      'id="ring1"',
    )}${ring(22, 'id="ring2"')}${ring(42, '')}</svg>`;
    const drawn = check(text).findings.flatMap(({ check, from }) => (check === 'floating-island' ? [from?.drawn] : []));
    expect(drawn).toEqual([
      'ring1, number 1 of 3 drawn here',
      'ring2, number 2 of 3 drawn here',
      '<path>, number 3 of 3 drawn here',
    ]);
  });
});

describe('marks of a traced program', () => {
  const text = '<svg xmlns="http://www.w3.org/2000/svg"><g><path d=""/><path d=""/><rect/></g></svg>';
  const tags = ['<g', '<path d=""', '<path d=""/><rect', '<rect'];
  const spanOf = (tag: string) => ({ from: text.indexOf(tag) + 1, to: text.indexOf(tag) + 3 });
  /** Marks lie right behind the names. */
  const marks = (...places: (readonly string[])[]): GeneratorMarks => ({
    offsets: tags.map((tag) => text.indexOf(tag) + (tag.startsWith('<path') ? 5 : tag.startsWith('<g') ? 2 : 5)),
    places,
  });
  const documentOf = () => check(text).drawing.document;

  it('belong to the element in whose start tag they lie', () => {
    const generatorOf = generatorsIn(documentOf(), marks(['g.mjs:1:1'], ['g.mjs:2:1'], ['g.mjs:3:1'], ['g.mjs:4:1']));
    const lines = tags.map((tag) => generatorOf(spanOf(tag))?.range.start.line);
    expect(lines).toEqual([0, 1, 2, 3]);
  });

  it('lead one caller out of a helper that makes most elements', () => {
    const helper = 'shapes.mjs:9:3';
    const generatorOf = generatorsIn(
      documentOf(),
      marks(['g.mjs:1:1'], [helper, 'g.mjs:2:1', 'g.mjs:7:1'], [helper, 'g.mjs:3:1'], [helper, 'g.mjs:3:1']),
    );
    const first = generatorOf(spanOf(tags[1]!));
    expect(first).toMatchObject({ path: 'g.mjs', range: at(1, 0), drawn: '<path>, drawn here' });
    expect(first?.callers.map(({ path, range }) => [path, range.start.line])).toEqual([
      ['shapes.mjs', 8],
      ['g.mjs', 6],
    ]);
    expect(generatorOf(spanOf(tags[3]!))?.drawn).toBe('<rect>, number 2 of 2 drawn here');
  });

  it('stay at the innermost place where all come from one caller, or fewer than half', () => {
    const loop = ['g.mjs:5:9', 'g.mjs:4:1'];
    expect(generatorsIn(documentOf(), marks(['g.mjs:1:1'], loop, loop, loop))(spanOf(tags[1]!))?.range).toEqual(
      at(4, 8),
    );
    const helped = marks(['g.mjs:1:1'], ['h.mjs:1:1', 'g.mjs:2:1'], ['h.mjs:1:1', 'g.mjs:3:1'], ['g.mjs:4:1']);
    expect(generatorsIn(documentOf(), helped)(spanOf(tags[1]!))?.path).toBe('h.mjs');
  });
});
