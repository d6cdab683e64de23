/** Findings at the lines of programs that draw, whether their drawings are open or not. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { CodeAction, Diagnostic, Hover } from 'vscode-languageserver-protocol';
import { URI } from 'vscode-uri';
import type { DrawnThere, ProgramMarks, ProgramRange } from '../../src/protocol/programs';
import { hashOfText } from '../../src/text/hash';
import { SOUND, stencil, WITH_ISLAND } from '../cli/stencils';
import { buildServer } from './build-server';
import { RESOLVES, ServerProcess } from './server-process';

const PROGRAM = ['// A post.', 'draw(`<svg>', '  <path id="halo" d="…"/>', '</svg>`);', ''].join('\n');
const NAMED = WITH_ISLAND.replace('<path', '<path id="halo"');

let built: Awaited<ReturnType<typeof buildServer>>;
let server: ServerProcess;
let marks: string;

/** Each test has a program and a drawing of its own. */
let turn = 0;
let program: string;
let post: string;

beforeAll(async () => {
  built = await buildServer();
  marks = mkdtempSync(path.join(tmpdir(), 'tombolo-marks-'));
  server = await ServerProcess.start(built.file, RESOLVES, undefined, { marks, goTo: true });
});
afterAll(async () => {
  await server.stop();
  built.remove();
  rmSync(marks, { recursive: true, force: true });
});
beforeEach(() => {
  turn += 1;
  [program, post] = [`post${turn}.mjs`, `post${turn}.svg`];
  server.write(program, PROGRAM);
});
afterEach(() => rmSync(path.join(marks, 'post.json'), { force: true }));

/** As a watched program leaves it: a drawing, and the place of its path. */
function drawn(text: string, line = 3): void {
  server.write(post, text);
  const at = text.search(/ id="halo"| fill=/);
  const drawing = {
    file: path.join(server.folder, post),
    hash: hashOfText(text),
    marks: { offsets: [at], places: [[`${program}:${line}:3`]] },
  };
  leave({ version: 1, root: server.folder, drawings: [drawing] });
}

const leave = (left: ProgramMarks) => writeFileSync(path.join(marks, 'post.json'), JSON.stringify(left));
const changedOnDisk = (name: string) =>
  server.connection.sendNotification('workspace/didChangeWatchedFiles', {
    changes: [{ uri: server.uri(name), type: 2 }],
  });
const last = (name: string) => server.published.findLast(({ uri }) => uri === server.uri(name))?.diagnostics;
const published = (name: string, ...codes: string[]): Promise<Diagnostic[]> =>
  server.until(`${codes.join()} in ${name}`, () => {
    const diagnostics = last(name);
    return JSON.stringify(diagnostics?.map(({ code }) => code)) === JSON.stringify(codes) ? diagnostics : undefined;
  });

describe('a watched program', () => {
  it('shows at its lines what is found in a closed drawing, and no more when that is clean', async () => {
    drawn(NAMED);
    const [found] = await published(program, 'floating-island');
    expect(found).toMatchObject({
      severity: 1,
      source: 'tombolo',
      range: { start: { line: 2, character: 2 }, end: { line: 2, character: 7 } },
    });
    expect(found?.message).toMatch(/^Island, .*\(halo, drawn here\)$/);
    expect(found?.relatedInformation?.[0]).toMatchObject({
      message: 'In the drawing: halo',
      location: { uri: server.uri(post), range: { start: { line: 1 } } },
    });
    expect(last(post) ?? []).toEqual([]);
    drawn(SOUND);
    await published(program);
  });

  it('keeps them while its drawing is not finished, and loses them with its watch', async () => {
    drawn(NAMED);
    await published(program, 'floating-island');
    server.write(post, SOUND);
    await changedOnDisk(post);
    await server.connection.sendRequest('tombolo/checkFile', { uri: server.uri(post) });
    expect(last(program)).toHaveLength(1);
    rmSync(path.join(marks, 'post.json'));
    await published(program);
  });

  it('follows its lines though the drawing stays the same', async () => {
    drawn(NAMED);
    await published(program, 'floating-island');
    server.write(program, `\n${PROGRAM}`);
    drawn(NAMED, 4);
    const moved = () => (last(program)?.[0]?.range.start.line === 3 ? true : undefined);
    await server.until('the next line', moved);
  });

  it('tells what one place draws many times once', async () => {
    const ring = (x: number) =>
      `<path data-tombolo-from="${program}:3:3" fill-rule="evenodd" d="M${x} 5h9v20h-9z m3 5v9h3v-9z"/>`;
    server.write(post, stencil([2, 22, 42].map(ring).join('')));
    await changedOnDisk(post);
    const [found] = await published(program, 'floating-island');
    expect(found?.message).toMatch(/\(<path>, number 1 of 3 drawn here; 2 more like it\)$/);
    expect(found?.relatedInformation?.filter(({ message }) => message.startsWith('In the drawing'))).toHaveLength(3);
  });

  it('shows them in the drawing too while that is open, and goes on when it is closed', async () => {
    drawn(NAMED);
    await published(program, 'floating-island');
    const document = await server.open(post, NAMED);
    await published(post, 'floating-island');
    await server.close(document);
    await published(post);
    await published(program, 'floating-island');
  });

  it('is led to and from', async () => {
    drawn(NAMED);
    await published(program, 'floating-island');
    const uri = server.uri(post);
    const at = NAMED.indexOf('M10');
    const by = await server.connection.sendRequest<ProgramRange>('tombolo/drawnBy', { uri, from: at, to: at + 3 });
    expect(by).toMatchObject({ uri: server.uri(program), range: { start: { line: 2, character: 2 } } });
    const there = await server.connection.sendRequest<DrawnThere>('tombolo/drawnAt', {
      uri,
      program: server.uri(program),
      line: 2,
    });
    expect(there).toMatchObject({ times: 1, openings: 1 });
    expect(there.area).toBeCloseTo(600, 6);
    expect(there.outline).toContain('M');
  });

  it('tells at a line what it draws', async () => {
    drawn(NAMED);
    await published(program, 'floating-island');
    const hoverAt = (line: number) =>
      server.connection.sendRequest<Hover | null>('textDocument/hover', {
        textDocument: { uri: server.uri(program) },
        position: { line, character: 4 },
      });
    const { value } = ((await hoverAt(2)) as Hover).contents as { value: string };
    expect(value).toMatch(
      /^\*\*post\d+\\.svg\*\* {2}\n1 shape · 1 opening · 600\.00 mm² {2}\nlayer .* {2}\n1 finding\n/,
    );
    expect(await hoverAt(0)).toBeNull();
  });

  it('is offered no edits of the drawing', async () => {
    writeFileSync(path.join(server.folder, 'tombolo.json'), '{}');
    await changedOnDisk('tombolo.json');
    drawn(NAMED);
    const [found] = await published(program, 'floating-island');
    const actions = await server.connection.sendRequest<CodeAction[]>('textDocument/codeAction', {
      textDocument: { uri: server.uri(program) },
      range: found?.range,
      context: { diagnostics: [found] },
    });
    expect(actions.map(({ title, edit }) => [title, edit])).toEqual([
      [`Keep bridges for "${post}"`, undefined],
      [`Open "${post}" at halo`, undefined],
      ['Ignore floating-island in "halo"…', undefined],
    ]);
    rmSync(path.join(server.folder, 'tombolo.json'));
    await changedOnDisk('tombolo.json');
    expect(actions[2]?.command?.arguments).toEqual([
      {
        check: 'floating-island',
        drawing: server.uri(post),
        config: server.uri('tombolo.json'),
        parts: [{ id: 'halo' }],
        where: '"halo"',
      },
    ]);
  });
});

describe('a drawing that says itself what draws it', () => {
  const from = (place: string) => WITH_ISLAND.replace('<path', `<path data-tombolo-from="${place}"`);

  it('leads to the program without any task, from a folder below its own too', async () => {
    mkdirSync(path.join(server.folder, 'out'));
    server.write(`out/${post}`, from(`${program}:3:3`));
    await changedOnDisk(`out/${post}`);
    await published(program, 'floating-island');
  });

  it('leads to no file outside of the workspace', async () => {
    const outside = path.join(marks, 'other.mjs');
    writeFileSync(outside, PROGRAM);
    server.write(post, from(`${outside}:3:3`));
    await changedOnDisk(post);
    await published(post, 'floating-island');
    expect(server.published.filter(({ uri }) => uri === URI.file(outside).toString())).toEqual([]);
  });
});
