import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { expectTraced } from './expect-traced';
import { PROGRAMS, textOf } from './programs';
import { TraceWorkshop } from './workshop';

let workshop: TraceWorkshop;
beforeAll(async () => {
  workshop = await TraceWorkshop.create();
});
afterAll(() => workshop.dispose());

describe('a traced program', () => {
  it.each(PROGRAMS)('$title: places of all elements, and the bytes of a plain run', async (program) => {
    await workshop.empty();
    await workshop.file(program.file, textOf(program));
    if (program.build) expect(await workshop.plain(program.build)).toMatchObject({ code: 0 });
    await expectTraced(workshop, program);
  });
});
