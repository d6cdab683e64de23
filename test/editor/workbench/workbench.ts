/** A workbench with the extension in it, on a copy of a folder, and what a person does with it. */
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Browser, FrameLocator, Locator, Page } from 'playwright-core';
import { afterEach } from 'vitest';
import { launchBrowser } from '../host/browser.mjs';
import { startHost, workbenchAddress, type Host } from '../host/host.mjs';

export const root = path.resolve(import.meta.dirname, '../../..');
/** The extension that is driven; TOMBOLO_EXTENSION names a folder with another build of it. */
const developmentPath = process.env['TOMBOLO_EXTENSION'] ?? root;
const shots = path.join(root, 'test/editor/shots');

export class Workbench {
  private constructor(
    readonly page: Page, readonly folder: string, private readonly host: Host, private readonly browser: Browser,
    /** What the pages, the webview's among them, complained about. */
    readonly complaints: readonly string[],
  ) {}

  /**
   * @param source is copied: what the tests write is thrown away
   * @param extensionsDir holds installed extensions; without it the extension runs from the sources' `dist`
   */
  static async open(
    source: string, settings: Record<string, unknown> = {}, extensionsDir?: string,
  ): Promise<Workbench> {
    const folder = mkdtempSync(path.join(tmpdir(), 'tombolo-workspace-'));
    cpSync(source, folder, { recursive: true });
    const host = await startHost({
      settings: { 'workbench.editorAssociations': { '*.svg': 'default' }, ...settings },
      ...(extensionsDir !== undefined && { extensionsDir }),
    });
    const browser = await launchBrowser();
    const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
    const complaints: string[] = [];
    page.on('console', (message) => {
      if (message.type() === 'error') complaints.push(message.text());
    });
    await page.goto(workbenchAddress(host, { folder, ...(extensionsDir === undefined && { developmentPath }) }));
    await page.getByRole('treeitem').first().waitFor();
    return new Workbench(page, folder, host, browser, complaints);
  }

  async close(): Promise<void> {
    await this.browser.close();
    await this.host.stop();
    rmSync(this.folder, { recursive: true, force: true });
  }

  /** Leaves a picture in test/editor/shots. */
  async shot(name: string): Promise<void> {
    mkdirSync(shots, { recursive: true });
    await this.page.screenshot({ path: path.join(shots, `${name}.png`) });
  }

  async openFile(name: string): Promise<void> {
    await this.page.getByRole('treeitem', { name }).first().dblclick();
    await this.page.getByRole('tab', { name }).first().waitFor();
  }

  /** Runs a command by the name the palette shows. While the editor starts, it may not be listed yet. */
  async command(title: string): Promise<void> {
    const row = this.page.locator('.quick-input-list .monaco-list-row', { hasText: title }).first();
    await retry(async () => {
      await this.page.keyboard.press('Escape');
      await this.page.keyboard.press('F1');
      await this.page.locator('.quick-input-widget input').fill(`>${title}`);
      await row.click({ timeout: 5000 });
    });
  }

  /** Gives the bench most of the window: no side bar, and its group twice as wide. */
  async widenBench(): Promise<void> {
    await this.page.keyboard.press('Control+B');
    await this.page.getByRole('treeitem').first().waitFor({ state: 'hidden' });
    const sash = this.page.locator('.editor-group-container').nth(1);
    const box = await sash.boundingBox();
    if (!box) throw new Error('The bench has no group of its own.');
    await this.page.mouse.move(box.x, box.y + box.height / 2);
    await this.page.mouse.down();
    await this.page.mouse.move(box.x - 280, box.y + box.height / 2, { steps: 4 });
    await this.page.mouse.up();
  }

  onDisk(name: string): string {
    return readFileSync(path.join(this.folder, name), 'utf8');
  }

  /** The user's settings as they are on disk now. */
  userSettings(): Record<string, unknown> {
    const file = path.join(this.host.state, 'user/User/settings.json');
    return JSON.parse(readFileSync(file, 'utf8')) as Record<string, unknown>;
  }

  async save(): Promise<void> {
    await this.page.keyboard.press('Control+S');
    await this.page.locator('.tab.dirty').waitFor({ state: 'detached' });
  }

  get problems(): Locator {
    return this.page.locator('.markers-panel');
  }

  /** The page inside the bench's webview. */
  get bench(): FrameLocator {
    return this.page.frameLocator('iframe.webview').frameLocator('iframe#active-frame');
  }
}

/** Panels that are just opening can take the focus away: such steps are tried again. */
export async function retry<T>(action: () => Promise<T>, times = 8): Promise<T> {
  for (let i = 1; ; i++) {
    try {
      return await action();
    } catch (error) {
      if (i === times) throw error;
    }
  }
}


/** Leaves a picture of the workbench for each test that failed. */
export function picturesOfFailures(workbench: () => Workbench | undefined): void {
  afterEach(async ({ task }) => {
    if (task.result?.state === 'fail') await workbench()?.shot(`failure ${task.name.replace(/\W+/g, ' ')}`);
  });
}
