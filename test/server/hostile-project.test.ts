/** A stranger's folder in the editor: its tombolo.json leads to no other place, and nothing in it keeps the server waiting. */
import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from 'vitest';
import { ring, sheet, square } from '../engine/project-files';
import { buildServer } from './build-server';
import { ServerProcess } from './server-process';

const own = sheet(square(30, 30, 10));

let built: Awaited<ReturnType<typeof buildServer>>;
let server: ServerProcess;
let outside: string;

beforeAll(async () => {
  built = await buildServer();
  outside = mkdtempSync(path.join(tmpdir(), 'tombolo-outside-'));
  writeFileSync(path.join(outside, 'ring.svg'), sheet(ring(5, 5)));
});
afterAll(() => {
  rmSync(outside, { recursive: true });
  return built.remove();
});
beforeEach(async () => {
  server = await ServerProcess.start(built.file);
  mkdirSync(path.join(server.folder, 'print'));
  server.write('print/own.svg', own);
  server.write('beside.svg', sheet(ring(5, 5)));
});
afterEach(() => server.stop());

const makers: Readonly<Record<string, (file: string) => void>> = {
  'a link that leads out': (file) => symlinkSync(path.join(outside, 'ring.svg'), file),
  'a device without an end': (file) => symlinkSync('/dev/zero', file),
  'a pipe that nobody fills': (file) => execFileSync('mkfifo', [file]),
  'a file beyond all bounds': (file) => {
    writeFileSync(file, '');
    truncateSync(file, 200_000_000);
  },
};

/** What is told of a project that names this file beside its own. */
async function toldOf(from: string): Promise<string[]> {
  const config = JSON.stringify({ layers: [{ from: 'own.svg' }, { from }] });
  server.write('print/tombolo.json', config);
  await server.open('print/tombolo.json', config);
  const document = await server.open('print/own.svg', own);
  await server.diagnostics(document);
  await server.connection.sendRequest('tombolo/checkAgain', { uri: document.uri });
  const told = server.published.findLast(({ uri }) => uri === server.uri('print/tombolo.json'));
  return (told?.diagnostics ?? []).map(({ message }) => String(message));
}

test('a file in the workspace is read, also outside the folder of the project', async () => {
  expect(await toldOf('../beside.svg')).toEqual([]);
  expect(server.published.map(({ uri }) => uri)).toContain(server.uri('beside.svg'));
});

test('a file elsewhere is not: no finding is published for it', async () => {
  const way = path.relative(path.join(server.folder, 'print'), path.join(outside, 'ring.svg'));
  expect(await toldOf(way)).toEqual([expect.stringMatching(/^Outside this workspace, or not readable: /)]);
  expect(server.published.filter(({ uri }) => uri.includes('ring.svg'))).toEqual([]);
});

test.each(Object.keys(makers))('%s is as good as no file', async (what) => {
  makers[what]?.(path.join(server.folder, 'print/strange.svg'));
  expect(await toldOf('strange.svg')).toEqual([expect.stringMatching(/^No readable file "strange\.svg"/)]);
});

test.each(Object.keys(makers).slice(1))('%s is no tombolo.json either', async (what) => {
  makers[what]?.(path.join(server.folder, 'print/tombolo.json'));
  const document = await server.open(
    'print/own.svg',
    sheet(ring(5, 5)).replace('<svg', '<svg data-tombolo-reading="openings"'),
  );
  expect((await server.diagnostics(document)).map(({ code }) => code)).toEqual(['floating-island']);
});
