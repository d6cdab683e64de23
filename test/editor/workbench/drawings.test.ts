/** Drawings that are no stencils yet, and drawings that mean harm. */
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { picturesOfFailures, root, Workbench } from './workbench';

let bench: Workbench;
const asked: string[] = [];

beforeAll(async () => {
  bench = await Workbench.open(path.join(root, 'test/editor/workspace'), {
    'workbench.colorTheme': 'Default Dark Modern',
  });
  bench.page.on('request', (request) => asked.push(request.url()));
});
afterAll(async () => { await bench?.close(); });
picturesOfFailures(() => bench);

describe('a drawing that nobody called a stencil', () => {
  test('has no underlines; the bench says so and offers to begin', async () => {
    await bench.openFile('plain.svg');
    await bench.command('Tombolo: Open the Bench');
    await bench.bench.getByText('has not been called a stencil yet').waitFor();
    expect(await bench.page.locator('.squiggly-error').count()).toBe(0);
    await bench.shot('plain-1-left-in-peace');
  });

  test('is one after a single click', async () => {
    await bench.bench.getByText('Begin a stencil here').click();
    await bench.page.locator('.squiggly-error').first().waitFor();
    await bench.bench.getByText('has not been called a stencil yet').waitFor({ state: 'hidden' });
    await bench.shot('plain-2-begun');
  });
});

describe('a drawing that means harm', () => {
  test('shows in the bench as bare geometry: nothing of its markup is there', async () => {
    await bench.page.getByRole('treeitem', { name: 'hostile' }).first().click();
    await bench.openFile('hostile.svg');
    await bench.bench.locator('.canvas[aria-label*="Stencil, 60 by 60"]').waitFor();
    await bench.bench.locator('.layers li').nth(1).waitFor();
    const inside = bench.bench.locator('body');
    const markup = 'foreignObject, image, iframe, img, a, use, style, [onload], [onclick], [href]';
    expect(await inside.locator(markup).count()).toBe(0);
    expect(await inside.locator('script').count()).toBe(1);
    await bench.shot('hostile');
  });

  test('ran nothing in any frame, and asked for nothing outside', async () => {
    await bench.page.waitForTimeout(1000);
    for (const frame of bench.page.frames()) {
      expect(await frame.evaluate('typeof hacked'), frame.url()).toBe('undefined');
    }
    expect(asked.filter((url) => url.includes('outside.invalid'))).toEqual([]);
    expect(bench.complaints.filter((text) => /Content Security Policy/i.test(text))).toEqual([]);
  });
});
