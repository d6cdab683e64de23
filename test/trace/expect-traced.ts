/** What is promised of every traced program: each element has its place, and the files are those of a plain run. */
import { expect } from 'vitest';
import { placedElements, sourceAt } from './places';
import type { DrawingProgram } from './programs';
import type { TraceWorkshop } from './workshop';

export async function expectTraced(workshop: TraceWorkshop, program: DrawingProgram): Promise<void> {
  const { command, elements, calls = /(?!)/, at = {} } = program;
  const before = await workshop.plain(command);
  expect(before).toMatchObject({ code: 0, stderr: '' });
  const expected = workshop.read('out.svg');
  const names = workshop.files();
  const run = await workshop.traced(command);
  expect(run).toMatchObject({ code: 0, stdout: before.stdout, stderr: '' });
  expect(workshop.read('out.svg')).toBe(expected);
  expect(workshop.files()).toEqual(names);

  const [output] = run.outputs.filter(({ file }) => file.endsWith('out.svg'));
  const placed = placedElements(expected, output!.marks!);
  expect(placed).toHaveLength(elements);
  const read = (file: string): string => workshop.read(file);
  for (const { name, id, places } of placed) {
    const source = sourceAt(places[0] ?? '', read);
    const begins =
      [`<${name}`, '<$', '<{', "<' +", '<%s'].some((start) => source.startsWith(start)) || calls.test(source);
    expect([id ?? name, places, source, begins]).toEqual([id ?? name, places, source, true]);
  }
  for (const [id, starts] of Object.entries(at)) {
    const { places } = placed.find((each) => each.id === id)!;
    expect(starts.map((start, index) => sourceAt(places[index] ?? '', read).slice(0, start.length))).toEqual(starts);
  }
}
