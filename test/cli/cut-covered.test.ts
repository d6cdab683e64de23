/** `tombolo bridge --cut-covered`: what later layers paint over is cut away, and said so. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { CliWorkshop } from './run-cli';

const ring = (x: number, y: number) => `M${x} ${y}h20v20h-20z M${x + 5} ${y + 5}h10v10h-10z`;
/** Of three islands two lie under the second layer. */
const TRAIL =
  '<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="100mm" viewBox="0 0 100 100">' +
  `<g id="Water"><path fill-rule="evenodd" d="${ring(10, 10)} ${ring(40, 10)} ${ring(10, 60)}"/></g>` +
  '<g id="Heron"><rect x="13" y="13" width="44" height="14"/></g></svg>';

let workshop: CliWorkshop;

beforeAll(async () => {
  workshop = await CliWorkshop.create();
  await workshop.file('trail.svg', TRAIL);
});
afterAll(() => workshop.dispose());

describe('tombolo bridge --cut-covered', () => {
  it('cuts away what is covered and bridges the rest, and says both', async () => {
    const { code, stdout, stderr } = await workshop.run(['bridge', 'trail.svg', '--cut-covered']);
    expect(stderr).toMatch(/^trail\.svg: 2 islands cut away, as later layers cover them; 2 bridges added\n$/);
    expect(code).toBe(0);
    expect(stdout).toContain('M10 10h20v20h-20z M40 10h20v20h-20z');
    const again = await workshop.run(['check', '-', '--format', 'json'], { input: stdout });
    expect(JSON.parse(again.stdout).files[0].layers[0].islands).toBe(0);
  });

  it('lists what it would cut away', async () => {
    const { stdout } = await workshop.run(['bridge', 'trail.svg', '--cut-covered', '--plan']);
    const { bridges, cutAway } = JSON.parse(stdout);
    expect(bridges).toHaveLength(2);
    expect(cutAway).toMatchObject([
      { layer: 'Water', area: 100 },
      { layer: 'Water', area: 100 },
    ]);
  });

  it('does so in one layer alone', async () => {
    const { stdout, stderr } = await workshop.run(['bridge', 'trail.svg', '--cut-covered', '--layer', 'Heron']);
    expect(stderr).toBe('trail.svg: no bridge added\n');
    expect(stdout).toBe(TRAIL);
  });

  it('is what `tombolo bridge` points to where it bridges covered islands', async () => {
    const { stdout, stderr } = await workshop.run(['bridge', 'trail.svg', '--plan']);
    expect(stderr).toMatch(
      /^trail\.svg: 6 bridges planned\ntrail\.svg: 2 islands are covered by later layers and need no bridge: --cut-covered cuts them away instead\n$/,
    );
    expect(JSON.parse(stdout)).not.toHaveProperty('cutAway');
  });

  it('is not for a bridge at a place', async () => {
    const { code, stderr } = await workshop.run(['bridge', 'trail.svg', '--cut-covered', '--at', '10,10']);
    expect(code).toBe(2);
    expect(stderr).toContain("'--cut-covered' cannot be used with option '--at");
  });
});
