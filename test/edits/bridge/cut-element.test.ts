import { describe, expect, it } from 'vitest';
import { cutStrips } from '../../../src/edits/bridge/cut';
import { stripAlong } from '../../../src/edits/strip/strip';
import { sheetsOf } from '../bridging';

/** Two lines, level and upright, 2 mm wide. */
const TEXT = `<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="100mm" viewBox="0 0 100 100" fill="none" stroke="#000"
  stroke-width="2"><path d="M5 10H55"/><path d="M30 2V98"/></svg>`;

const [across, alongUpright, acrossUpright] = [
  stripAlong({ x: 12, y: 9 }, { x: 12, y: 11 }, 0.8, 1),
  stripAlong({ x: 30, y: 47 }, { x: 30, y: 53 }, 0.8, 1),
  stripAlong({ x: 29, y: 80 }, { x: 31, y: 80 }, 0.8, 1),
] as const;

function sheet() {
  const [only] = sheetsOf(TEXT);
  if (!only) throw new Error('There is no sheet.');
  return only;
}

describe('cutting strips out of elements', () => {
  it('says which strips a refusal is about: those at the element that refuses', () => {
    const cut = cutStrips(sheet(), [across, alongUpright, acrossUpright]);
    expect(cut).toMatchObject({ refusal: expect.stringContaining('runs along') });
    expect('strips' in cut && cut.strips).toEqual([alongUpright, acrossUpright]);
  });

  it('gives the same for a sheet that other strips were tried on before', () => {
    const used = sheet();
    for (const tried of [[across, alongUpright], [across, acrossUpright], [acrossUpright]]) cutStrips(used, tried);
    for (const strips of [[across], [across, acrossUpright], [across, alongUpright]]) {
      expect(cutStrips(used, strips)).toEqual(cutStrips(sheet(), strips));
    }
  });
});
