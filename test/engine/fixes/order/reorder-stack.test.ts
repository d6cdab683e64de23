/** Orders of projects: which file says them, and that the edited texts give them. */
import { describe, expect, it } from 'vitest';
import { applyEdits, checkProject, type ProjectReport, readConfig, reorderStack } from '../../../../src/engine/index';
import { permutations } from '../../../stack/order/permutations';
import { sheet, square } from '../../project-files';

const group = (name: string, x: number) => `<g id="${name}">${square(x, 5, 8)}</g>`;

const FILES = new Map([
  ['sky.svg', sheet(square(5, 5, 9))],
  ['birds.svg', sheet(`${group('heron', 5)}\n${group('otter', 20)}\n${group('reeds', 35)}`)],
  ['post.svg', sheet(square(25, 25, 9))],
]);

const configOf = (...entries: string[]) =>
  `{ "layers": [\n${entries.map((from) => `  { "from": "${from}" }`).join(', // next\n')}\n] }`;

function project(config: string, files: ReadonlyMap<string, string> = FILES): ProjectReport {
  return checkProject(files, { config: readConfig(config).config });
}

const names = ({ stack }: ProjectReport) => stack.layers.map(({ sheet: { layer } }) => layer.name);

/** The names in the order that the edits give; the reason where there are none. */
function reordered(config: string, order: readonly number[]): string[] | string {
  const report = [...project(config).files.values()][0]!;
  const outcome = reorderStack(report, config, order);
  if (typeof outcome === 'string') return outcome;
  const { file, edits } = outcome;
  if (file === undefined) return names(project(applyEdits(config, edits)));
  return names(project(config, new Map([...FILES, [file, applyEdits(FILES.get(file)!, edits)]])));
}

describe('the order of a project', () => {
  it('whose entries are one layer each is that of the entries, whichever it is', () => {
    const config = configOf('sky.svg', 'birds.svg#heron', 'birds.svg#reeds', 'post.svg');
    const before = names(project(config));
    for (const order of permutations(4).filter((each) => each.some((layer, at) => layer !== at))) {
      expect(reordered(config, order)).toEqual(order.map((layer) => before[layer]));
    }
  });

  it('whose entry gives several layers is that of its file, or of the entries, but not both', () => {
    const config = configOf('sky.svg', 'birds.svg', 'post.svg');
    const before = names(project(config));
    expect(before).toEqual(['sky', 'heron', 'otter', 'reeds', 'post']);
    for (const order of [
      [0, 3, 1, 2, 4],
      [0, 3, 2, 1, 4],
      [4, 1, 2, 3, 0],
      [1, 2, 3, 0, 4],
    ]) {
      expect(reordered(config, order)).toEqual(order.map((layer) => before[layer]));
    }
    expect(reordered(config, [4, 2, 1, 3, 0])).toMatch(/several files/);
    expect(reordered(config, [1, 0, 2, 3, 4])).toMatch(/"birds\.svg"/);
    expect(reordered(config, [0, 1, 2, 3])).toMatch(/no such place/);
  });

  it('leaves entries that give no layer where they are', () => {
    const config = configOf('sky.svg', 'none.svg', 'birds.svg#otter', 'post.svg');
    expect(reordered(config, [2, 0, 1])).toEqual(['post', 'sky', 'otter']);
    const outcome = reorderStack([...project(config).files.values()][0]!, config, [2, 0, 1]);
    if (typeof outcome === 'string') throw new Error(outcome);
    expect(applyEdits(config, outcome.edits)).toBe(configOf('post.svg', 'none.svg', 'sky.svg', 'birds.svg#otter'));
  });
});
