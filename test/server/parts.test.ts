import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it, test } from 'vitest';
import type { PreviewStack } from '../../src/protocol/index';
import type { PartAtParams, PlaceAnswer } from '../../src/protocol/parts';
import { layerId } from '../../src/sheet/layer/layer-id';
import { buildServer } from './build-server';
import { ServerProcess } from './server-process';

/** A disc under a ring whose middle falls out, and a slot that is 0.3 mm wide between two squares. */
const SIZE = 'width="60mm" height="60mm" viewBox="0 0 60 60"';
const drawing = `<svg xmlns="http://www.w3.org/2000/svg" data-tombolo-reading="openings" ${SIZE}>
  <g id="sun" fill="#ffcc00"><circle cx="30" cy="30" r="20"/></g>
  <g id="eye" fill="#204060">
    <path d="M15 30 a15 15 0 1 1 30 0 a15 15 0 1 1 -30 0 Z M20 30 a10 10 0 1 0 20 0 a10 10 0 1 0 -20 0 Z"/>
    <path d="M2 2 H6 V3.85 H9 V2 H13 V6 H9 V4.15 H6 V6 H2 Z"/>
  </g>
</svg>
`;

let built: Awaited<ReturnType<typeof buildServer>>;
let server: ServerProcess;

beforeAll(async () => {
  built = await buildServer();
});
afterAll(() => built.remove());
beforeEach(async () => {
  server = await ServerProcess.start(built.file);
});
afterEach(async () => {
  await server.stop();
});

type Asked = Partial<PartAtParams> & { readonly x: number; readonly y: number; readonly layers?: readonly number[] };

async function partAt(
  uri: string,
  { x, y, layers = [1, 0], reach = 0.1, sheets = false }: Asked,
): Promise<PlaceAnswer | null> {
  const places = layers.map((layer) => ({ layer: layerId('', layer), point: { x, y } }));
  return server.connection.sendRequest('tombolo/partAt', { uri, places, reach, sheets });
}

async function opened(text = drawing): Promise<string> {
  const document = await server.open('eye.svg', text);
  await server.diagnostics(document);
  return document.uri;
}

const words = ({ from, to }: { from: number; to: number }, text = drawing) => text.slice(from, to);

describe('what lies at a place of the picture', () => {
  it('is the opening of the uppermost layer there, with its measures and its own contour', async () => {
    const uri = await opened();
    const answer = await partAt(uri, { x: 17, y: 30 });
    expect(answer).toMatchObject({ version: 1, part: { kind: 'opening', layer: '#1', uri } });
    expect(answer?.snap).toBeUndefined();
    expect(answer?.part?.across).toBeUndefined();
    const part = answer?.part;
    expect(part?.width).toBeCloseTo(30, 2);
    expect(part?.height).toBeCloseTo(30, 2);
    expect(Math.abs((part?.area ?? 0) - Math.PI * (15 ** 2 - 10 ** 2))).toBeLessThan(0.4);
    expect(Math.abs((part?.cutLength ?? 0) - 2 * Math.PI * 25)).toBeLessThan(0.2);
    expect(part && words(part)).toBe('a15 15 0 1 1 30 0 a15 15 0 1 1 -30 0');
  });

  it('is the island in its middle, which hides what lies under it', async () => {
    const part = (await partAt(await opened(), { x: 30, y: 31 }))?.part;
    expect(part).toMatchObject({ kind: 'island', layer: '#1' });
    expect(part && words(part)).toBe('a10 10 0 1 0 20 0 a10 10 0 1 0 -20 0');
  });

  it('is a lower layer where the upper one has nothing, and only what shows', async () => {
    const uri = await opened();
    expect((await partAt(uri, { x: 30, y: 12 }))?.part).toMatchObject({ kind: 'opening', layer: '#0' });
    expect((await partAt(uri, { x: 17, y: 30, layers: [0] }))?.part).toMatchObject({ kind: 'opening', layer: '#0' });
    expect((await partAt(uri, { x: 1, y: 59 }))?.part).toBeUndefined();
  });

  it('near an edge it is the command that draws the edge', async () => {
    const part = (await partAt(await opened(), { x: 30, y: 15.05 }))?.part;
    expect(part && words(part)).toMatch(/^a15 15 0 1 1 -?30 0$/);
  });

  it('in the slot it is the slot, with its width', async () => {
    const part = (await partAt(await opened(), { x: 7.5, y: 4, reach: 1.6 }))?.part;
    expect(part).toMatchObject({ kind: 'slot', layer: '#1', area: 0 });
    expect(part?.across).toBeCloseTo(0.3, 2);
    expect(part && words(part)).toMatch(/^H[96]$/);
  });

  it('beside all openings it is the sheet, where sheets are shown', async () => {
    const uri = await opened();
    const part = (await partAt(uri, { x: 1, y: 59, sheets: true, layers: [1] }))?.part;
    expect(part).toMatchObject({ kind: 'sheet', layer: '#1', count: 0, width: 60, height: 60 });
    expect(part && words(part)).toBe('g');
    expect((await partAt(uri, { x: 61, y: 59, sheets: true, layers: [1] }))?.part).toBeUndefined();
  });

  it('snaps to the points that the artist set, else to an edge', async () => {
    const uri = await opened();
    const corner = (await partAt(uri, { x: 2.2, y: 1.9, reach: 0.5 }))?.snap;
    expect(corner).toMatchObject({ layer: '#1', kind: 'point', point: { x: 2, y: 2 } });
    const edge = (await partAt(uri, { x: 4, y: 1.9, reach: 0.5 }))?.snap;
    expect(edge?.kind).toBe('edge');
    expect(edge?.point.x).toBeCloseTo(4);
    expect(edge?.point.y).toBeCloseTo(2);
    expect((await partAt(uri, { x: 50, y: 5, reach: 0.5 }))?.snap).toBeUndefined();
  });

  it('is known of a drawing that is no stencil once its stack was shown, and of no text changed since', async () => {
    const plain = drawing.replace(' data-tombolo-reading="openings"', '');
    const document = await server.open('plain.svg', plain);
    expect(await partAt(document.uri, { x: 17, y: 30 })).toBeNull();
    await server.connection.sendRequest('tombolo/stack', { uri: document.uri });
    expect((await partAt(document.uri, { x: 17, y: 30 }))?.part).toMatchObject({ kind: 'opening' });
    await server.change(document, [{ text: plain.replace('r="20"', 'r="21"') }]);
    expect(await partAt(document.uri, { x: 17, y: 30 })).toBeNull();
  });

  it('is nothing where no such layer or document is', async () => {
    const uri = await opened();
    expect((await partAt(uri, { x: 17, y: 30, layers: [9, -1], sheets: true }))?.part).toBeUndefined();
    expect(await partAt('file:///nowhere.svg', { x: 0, y: 0 })).toBeNull();
  });
});

describe('the parts of a layer one by one', () => {
  it('come with their numbers, in rounds', async () => {
    const uri = await opened();
    const ask = async (number: number, layer = 1): Promise<PlaceAnswer | null> =>
      server.connection.sendRequest('tombolo/part', { uri, layer: layerId('', layer), number });
    const first = (await ask(0))?.part;
    const kinds: string[] = [];
    for (let i = 0; i < (first?.count ?? 0); i += 1) {
      const part = (await ask(i))?.part;
      expect(part?.number).toBe(i);
      kinds.push(part?.kind ?? '');
      const there = part && (await partAt(uri, { ...part.at, layers: [1], reach: 0.001 }))?.part;
      expect(there?.number, `the place that is told for part ${i}`).toBe(i);
    }
    expect(kinds).toEqual(['opening', 'opening', 'island', 'slot']);
    expect((await ask(-1))?.part?.kind).toBe('slot');
    expect((await ask(4))?.part?.number).toBe(0);
    expect((await ask(0, 7))?.part).toBeUndefined();
  });
});

test('the stack tells the bed of the cutter', async () => {
  server.write('tombolo.json', '{ "cutter": { "bed": ["300mm", "200mm"] } }');
  const uri = await opened();
  const stack: PreviewStack = await server.connection.sendRequest('tombolo/stack', { uri });
  expect(stack.bed).toEqual([300, 200]);
});
