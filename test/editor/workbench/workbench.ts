/** What a person does with the workbench. */
import { mkdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import type { FrameLocator, Locator, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, inject } from 'vitest';
import { root } from './root';
import { Session, type Settings, writeSettings } from './session';

const shots = path.join(root, 'test/editor/shots');

export class Workbench {
  private opened: Session | undefined;

  /** @param source a folder, from the repository's root */
  async open(source: string, settings: Settings = {}): Promise<void> {
    this.opened = await Session.open(path.join(root, source), settings);
  }

  /** @param failed a test: then nobody knows what state the page is in */
  async leave(failed: boolean): Promise<void> {
    await (failed ? this.opened?.close() : this.opened?.leave());
    this.opened = undefined;
  }

  private get session(): Session {
    if (!this.opened) throw new Error('The workbench is not open.');
    return this.opened;
  }

  get page(): Page {
    return this.session.page;
  }

  /** The copy of the source that is worked on. */
  get folder(): string {
    return this.session.folder;
  }

  get complaints(): readonly string[] {
    return this.session.complaints;
  }

  /** Leaves a picture in test/editor/shots. */
  async shot(name: string): Promise<void> {
    mkdirSync(shots, { recursive: true });
    await this.page.screenshot({ path: path.join(shots, `${name}.png`) });
  }

  /** @param folder that the file lies in, where it is not the workspace's own */
  async openFile(name: string, folder?: string): Promise<void> {
    if (folder !== undefined) await this.expand(folder);
    await this.page.getByRole('treeitem', { name }).first().dblclick();
    await this.page.getByRole('tab', { name }).first().waitFor();
  }

  private async expand(folder: string): Promise<void> {
    const item = this.page.getByRole('treeitem', { name: folder, exact: true });
    if ((await item.getAttribute('aria-expanded')) === 'false') await item.click();
  }

  /** Runs a command by the name the palette shows. While the editor starts, it may not be listed yet. */
  async command(title: string): Promise<void> {
    const row = this.page.locator('.quick-input-list .monaco-list-row', { hasText: title }).first();
    await retry(async () => {
      await this.page.keyboard.press('Escape');
      await this.page.keyboard.press('F1');
      await this.page.locator('.quick-input-widget input').fill(`>${title}`);
      await row.click({ timeout: 1500 });
    }, 20);
  }

  /** Chooses from the menu of a file in the Explorer. While the editor starts, a command may not be in it yet. */
  async chooseFromFile(file: string, item: string): Promise<void> {
    await retry(async () => {
      await this.page.keyboard.press('Escape');
      await this.page.getByRole('treeitem', { name: file }).first().click({ button: 'right' });
      await this.page.getByRole('menuitem', { name: item }).click({ timeout: 2000 });
    }, 15);
  }

  /** Gives the bench most of the window: no side bar, and its group twice as wide. */
  async widenBench(): Promise<void> {
    await this.page.keyboard.press('Control+B');
    await this.page.getByRole('treeitem').first().waitFor({ state: 'hidden' });
    const group = this.page.locator('.editor-group-container').nth(1);
    const window = this.page.viewportSize()?.width ?? 0;
    await retry(async () => {
      const box = await group.boundingBox();
      if (!box) throw new Error('The bench has no group of its own.');
      if (box.width > window * 0.65) return;
      await this.page.mouse.move(box.x, box.y + box.height / 2);
      await this.page.mouse.down();
      await this.page.mouse.move(box.x - 280, box.y + box.height / 2, { steps: 4 });
      await this.page.mouse.up();
      // The side bar that has just gone may have moved the border away from the pointer: how wide it is now is asked anew.
      throw new Error(`The bench is ${box.width} of ${window} px wide, from ${box.x}.`);
    });
  }

  /** Brings a list of the bench into sight, where there is room for only one at a time. */
  async showList(name: 'Findings' | 'Layers' | 'Misregistration'): Promise<void> {
    const tab = this.bench.getByRole('tab', { name: name === 'Misregistration' ? /Misregistration|Slip/ : name });
    if (await tab.isVisible()) await tab.click();
  }

  /** Chooses from the menu at the end of the bench's toolbar. */
  async chooseMore(name: string): Promise<void> {
    await this.bench.getByRole('button', { name: 'More', exact: true }).click();
    await this.bench.getByRole('menu').getByText(name, { exact: true }).click();
  }

  onDisk(name: string): string {
    return readFileSync(path.join(this.folder, name), 'utf8');
  }

  /** The user's settings as they are on disk now. */
  userSettings(): Record<string, unknown> {
    const file = path.join(inject('stage').state, 'user/User/settings.json');
    return JSON.parse(readFileSync(file, 'utf8')) as Record<string, unknown>;
  }

  chooseTheme(name: string): void {
    writeSettings(this.folder, { 'workbench.colorTheme': name });
  }

  async save(): Promise<void> {
    await this.page.keyboard.press('Control+S');
    await this.page.locator('.tab.dirty').waitFor({ state: 'detached' });
  }

  /** The colour that the bench has painted at a place, sheet mm; what lies over the picture aside. */
  paintedAt(x: number, y: number): Promise<string> {
    return this.bench.locator('.painting').evaluate(
      (canvas: HTMLCanvasElement, place) => {
        const sheet = document.querySelector<SVGGElement>('.targets')?.getScreenCTM();
        if (!sheet) return 'nothing';
        const { x: left, y: top } = new DOMPoint(place.x, place.y).matrixTransform(sheet);
        const box = canvas.getBoundingClientRect();
        const copy = new OffscreenCanvas(canvas.width, canvas.height).getContext('2d');
        copy?.drawImage(canvas, 0, 0);
        const scale = canvas.width / box.width;
        const pixel = copy?.getImageData((left - box.x) * scale, (top - box.y) * scale, 1, 1).data ?? [];
        return `#${[...pixel]
          .slice(0, 3)
          .map((part) => part.toString(16).padStart(2, '0'))
          .join('')}`;
      },
      { x, y },
    );
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
  for (let i = 1; ; i += 1) {
    try {
      return await action();
    } catch (error) {
      if (i === times) throw error;
    }
  }
}

/** A workbench on a copy of a folder for the tests of a file. Each test that fails leaves a picture. */
export function useWorkbench(source: string, settings: Settings = {}): Workbench {
  const workbench = new Workbench();
  beforeAll(() => workbench.open(source, settings));
  let failed = false;
  afterEach(async ({ task }) => {
    if (task.result?.state !== 'fail') return;
    failed = true;
    await workbench.shot(`failure ${task.name.replace(/\W+/g, ' ')}`);
  });
  afterAll(() => workbench.leave(failed));
  return workbench;
}

export const DEMO = 'waymarker.svg';

/** The demo with its bench beside the text, for the tests of a file. */
export function useDemo(settings: Settings = {}): Workbench {
  const workbench = useWorkbench('media/demo', settings);
  beforeAll(async () => {
    await workbench.openFile(DEMO);
    await workbench.command('Tombolo: Open Stencil Preview (Bench)');
    await workbench.bench.locator('.layers li').nth(3).waitFor({ state: 'attached' });
    await workbench.bench.locator('.finding').nth(2).waitFor();
  });
  return workbench;
}
