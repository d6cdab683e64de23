/** `tombolo init` and `tombolo completion`: how one begins. */
import { execFileSync } from 'node:child_process';
import { mkdir, readFile } from 'node:fs/promises';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readConfig } from '../../../src/engine/index';
import { CliWorkshop } from '../run-cli';

let workshop: CliWorkshop;

beforeAll(async () => {
  workshop = await CliWorkshop.create();
  await mkdir(workshop.path('trail'));
});
afterAll(() => workshop.dispose());

describe('init', () => {
  it('writes what it was told, which is read without a problem, and never over a file', async () => {
    const words = ['init', 'trail', '--width', '6in', '--material', 'card-0.3', '--tool', 'knife'];
    expect(await workshop.run(words)).toMatchObject({ code: 0, stderr: '' });
    const text = await readFile(workshop.path('trail/tombolo.json'), 'utf8');
    const { config, problems } = readConfig(text);
    expect(problems).toEqual([]);
    expect(config).toMatchObject({ width: expect.closeTo(152.4, 9), tool: 'knife' });
    const again = await workshop.run(words);
    expect(again).toMatchObject({ code: 2, stderr: 'tombolo: trail/tombolo.json: is there already\n' });
    expect(await readFile(workshop.path('trail/tombolo.json'), 'utf8')).toBe(text);
  });

  it('cautions who cuts with a laser, and keeps a kerf that is not allowed for', async () => {
    const { stdout } = await workshop.run(['init', '--kerf', '0.15mm']);
    expect(stdout).toMatch(/never leave it alone.*Local rules come first/);
    const { config } = readConfig(await readFile(workshop.path('tombolo.json'), 'utf8'));
    expect(config).toMatchObject({ tool: 'laser', kerf: 0.15, compensated: false });
  });

  it.each([
    [['gone'], 'gone: no such folder'],
    [['trail', '--material', 'card-03'], 'Did you mean card-0.3?'],
    [['.', '--material', 'vinyl-0.08'], 'never cut vinyl (PVC)'],
    [['trail', '--width', '148'], 'Write a length with its unit'],
  ])('refuses %j in one line', async (words, why) => {
    const { code, stderr } = await workshop.run(['init', ...words]);
    expect(code).toBe(2);
    expect(stderr).toContain(why);
  });
});

describe('completion', () => {
  /** What bash offers after these words, the last of which is begun. */
  async function offered(...words: string[]): Promise<string[]> {
    const { stdout } = await workshop.run(['completion', 'bash']);
    const line = words.map((word) => `'${word}'`).join(' ');
    const ask = `${stdout}\nCOMP_WORDS=(${line}); COMP_CWORD=${words.length - 1}; _tombolo; printf '%s\\n' "\${COMPREPLY[@]}"`;
    return execFileSync('bash', ['-c', ask], { encoding: 'utf8' }).split('\n').filter(Boolean);
  }

  it('bash is offered commands, then options, then what those take, else files', async () => {
    expect(await offered('tombolo', 'ch')).toEqual(['check']);
    expect(await offered('tombolo', 'check', '--wr')).toEqual(['--write-baseline']);
    expect(await offered('tombolo', 'check', '--format', 'sa')).toEqual(['sarif']);
    expect(await offered('tombolo', 'check', 'her')).toEqual([]);
  });

  it('zsh takes the same; fish has a line for each option', async () => {
    const [bash, zsh, fish] = await Promise.all(
      ['bash', 'zsh', 'fish'].map((shell) => workshop.run(['completion', shell])),
    );
    expect(zsh?.stdout.endsWith(bash?.stdout ?? '')).toBe(true);
    expect(fish?.stdout).toMatch(
      /^complete -c tombolo -n '__fish_seen_subcommand_from check' -l format -x -a 'text json /m,
    );
    expect((await workshop.run(['completion', 'other'])).code).toBe(2);
  });
});
