import { describe, expect, it } from 'vitest';
import { isSameTask, taskFor, watchWords } from '../../../src/extension/programs/command-line';

describe('the task for a program', () => {
  it.each([
    ['posts.mjs', '', 'linux', { command: 'node', args: ['posts.mjs'] }],
    ['art/posts.py', '', 'darwin', { command: 'python3', args: ['art/posts.py'] }],
    ['art/posts.py', 'art', 'win32', { command: 'python', args: ['posts.py'], cwd: 'art' }],
    ['art/src/posts.ts', 'art', 'linux', { command: 'npx', args: ['tsx', 'src/posts.ts'], cwd: 'art' }],
  ])('of %s run in "%s" on %s', (file, folder, platform, task) => {
    expect(taskFor(file, folder, platform)).toEqual({ type: 'tombolo', ...task });
  });

  it('is none for what is no program', () => expect(taskFor('post.svg', '', 'linux')).toBeUndefined());

  it('is the same where it runs the same', () => {
    const task = { type: 'tombolo', command: 'node', args: ['posts.mjs'] } as const;
    expect(isSameTask({ ...task, label: 'Mine', cwd: '' }, task)).toBe(true);
    expect(isSameTask({ ...task, args: ['posts.mjs', 'number=9'] }, task)).toBe(false);
  });
});

describe('what a task starts', () => {
  const around = { isTrusted: true, cli: '/x/cli.cjs', marks: '/y/marks.json' };
  const task = { command: 'node', args: ['posts.mjs', 'number=9'] };

  it('is the watch, with the program behind the dashes', () => {
    const words = ['/x/cli.cjs', 'watch', '--marks', '/y/marks.json', '--', 'node', 'posts.mjs', 'number=9'];
    expect(watchWords(task, around)).toEqual(words);
  });

  it('is nothing in a workspace that is not trusted', () => {
    expect(watchWords(task, { ...around, isTrusted: false })).toBeUndefined();
  });

  it.each([
    {},
    { command: '' },
    { command: 3 },
    { command: 'node', args: 'posts.mjs' },
    { command: 'node', args: [3] },
  ])('is nothing where it does not say what runs: %j', (odd) => expect(watchWords(odd, around)).toBeUndefined());
});
