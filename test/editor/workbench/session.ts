/** A page with the workbench on a copy of a folder; a test file that leaves it in order leaves it to the next one. */
import { cpSync, existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { type Browser, chromium, type Page } from 'playwright-core';
import { inject } from 'vitest';
import { workbenchAddress } from '../../../src/build/host/host.mjs';

export type Settings = Readonly<Record<string, unknown>>;

/** Of a folder, as the user's are those of all pages. An SVG opens as text; the settings' own file is not shown. */
const USUAL: Settings = {
  'workbench.editorAssociations': { '*.svg': 'default' },
  'files.exclude': { '**/.vscode': true },
};
const VIEWPORT = { width: 1440, height: 900 };
/** By the folder that was copied and the settings that the page was loaded with. */
const kept = new Map<string, Session>();
let browser: Promise<Browser> | undefined;

export class Session {
  readonly page: Page;
  readonly folder: string;
  private readonly source: string;
  private readonly settings: Settings;
  /** What the pages, the webview's among them, complained about. */
  readonly complaints: readonly string[];

  private constructor(page: Page, folder: string, source: string, settings: Settings, complaints: readonly string[]) {
    this.page = page;
    this.folder = folder;
    this.source = source;
    this.settings = settings;
    this.complaints = complaints;
  }

  /** @param source is copied: what the tests write is thrown away */
  static async open(source: string, settings: Settings): Promise<Session> {
    const key = keyOf(source, settings);
    const session = kept.get(key) ?? (await Session.load(source, settings));
    kept.delete(key);
    return session;
  }

  private static async load(source: string, settings: Settings): Promise<Session> {
    const stage = inject('stage');
    const folder = mkdtempSync(path.join(stage.state, 'workspace-'));
    cpSync(source, folder, { recursive: true });
    writeSettings(folder, settings);
    browser ??= chromium.connect(stage.browser);
    const page = await (await browser).newPage({ viewport: VIEWPORT });
    const complaints: string[] = [];
    page.on('console', (message) => {
      if (message.type() === 'error') complaints.push(message.text());
    });
    const { developmentPath } = stage;
    await page.goto(workbenchAddress(stage, { folder, ...(developmentPath !== undefined && { developmentPath }) }));
    await page.getByRole('treeitem').first().waitFor();
    return new Session(page, folder, source, settings, complaints);
  }

  /** Keeps the page for the next file. */
  async leave(): Promise<void> {
    try {
      await this.tidy();
      kept.set(keyOf(this.source, this.settings), this);
    } catch {
      // The next file loads another.
      await this.close();
    }
  }

  async close(): Promise<void> {
    await this.page.context().close();
  }

  /** As after loading: no editors, no panel, the Explorer in sight, the folder as its source. */
  private async tidy(): Promise<void> {
    const { page } = this;
    await page.emulateMedia({ reducedMotion: null });
    await page.setViewportSize(VIEWPORT);
    await this.closeEditors();
    // A group that is locked stays when it is empty, and takes room from the next bench.
    if ((await page.locator('.editor-group-container').count()) > 1) throw new Error('A group of editors stays.');
    if (await page.locator('.part.panel').isVisible()) await page.keyboard.press('Control+J');
    if (!(await page.locator('.part.sidebar').isVisible())) await page.keyboard.press('Control+B');
    await page.getByRole('treeitem').first().waitFor({ timeout: 5000 });
    await this.collapseFolders();
    const files = readdirSync(this.folder, { recursive: true, encoding: 'utf8' });
    const added = files.filter((name) => !existsSync(path.join(this.source, name)));
    for (const name of added) rmSync(path.join(this.folder, name), { recursive: true, force: true });
    cpSync(this.source, this.folder, { recursive: true });
    writeSettings(this.folder, this.settings);
  }

  private async closeEditors(): Promise<void> {
    const { page } = this;
    const tabs = page.locator('.tabs-container .tab');
    const discard = page.getByRole('button', { name: "Don't Save" });
    for (let tries = 0; (await tabs.count()) > 0; tries += 1) {
      if (tries === 5) throw new Error('The editors stay open.');
      await tabs.first().click();
      await page.keyboard.press('Control+K');
      await page.keyboard.press('Control+W');
      if (await discard.isVisible()) await discard.click();
      await page.waitForTimeout(200);
    }
  }

  private async collapseFolders(): Promise<void> {
    const open = this.page.getByRole('treeitem', { expanded: true });
    for (let left = await open.count(); left > 0; left -= 1) await open.first().click();
    await open.waitFor({ state: 'detached', timeout: 5000 });
  }
}

const keyOf = (source: string, settings: Settings): string => JSON.stringify([source, settings]);

/** Settings of a folder. The editor follows them. */
export function writeSettings(folder: string, settings: Settings): void {
  mkdirSync(path.join(folder, '.vscode'), { recursive: true });
  writeFileSync(path.join(folder, '.vscode/settings.json'), JSON.stringify({ ...USUAL, ...settings }));
}
