import { encode } from 'fast-png';
import { describe, expect, it } from 'vitest';
import type { FromSeparator, PictureDials } from '../../src/protocol/separating';
import { UnreadablePicture } from '../../src/separator/file/header';
import { decodePng } from '../../src/separator/file/png';
import { Separator } from '../../src/separator/thread/separator';
import { painted } from '../separate/pictures';

/** A sun over water, with an island of the shore's colour in it. */
const MARSH = painted(240, 160, (x, y) => {
  const far = Math.hypot(x - 120, y - 60);
  if (far < 12) return [53, 73, 62];
  if (far < 40) return [224, 144, 44];
  return y > 110 ? [95, 147, 168] : [242, 230, 200];
});
const PNG = Uint8Array.from(encode({ ...MARSH, data: Uint8Array.from(MARSH.data), channels: 4 }));

const DIALS: PictureDials = {
  width: 120,
  colours: 4,
  paints: [],
  detail: 2,
  leaveOut: [],
  outline: false,
  merged: [],
  order: [],
  bridges: true,
};

class Asked {
  readonly answers: FromSeparator[] = [];
  private newest = 0;
  readonly separator = new Separator(
    (message) => void this.answers.push(message),
    () => this.newest,
    decodePng,
  );

  async ask(type: 'separate', id: number, dials: Partial<PictureDials> = {}): Promise<void> {
    this.newest = id;
    await this.separator.receive({ type, id, dials: { ...DIALS, ...dials } });
  }

  get last() {
    const answer = this.answers.at(-1);
    if (answer?.type !== 'answer') throw new Error(`The last answer is ${JSON.stringify(answer)}.`);
    return answer.separation;
  }

  static async open(bytes = PNG, before = ''): Promise<Asked> {
    const asked = new Asked();
    await asked.separator.receive({ type: 'open', bytes, before });
    return asked;
  }
}

describe('a picture that is opened', () => {
  it('is shown with the usual dials', async () => {
    const { answers } = await Asked.open();
    expect(answers).toMatchObject([{ type: 'opened', picture: { width: 240 }, dials: { width: 148, colours: 4 } }]);
  });

  it('is shown with the dials of its tombolo.json', async () => {
    const before = JSON.stringify({
      size: { width: '90mm' },
      ground: '#f2e6c8',
      separate: { colours: 3, detail: '2mm', merged: [['#35493e', '#5f93a8']], order: ['#5f93a8'], files: {} },
    });
    const { answers } = await Asked.open(PNG, before);
    expect(answers).toMatchObject([
      {
        dials: {
          width: 90,
          colours: 3,
          detail: 2,
          ground: '#f2e6c8',
          merged: [['#35493e', '#5f93a8']],
          order: ['#5f93a8'],
        },
      },
    ]);
  });

  it('is refused in one line where it is none', async () => {
    const answers: FromSeparator[] = [];
    const separator = new Separator(
      (message) => void answers.push(message),
      () => 0,
      () => {
        throw new UnreadablePicture('is empty');
      },
    );
    await separator.receive({ type: 'open', bytes: new Uint8Array(), before: '' });
    expect(answers).toEqual([{ type: 'refused', id: 0, message: 'is empty' }]);
  });
});

describe('dials', () => {
  it('are answered roughly and then in full', async () => {
    const asked = await Asked.open();
    await asked.ask('separate', 1);
    expect(asked.answers.slice(1)).toMatchObject([
      { type: 'answer', id: 1, isRough: true },
      { type: 'answer', id: 1, isRough: false },
    ]);
    const { layers, fine, islands } = asked.last;
    expect(layers.map(({ paint }) => paint).sort()).toEqual(['#35493e', '#5f93a8', '#e0902c', '#f2e6c8']);
    expect(layers.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 6);
    expect(fine.data).toHaveLength(fine.width * fine.height);
    expect(islands.ordered).toBeLessThan(islands.alone);
  });

  it('that are old are not answered in full, nor at all when they are read late', async () => {
    const asked = await Asked.open();
    const first = asked.ask('separate', 1);
    const second = asked.ask('separate', 2);
    await Promise.all([first, second]);
    const told = asked.answers.slice(1).map((answer) => answer.type === 'answer' && [answer.id, answer.isRough]);
    expect(told.filter((each) => each && !each[1])).toEqual([[2, false]]);
    expect(told.filter((each) => each && each[0] === 1)).toEqual([[1, true]]);
    await asked.separator.receive({ type: 'separate', id: 1, dials: DIALS });
    expect(asked.answers).toHaveLength(told.length + 1);
  });

  it('merge colours, and order paints', async () => {
    const asked = await Asked.open();
    await asked.ask('separate', 1, { colours: 3, merged: [['#35493e', '#5f93a8']] });
    expect(asked.last.layers.map(({ paint }) => paint).sort()).toEqual(['#5f93a8', '#e0902c', '#f2e6c8']);
    const order = ['#5f93a8', '#f2e6c8', '#35493e', '#e0902c'];
    await asked.ask('separate', 2, { order });
    expect(asked.last.layers.map(({ paint }) => paint)).toEqual(order);
    await asked.ask('separate', 3, { order: ['#5f93a8', '#f2e6c8'] });
    const paints = asked.last.layers.map(({ paint }) => paint);
    expect(paints.indexOf('#5f93a8')).toBeLessThan(paints.indexOf('#f2e6c8'));
    expect(paints).toHaveLength(4);
  });

  it('that leave nothing to spray are refused in one line', async () => {
    const asked = await Asked.open();
    await asked.ask('separate', 1, { detail: 300 });
    expect(asked.answers.at(-1)).toMatchObject({ type: 'refused', id: 1 });
  });
});

describe('sheets', () => {
  it('come with a tombolo.json that knows the dials and what was written', async () => {
    const asked = await Asked.open();
    await asked.ask('separate', 1);
    const project = { file: 'marsh.svg', picture: '../marsh.png', before: '' };
    await asked.separator.receive({ type: 'sheets', id: 1, dials: { ...DIALS, detail: 3 }, project });
    const sheets = asked.answers.at(-1);
    if (sheets?.type !== 'sheets') throw new Error('There are no sheets.');
    expect(sheets.islands).toBe(0);
    expect(sheets.drawing.match(/<g /g)).toHaveLength(4);
    expect(JSON.parse(sheets.config)).toMatchObject({
      size: { width: '120mm' },
      layers: [{ from: 'marsh.svg' }],
      separate: { picture: '../marsh.png', detail: '3mm', files: { 'marsh.svg': expect.any(String) } },
    });
  });
});
