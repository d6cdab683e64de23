/** What the text says where the pointer rests. */
import { afterEach, beforeEach, expect, test } from 'vitest';
import { hoverAt } from '../../../src/server/features/hover';
import { LocalServer } from '../local-server';

/** A ring on two bridges of 0.80 mm. */
const text = `<svg xmlns="http://www.w3.org/2000/svg" data-tombolo-reading="openings"
  width="60mm" height="60mm" viewBox="0 0 60 60">
<path d="M5 5h20v9.6h-5v-4.6h-10v4.6h-5z M5 15.4h5v4.6h10v-4.6h5v9.6h-20z"/>
</svg>`;

let server: LocalServer;

beforeEach(() => {
  server = new LocalServer('file:///one.svg', text);
});
afterEach(() => server.dispose());

test('the side of a bridge is called one, with its size; other sides are not', async () => {
  const known = await server.known();
  const { live, engine } = server;
  const hover = (at: string) => async () =>
    JSON.stringify((await hoverAt(known, live, text.indexOf(at) + 1, engine))?.contents) ?? '';
  await expect.poll(hover('h5v4.6'), { timeout: 20_000 }).toContain('Bridge, 0.80 mm wide, 5.00 mm long');
  expect(await hover('h20v9.6')()).not.toContain('Bridge');
});

test('a finding comes with a little picture of its place', async () => {
  const loose = new LocalServer(
    'file:///loose.svg',
    text.replace(/d="[^"]*"/, 'd="M5 5h20v20h-20z M10 10v10h10v-10z"'),
  );
  const known = await loose.known();
  const finding = known.facts.findings.find(({ at }) => at !== undefined);
  const offset = finding?.span.from ?? 0;
  const hover = async () => JSON.stringify((await hoverAt(known, loose.live, offset, loose.engine))?.contents);
  await expect.poll(hover, { timeout: 20_000 }).toContain('](data:image/svg+xml;base64,');
  loose.dispose();
});
