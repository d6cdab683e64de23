import { readFile } from 'node:fs/promises';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { CliWorkshop } from './run-cli';
import { stencil } from './stencils';

let workshop: CliWorkshop;

/** Later paint hides the small opening; nothing of the print changes when it goes. The counter of the marsh is an island. */
const HIDDEN = stencil(
  [
    '  <g id="sun" fill="#ffdd55"><path d="M30 15h6v6h-6z"/><path d="M4 4h10v10h-10z"/></g>',
    '  <g id="marsh" fill="#224433"><path d="M25 10h20v20h-20z"/></g>',
    '  <g id="post" fill="#884422"><path fill-rule="evenodd" d="M4 20h16v16h-16z M9 25v6h6v-6z"/></g>',
  ].join('\n'),
);

beforeAll(async () => {
  workshop = await CliWorkshop.create();
  await workshop.file('hidden.svg', HIDDEN);
});
afterAll(() => workshop.dispose());

const checksOf = async (name: string): Promise<string[]> => {
  const { stdout } = await workshop.run(['check', name, '--format', 'json']);
  return JSON.parse(stdout).files[0].findings.map(({ check }: { check: string }) => check);
};

describe('tombolo mend', () => {
  it('makes what changes nothing that is painted, and leaves the rest to be told', async () => {
    expect(await checksOf('hidden.svg')).toEqual(['floating-island', 'buried-opening']);
    const { stdout, stderr, code } = await workshop.run(['mend', 'hidden.svg', '--safe']);
    expect(code).toBe(0);
    expect(stderr).toBe('hidden.svg: Remove this opening\nhidden.svg: 1 change made\n');
    await workshop.file('safe.svg', stdout);
    expect(await checksOf('safe.svg')).toEqual(['floating-island']);
    const print = async (name: string) => {
      await workshop.run(['picture', name, '--out', `${name}.png`]);
      return readFile(workshop.path(`${name}.png`));
    };
    // To the pixel, by a renderer that knows nothing of openings.
    expect((await print('safe.svg')).equals(await print('hidden.svg'))).toBe(true);
  });

  it('makes all that holds, into the file', async () => {
    await workshop.file('all.svg', HIDDEN);
    const { stdout, stderr } = await workshop.run(['mend', 'all.svg', '--write']);
    expect(stdout).toBe('');
    expect(stderr).toContain('all.svg: Bridge the islands (');
    expect(await checksOf('all.svg')).not.toContain('floating-island');
  });

  it('gives a patch, and nothing where there is nothing to fix', async () => {
    const { stdout } = await workshop.run(['mend', 'hidden.svg', '--safe', '--diff']);
    expect(stdout).toMatch(/^--- a\/hidden\.svg\n\+\+\+ b\/hidden\.svg\n@@/);
    expect(await workshop.run(['mend', 'safe.svg', '--safe', '--diff'])).toMatchObject({
      stdout: '',
      stderr: 'safe.svg: nothing to fix\n',
    });
  });

  it('of several files gives no texts', async () => {
    const { code, stderr } = await workshop.run(['mend', 'hidden.svg', 'safe.svg']);
    expect([code, stderr]).toEqual([2, 'tombolo: several files need --write or --diff\n']);
  });
});
