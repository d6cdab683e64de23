import { afterAll, beforeAll, test } from 'vitest';
import { Workbench, root } from './workbench';
let w: Workbench;
beforeAll(async () => { w = await Workbench.open(root + '/media/demo'); });
afterAll(async () => { await w?.close(); });
test('look', async () => {
  const t = Date.now();
  await w.openFile('waymarker.svg');
  try {
    await w.page.locator('.squiggly-error').first().waitFor({ timeout: 8000 });
    console.log('squiggles after', Date.now() - t);
  } catch (e) { console.log(String(e).slice(0, 200)); }
  await w.shot('try-1');
  await w.command('Tombolo: Open the Bench');
  try { await w.bench.locator('.canvas').waitFor({ timeout: 8000 }); await w.page.waitForTimeout(1500);} catch (e) { console.log(String(e).slice(0, 300)); }
  await w.shot('try-2');
  console.log(w.complaints.filter((c) => !/spdlog|watchdog/.test(c)).map((c) => c.slice(0, 600)).join('\n'));
});
