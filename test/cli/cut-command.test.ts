import { chmod, lstat, mkdir, readdir, readFile, symlink } from 'node:fs/promises';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { CliWorkshop } from './run-cli';
import { SOUND, TWO_LAYERS, WITH_ISLAND } from './stencils';

let workshop: CliWorkshop;

beforeAll(async () => {
  workshop = await CliWorkshop.create();
  await workshop.file('sound.svg', SOUND);
  await workshop.file('two.svg', TWO_LAYERS);
  await workshop.file('island.svg', WITH_ISLAND);
});
afterAll(() => workshop.dispose());

const read = (name: string) => readFile(workshop.path(name), 'utf8');
const list = async (name: string) => (await readdir(workshop.path(name))).sort();

describe('tombolo cut', () => {
  it('writes a file for each sheet, first painted first', async () => {
    const outcome = await workshop.run(['cut', 'two.svg', '--out', 'cut/now', '--as', 'svg, dxf,pdf']);
    expect(outcome).toMatchObject({ code: 0, stdout: '' });
    expect(outcome.stderr).toContain('6 files in cut/now. Never leave a laser running unattended');
    expect(await list('cut/now')).toEqual(
      ['01-sky', '02-sun'].flatMap((name) => ['dxf', 'pdf', 'svg'].map((suffix) => `${name}.${suffix}`)),
    );
    expect(await read('cut/now/02-sun.svg')).toContain('width="60mm" height="40mm" viewBox="0 0 60 40"');
  });

  it('writes its own files anew, and one layer alone under its number', async () => {
    expect((await workshop.run(['cut', 'two.svg', '--out', 'again', '--layer', 'sun'])).code).toBe(0);
    expect((await workshop.run(['cut', 'two.svg', '--out', 'again', '--layer', 'sun', '--kerf', '0.1mm'])).code).toBe(
      0,
    );
    expect(await list('again')).toEqual(['02-sun.svg']);
    expect(await read('again/02-sun.svg')).toContain('width="60.1mm"');
  });

  it('prints the cuts in order as JSON', async () => {
    const { code, stdout } = await workshop.run(['cut', 'two.svg', '--plan']);
    expect(code).toBe(0);
    const plan = JSON.parse(stdout);
    expect(
      plan.map(({ sheet, kind, closed, length }: Record<string, unknown>) => [sheet, kind, closed, length]),
    ).toEqual([
      [1, 'opening', true, 160],
      [1, 'edge', true, 200],
      [2, 'opening', true, 40],
      [2, 'edge', true, 200],
    ]);
    expect(plan[2].contour).toHaveLength(4);
    expect(plan[2].contour).toContainEqual([30, 20]);
  });

  it('labels, notches, and a knife’s ends are there when they are asked for', async () => {
    await workshop.file('trees.svg', TWO_LAYERS.replaceAll('x="5" y="5" width="50"', 'x="8" y="8" width="40"'));
    const words = [
      'cut',
      'trees.svg',
      '--out',
      'marked',
      '--labels',
      '--notches',
      '--lead-in',
      '0.5mm',
      '--overcut',
      '1mm',
    ];
    expect(await workshop.run(words)).toMatchObject({ code: 0 });
    const sky = await read('marked/01-sky.svg');
    expect(sky.match(/stroke="#0000ff"/g)!.length).toBeGreaterThan(10);
    expect(sky).not.toContain('Z"');
  });

  it('cuts nothing while errors are left, but for who wants it anyway', async () => {
    const refused = await workshop.run(['cut', 'island.svg', '--out', 'none']);
    expect(refused.code).toBe(1);
    expect(refused.stderr).toContain('island.svg: 1 error left, nothing was cut. First: Island, 200.0 mm²');
    expect(refused.stderr).toContain('--anyway');
    await expect(list('none')).rejects.toThrow();
    const cut = await workshop.run(['cut', 'island.svg', '--out', 'some', '--anyway']);
    expect(cut.code).toBe(0);
    expect(cut.stderr).toContain('cut although 1 error is left');
    expect(await list('some')).toEqual(['01-stencil.svg']);
  });

  it('a material that no laser may cut is an error, and a knife asks for no extraction', async () => {
    await workshop.file('vinyl.json', '{"material": "vinyl-0.08"}');
    const refused = await workshop.run(['cut', 'sound.svg', '--config', 'vinyl.json', '--out', 'vinyl']);
    expect(refused.code).toBe(1);
    expect(refused.stderr).toMatch(/Never cut .* with a laser/);
    await workshop.file('knife.json', '{"material": "vinyl-0.08", "cutter": {"tool": "knife"}}');
    const cut = await workshop.run(['cut', 'sound.svg', '--config', 'knife.json', '--out', 'vinyl']);
    expect(cut.code).toBe(0);
    expect(cut.stderr).toContain('Try the depth on a scrap first');
  });

  it('says how long it takes where the machine is described', async () => {
    await workshop.file('fast.json', '{"cutter": {"speed": "50mm/s", "acceleration": "500mm/s²", "corner": "1mm/s"}}');
    const { stderr } = await workshop.run(['cut', 'sound.svg', '--config', 'fast.json', '--no-edge', '--out', 'timed']);
    // Four sides from rest to rest, and the way there and back again.
    expect(stderr).toContain('Cutting takes about 4 s.');
  });

  it('cuts holes for a repeat along a wall, and says how to go on', async () => {
    await workshop.file('border.json', '{"margin": "10mm"}');
    const words = ['cut', 'sound.svg', '--config', 'border.json', '--repeat', 'right', '--plan', '--out', 'border'];
    const { code, stdout, stderr } = await workshop.run(words);
    expect(code).toBe(0);
    expect(stderr).toContain(
      'Repeat it every 60 mm: mark the wall through the two right holes, then lay the left ones on the marks.',
    );
    const marks = (JSON.parse(stdout) as { kind: string; length: number }[]).filter(({ kind }) => kind === 'mark');
    expect(marks.map(({ length }) => length)).toEqual(Array(4).fill(9.4248));
    const none = await workshop.run(['cut', 'sound.svg', '--repeat', 'down', '--out', 'no-margin']);
    expect([none.code, none.stderr.trim().split('\n').length]).toEqual([2, 1]);
    expect(none.stderr).toContain('no room for register holes 40 mm apart: a margin of 10 mm');
    expect((await workshop.run(['cut', 'sound.svg', '--step', '9mm', '--out', 'x'])).stderr).toContain('--repeat');
    expect((await workshop.run(['cut', 'sound.svg', '--repeat', 'up', '--out', 'x'])).code).toBe(2);
  });

  it('parts larger sheets into tiles, and lays small ones together on the bed', async () => {
    expect(await workshop.run(['cut', 'sound.svg', '--tiles', '40x50mm', '--out', 'tiles'])).toMatchObject({ code: 0 });
    expect(await list('tiles')).toEqual(['01-stencil-1-1.svg', '01-stencil-1-2.svg']);
    await workshop.file('bed.json', '{"cutter": {"bed": ["130mm", "50mm"]}}');
    const words = ['cut', 'two.svg', '--config', 'bed.json', '--together', '--out', 'bed'];
    expect(await workshop.run(words)).toMatchObject({ code: 0 });
    expect(await list('bed')).toEqual(['01-bed-sky-sun.svg']);
    expect(await read('bed/01-bed-sky-sun.svg')).toContain('width="130mm" height="50mm"');
    const none = await workshop.run(['cut', 'two.svg', '--together', '--out', 'bed']);
    expect(none).toMatchObject({ code: 2 });
    expect(none.stderr).toContain('how large the bed is stands in tombolo.json');
    expect((await workshop.run(['cut', 'two.svg', '--tiles', 'a9', '--out', 'bed'])).code).toBe(2);
  });

  it('needs to know where, and in which formats', async () => {
    expect((await workshop.run(['cut', 'sound.svg'])).stderr).toBe(
      'tombolo: say with --out into which folder the files go, or ask for the --plan\n',
    );
    const { code, stderr } = await workshop.run(['cut', 'sound.svg', '--out', 'x', '--as', 'svg,png']);
    expect(code).toBe(2);
    expect(stderr).toContain('Write one or more of svg, pdf, dxf');
  });
});

describe('tombolo job', () => {
  it('writes the page that hangs at the wall, and never over a file that is not its own', async () => {
    const outcome = await workshop.run(['job', 'two.svg', '--out', 'wall']);
    expect(outcome).toMatchObject({ code: 0, stdout: '', stderr: 'job.html and job.pdf in wall\n' });
    expect(await read('wall/job.html')).toContain('<h1>two</h1>');
    expect((await read('wall/job.pdf')).startsWith('%PDF-1.4')).toBe(true);
    expect((await workshop.run(['job', 'two.svg', '--out', 'wall'])).code).toBe(0);
    await workshop.file('wall/job.html', 'my own notes');
    expect((await workshop.run(['job', 'two.svg', '--out', 'wall'])).code).toBe(2);
    expect(await read('wall/job.html')).toBe('my own notes');
  });
});

describe('a bad target', () => {
  const failure = async (out: string, environment?: Record<string, string>) => {
    const outcome = await workshop.run(['cut', 'two.svg', '--out', out], { ...(environment && { environment }) });
    expect(outcome.code).toBe(2);
    expect(outcome.stderr.trimEnd().split('\n')).toHaveLength(1);
    return outcome.stderr;
  };

  it('a drawing of the artist’s is never overwritten, nor anything beside it', async () => {
    await mkdir(workshop.path('mine'));
    await workshop.file('mine/02-sun.svg', SOUND);
    expect(await failure('mine')).toContain('mine/02-sun.svg: is there, and no file of this command');
    expect(await list('mine')).toEqual(['02-sun.svg']);
    expect(await read('mine/02-sun.svg')).toBe(SOUND);
  });

  it('a link is not followed', async () => {
    await mkdir(workshop.path('linked'));
    await symlink(workshop.path('sound.svg'), workshop.path('linked/01-sky.svg'));
    expect(await failure('linked')).toContain('linked/01-sky.svg: is a symbolic link');
    expect((await lstat(workshop.path('linked/01-sky.svg'))).isSymbolicLink()).toBe(true);
    expect(await read('sound.svg')).toBe(SOUND);
  });

  it('a file or a folder in its place is left alone', async () => {
    expect(await failure('sound.svg')).toContain('sound.svg: is no folder');
    await mkdir(workshop.path('taken/02-sun.svg'), { recursive: true });
    expect(await failure('taken')).toContain('taken/02-sun.svg: is in the way');
    expect(await list('taken')).toEqual(['02-sun.svg']);
  });

  it('what cannot be written leaves nothing behind', async () => {
    // A file system that is no place for files.
    expect(await failure('/proc/tombolo')).toMatch(/^tombolo: \/proc\/tombolo: /);
    if (process.getuid?.() === 0) return;
    await mkdir(workshop.path('locked'));
    await chmod(workshop.path('locked'), 0o555);
    expect(await failure('locked')).toContain('locked: permission denied');
    expect(await list('locked')).toEqual([]);
  });
});
