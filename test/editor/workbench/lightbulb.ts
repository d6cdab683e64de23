/** The way from a finding to its fix: a click on the bench, the lightbulb in the text, a row of its list. */
import { expect } from 'vitest';
import { retry, type Workbench } from './workbench';

/** A row that cannot be had, and what the lightbulb says against it. */
export interface Refusal {
  readonly title: string;
  readonly reason: string;
}

export interface Lightbulb {
  /** What can be had, in order. */
  readonly offered: readonly string[];
  readonly refused: readonly Refusal[];
}

const widget = (workbench: Workbench) => workbench.page.locator('.action-widget');
export const findings = (workbench: Workbench) => workbench.bench.locator('.finding');

/** Opens the lightbulb at a finding that is clicked on the bench. */
export async function lightbulbAt(workbench: Workbench, index: number): Promise<Lightbulb> {
  const { page } = workbench;
  const rows = widget(workbench).locator('.monaco-list-row.action');
  await retry(async () => {
    await page.keyboard.press('Escape');
    await findings(workbench).nth(index).click();
    await page.waitForFunction(() => document.activeElement?.closest('.monaco-editor'));
    await page.keyboard.press('Control+.');
    await rows.first().waitFor({ timeout: 5000 });
  });
  const shown = await rows.evaluateAll((all) =>
    all.map((row) => ({
      title: row.textContent ?? '',
      reason: row.getAttribute('title') ?? row.querySelector('[title]')?.getAttribute('title') ?? '',
      isRefused: row.classList.contains('option-disabled'),
    })),
  );
  return {
    offered: shown.filter(({ isRefused }) => !isRefused).map(({ title }) => title),
    refused: shown.filter(({ isRefused }) => isRefused).map(({ title, reason }) => ({ title, reason })),
  };
}

/** Takes a row of the open lightbulb, and waits until the bench shows what came of it. */
export async function choose(workbench: Workbench, row: string): Promise<void> {
  const lists = () => workbench.bench.locator('.lists').textContent();
  const before = await lists();
  await widget(workbench).getByText(row, { exact: true }).first().click();
  await expect.poll(lists, { timeout: 20_000 }).not.toBe(before);
}

/** The first row that does more than to leave the finding as it is. */
export const fixOf = ({ offered }: Lightbulb): string | undefined =>
  offered.find((row) => !/^Ignore /.test(row) && !/ every /.test(row));
