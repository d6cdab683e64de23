/** The extension where there is no Node.js: a worker serves, files come through the editor. */
import { writeFileSync } from 'node:fs';
import path from 'node:path';
import { expect, it as test } from 'vitest';
import { useWorkbench } from '../workbench/workbench';

const bench = useWorkbench('media/demo');

test('runs as a worker of the browser', async () => {
  await bench.openFile('waymarker.svg');
  await bench.page.locator('.squiggly-error').first().waitFor();
  const scripts = bench.page.workers().map((worker) => worker.url());
  expect(scripts.length).toBeGreaterThan(1);
});

test('takes the limits of the tombolo.json in the folder, and follows it', async () => {
  const config = path.join(bench.folder, 'tombolo.json');
  await bench.page.keyboard.press('Control+Shift+M');
  const panel = bench.page.locator('.part.panel');
  await panel
    .getByText(/Bridge only 0\.45 mm wide \(minimum 0\.80 mm/)
    .first()
    .waitFor();
  const text = bench.onDisk('tombolo.json');
  writeFileSync(config, text.replace(/"bridge": "[^"]*"/, '"bridge": "0.9mm"'));
  await panel
    .getByText(/Bridge only 0\.45 mm wide \(minimum 0\.90 mm/)
    .first()
    .waitFor();
  writeFileSync(config, text);
  await panel
    .getByText(/minimum 0\.80 mm/)
    .first()
    .waitFor();
  await bench.page.keyboard.press('Control+Shift+M');
});

test('shows the bench and adds bridges', async () => {
  await bench.command('Tombolo: Open Stencil Preview (Bench)');
  const island = bench.bench.getByRole('button', { name: /Island, 272/ });
  await island.waitFor();
  await bench.shot('web-bench');
  await bench.command('Tombolo: Bridge Every Island');
  await island.waitFor({ state: 'detached' });
  await bench.shot('web-bridged');
});

test('reads the files of a project that are not open', async () => {
  await bench.openFile('heron.svg', 'trail');
  await bench.page.keyboard.press('Control+Shift+M');
  await bench.page
    .locator('.part.panel')
    .getByText(/Bridge only 0\.55 mm wide/)
    .first()
    .waitFor();
  await bench.page
    .locator('.part.panel')
    .getByText(/overlap by only 0\.28 mm/)
    .first()
    .waitFor();
  await bench.shot('web-project');
});

test('says in one line what cannot be had there', async () => {
  await bench.page.keyboard.press('Control+Shift+M');
  await bench.openFile('posts.mjs', 'posts');
  await bench.command("Tombolo: Watch This Program's Drawings");
  await bench.page
    .getByText('Programs are watched in VS Code on the desktop: none can run in a browser.')
    .first()
    .waitFor();
});
