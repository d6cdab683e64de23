/** The bridges of a whole layer, asked for by the bench. */
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type {
  LayerPlan,
  LayerPlanParams,
  LayerSketch,
  PlanGhost,
  PlanGhostParams,
} from '../../src/protocol/layer-plan';
import { layerId } from '../../src/sheet/layer/layer-id';
import { applyEdits } from '../../src/text/text';
import { buildServer } from './build-server';
import { ServerProcess } from './server-process';

/** Two square islands, each other's mirror image. */
const drawing = `<svg xmlns="http://www.w3.org/2000/svg" data-tombolo-reading="openings" width="80mm" height="60mm"
  viewBox="0 0 80 60"><g id="Sun"><path d="M10 20h20v20h-20Z M12 22v16h16v-16Z M50 20h20v20h-20Z M52 22v16h16v-16Z"/></g></svg>
`;
const layer = layerId('', 0);

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

async function opened(): Promise<string> {
  const document = await server.open('sun.svg', drawing);
  await server.diagnostics(document);
  return document.uri;
}

const plan = (uri: string, more: Partial<LayerPlanParams> = {}) =>
  server.connection.sendRequest<LayerPlan | null>('tombolo/layerPlan', { uri, layer, version: 1, ...more });
const ghost = (uri: string, more: Pick<PlanGhostParams, 'move'> & Partial<PlanGhostParams>) =>
  server.connection.sendRequest<PlanGhost | null>('tombolo/planGhost', { uri, layer, version: 1, ...more });

describe('the sketch of a plan', () => {
  it('has the bridges before they are proven: here the very ones that hold', async () => {
    const uri = await opened();
    const params = { uri, layer, version: 1, style: 'level' };
    const sketch = await server.connection.sendRequest<LayerSketch | null>('tombolo/layerSketch', params);
    expect(sketch).toMatchObject({ version: 1, layer, style: 'level', stated: 'auto' });
    expect(sketch).not.toHaveProperty('answer');
    expect(sketch?.bridges).toEqual((await plan(uri, { style: 'level' }))?.bridges);
  });

  it('is made for the text that is shown, and no other', async () => {
    const uri = await opened();
    const stale = { uri, layer, version: 0 };
    expect(await server.connection.sendRequest('tombolo/layerSketch', stale)).toBeNull();
  });
});

describe('the plan of a layer', () => {
  it('has all bridges, proven, in the style that the settings say', async () => {
    const told = await plan(await opened());
    expect(told).toMatchObject({ version: 1, layer, style: 'auto', stated: 'auto', left: [] });
    expect(told?.bridges.length).toBeGreaterThan(1);
    if (!told || 'reason' in told.answer) throw new Error('no offer');
    expect(told.answer.title).toMatch(/^Bridge every island in layer "Sun" \(\d bridges of 0\.80 mm\)/);
    expect(told.answer.bridges.length).toBe(told.bridges.length);
    expect(applyEdits(drawing, told.answer.edits)).not.toBe(drawing);
    // No tombolo.json is in force, and none is made.
    expect(told.keep).toBeUndefined();
  });

  it('is another in another style', async () => {
    const uri = await opened();
    const level = await plan(uri, { style: 'level' });
    expect(level?.bridges.every(({ from, to }) => Math.abs(from.y - to.y) < 0.01)).toBe(true);
    expect((await plan(uri, { style: 'upright' }))?.bridges.every(({ from, to }) => from.x === to.x)).toBe(true);
  });

  it('is worked out for the last question only', async () => {
    const uri = await opened();
    const [first, second, third] = [plan(uri), plan(uri, { style: 'level' }), plan(uri, { style: 'upright' })];
    expect(await first).toBeNull();
    expect(await second).toBeNull();
    expect((await third)?.style).toBe('upright');
  });

  it('and for nobody who has given it up', async () => {
    const uri = await opened();
    const asked = plan(uri);
    await server.connection.sendRequest('tombolo/dropLayerPlan', { uri });
    expect(await asked).toBeNull();
    expect((await plan(uri))?.style).toBe('auto');
  });

  it('is made for the text that is shown, and no other', async () => {
    const uri = await opened();
    expect(await plan(uri, { version: 0 })).toBeNull();
    expect(await plan(uri, { layer: layerId('', 9) })).toBeNull();
  });
});

describe('a bridge of it that is dragged', () => {
  it('takes its likes with it, and is proven with them', async () => {
    const uri = await opened();
    const told = await plan(uri, { style: 'upright' });
    const [first] = told?.bridges ?? [];
    if (!first) throw new Error('no bridge');
    const to = { x: (first.from.x + first.to.x) / 2 + 2, y: (first.from.y + first.to.y) / 2 };
    const moved = await ghost(uri, { style: 'upright', move: { bridge: 0, to, apart: false } });
    expect(moved?.reason).toBeUndefined();
    expect(moved?.ghosts.length).toBeGreaterThan(1);
    const alone = await ghost(uri, { style: 'upright', move: { bridge: 0, to, apart: true } });
    expect(alone?.ghosts.map(({ bridge }) => bridge)).toEqual([0]);
    const ends = moved?.ghosts.map(({ bridge, preview: { from, to: end } }) => ({ bridge, from, to: end })) ?? [];
    const proven = await plan(uri, { style: 'upright', moved: ends });
    if (!proven || 'reason' in proven.answer) throw new Error('no offer');
    expect(proven.answer.bridges[0]?.from.x).toBeCloseTo(to.x, 2);
  });
});
