/** Projects of several files on the command line. */
import { mkdir, readFile } from 'node:fs/promises';
import type { Log } from 'sarif';
import { afterAll, beforeAll, describe, expect, it, test } from 'vitest';
import { ring, sheet, square } from '../engine/project-files';
import { CliWorkshop, type Outcome } from './run-cli';

let workshop: CliWorkshop;

const layers = [{ from: 'sun.svg' }, { from: 'birds/heron.svg', name: 'heron', paint: '#3b4a54' }];

const HOLES = JSON.stringify({ layers: [{ from: 'none.svg' }, { from: 'a.svg#x' }, { from: 'a.svg' }] });

interface Listing {
  readonly path: string;
  readonly layers: readonly { readonly name: string; readonly paint: string }[];
  readonly findings: readonly {
    readonly check: string;
    readonly related: readonly { readonly path?: string }[];
    readonly range: { readonly from: number; readonly to: number };
  }[];
}

beforeAll(async () => {
  workshop = await CliWorkshop.create();
  await mkdir(workshop.path('trail/birds'), { recursive: true });
  await workshop.file('trail/tombolo.json', JSON.stringify({ layers }));
  await workshop.file('trail/sun.svg', sheet(ring(5, 5)));
  await workshop.file('trail/birds/heron.svg', sheet(square(30, 30, 10)));
  await workshop.file('trail/sketch.svg', sheet(ring(8, 8)));
  await mkdir(workshop.path('loose'));
  await workshop.file('loose/tombolo.json', '{ "material": "card-0.5" }');
  await workshop.file('loose/a.svg', sheet(square(5, 5, 9)));
  await mkdir(workshop.path('holes'));
  await workshop.file('holes/tombolo.json', HOLES);
  await workshop.file('holes/a.svg', sheet(square(5, 5, 9)));
});
afterAll(() => workshop.dispose());

const check = (...words: string[]) => workshop.run(['check', ...words, '--format', 'json']);
const filesOf = ({ stdout }: Outcome) => (JSON.parse(stdout) as { files: Listing[] }).files;
const summary = (outcome: Outcome) =>
  filesOf(outcome).map(({ path, findings }) => `${path}: ${findings.map((each) => each.check).join()}`);

describe('tombolo check', () => {
  it.each(['trail/tombolo.json', 'trail', 'trail/'])('%s is the project, in the order of layers', async (named) => {
    const outcome = await check(named);
    expect(summary(outcome)).toEqual(['trail/sun.svg: floating-island', 'trail/birds/heron.svg: ']);
    expect(filesOf(outcome)[1]?.layers).toMatchObject([{ name: 'heron', paint: '#3b4a54' }]);
    expect(outcome.code).toBe(1);
  });

  it('a file of the project is checked as the part that it is, others by themselves', async () => {
    const outcome = await check('trail/birds/heron.svg', 'trail/sketch.svg');
    expect(summary(outcome)).toEqual(['trail/birds/heron.svg: ', 'trail/sketch.svg: floating-island']);
    expect(filesOf(outcome).map(({ layers: [layer] }) => layer?.name)).toEqual(['heron', 'stencil']);
  });

  it('standard input takes the place of the file that it is named after', async () => {
    const words = ['check', '-', '--stdin-filename', 'trail/birds/heron.svg', '--format', 'json'];
    const outcome = await workshop.run(words, { input: sheet(ring(30, 30)) });
    expect(summary(outcome)).toEqual(['trail/birds/heron.svg: floating-island']);
    expect(filesOf(outcome)[0]?.layers).toMatchObject([{ name: 'heron' }]);
  });

  it('a project without layers is every drawing beside its tombolo.json', async () => {
    expect(summary(await check('loose'))).toEqual(['loose/a.svg: ']);
  });

  it('layers that name nothing are told in tombolo.json, and the rest is checked', async () => {
    const outcome = await check('holes');
    const [drawing, config] = filesOf(outcome);
    expect([drawing?.path, config?.path, outcome.code]).toEqual(['holes/a.svg', 'holes/tombolo.json', 1]);
    expect(config?.findings.map(({ range }) => HOLES.slice(range.from, range.to))).toEqual(['"none.svg"', '"a.svg#x"']);
  });

  it('a project that is not there is said in one line', async () => {
    const outcome = await check('nowhere/tombolo.json');
    expect([outcome.code, outcome.stderr]).toEqual([2, 'tombolo: nowhere/tombolo.json: no such file or folder\n']);
  });
});

describe('tombolo picture', () => {
  it.each(['trail/tombolo.json', 'trail', 'trail/sun.svg'])('of %s draws the whole stack', async (named) => {
    const { code, stderr } = await workshop.run(['picture', named, '--out', 'print.svg']);
    expect([code, stderr]).toEqual([0, '']);
    const picture = await readFile(workshop.path('print.svg'), 'utf8');
    expect(picture).toContain('#000000');
    expect(picture.indexOf('#3b4a54')).toBeGreaterThan(picture.indexOf('#000000'));
  });

  it('never overwrites a file of the project', async () => {
    const { code, stderr } = await workshop.run(['picture', 'trail', '--out', 'trail/sun.svg']);
    expect(code).toBe(2);
    expect(stderr).toBe('tombolo: trail/sun.svg: this is the stencil itself; give the picture another name\n');
  });
});

test('tombolo bridge takes a file of the project as the part that it is', async () => {
  const { code, stdout, stderr } = await workshop.run(['bridge', 'trail/sun.svg']);
  expect([code, stderr]).toEqual([0, 'trail/sun.svg: 2 bridges added\n']);
  const words = ['check', '-', '--stdin-filename', 'trail/sun.svg', '--format', 'json'];
  expect(summary(await workshop.run(words, { input: stdout }))).toEqual(['trail/sun.svg: ']);
});

test('what lies between two files names the other, in each format', async () => {
  await mkdir(workshop.path('gap'));
  await workshop.file('gap/tombolo.json', JSON.stringify({ layers: [{ from: 'a.svg' }, { from: 'b.svg' }] }));
  await workshop.file('gap/a.svg', sheet(square(5, 5, 20)));
  await workshop.file('gap/b.svg', sheet(square(25.2, 5, 20)));
  const [json, sarif, text] = await Promise.all(
    ['json', 'sarif', 'text'].map((format) => workshop.run(['check', 'gap', '--format', format])),
  );
  const found = filesOf(json!).flatMap(({ path, findings }) => findings.map(({ related }) => [path, related[0]?.path]));
  expect(found.map((pair) => [...pair].sort())).toEqual([['gap/a.svg', 'gap/b.svg']]);
  const [owner, other] = found[0] ?? [];
  const {
    runs: [run],
  } = JSON.parse(sarif!.stdout) as Log;
  expect(run?.results?.[0]?.locations?.[0]?.physicalLocation?.artifactLocation?.uri).toBe(owner);
  expect(run?.results?.[0]?.relatedLocations?.[0]?.physicalLocation?.artifactLocation?.uri).toBe(other);
  expect(text!.stdout).toContain(`${other}:1:`);
});
