/**
 * Small drawings of the marsh trail, each drawn in another way, and each mended finding by finding by what the lightbulb
 * and the bench offer; what has no fix is ignored knowingly.
 */
import { expect, test } from 'vitest';
import { findings } from '../workbench/lightbulb';
import { mendAll, type Step } from '../workbench/mend-all';
import { useWorkbench } from '../workbench/workbench';

const workbench = useWorkbench('test/editor/ways');
const REASON = 'to draw from';

/** The bench is opened once; then it follows. */
async function open(file: string): Promise<void> {
  await workbench.openFile(file);
  if ((await workbench.page.locator('iframe.webview').count()) === 0) {
    await workbench.command('Tombolo: Open Stencil Preview');
  }
  await workbench.page.getByRole('tab', { name: `Stencil Preview (Bench): ${file}` }).waitFor();
  await findings(workbench).first().waitFor();
}

/** Opens a drawing, mends it, saves it; undo then brings back what was drawn, and the mended text comes again. */
async function mend(file: string): Promise<{ steps: Step[]; text: string }> {
  await open(file);
  const shot = `ways-${file.replace('.svg', '')}`;
  const original = workbench.onDisk(file);
  await workbench.shot(`${shot}-1`);
  const steps = await mendAll(workbench, REASON);
  for (const { refused } of steps) for (const { title, reason } of refused) expect(reason, title).toMatch(/\w+ \w+/);
  await workbench.shot(`${shot}-2`);
  await workbench.save();
  expect(workbench.onDisk(file)).not.toBe(original);
  return { steps, text: workbench.onDisk(file) };
}

const taken = (steps: readonly Step[]) => steps.map((step) => [step.check, step.taken]);
/** All rows of a step, those that cannot be had among them. */
const rowsOf = (step: Step | undefined) => [
  ...(step?.offered ?? []),
  ...(step?.refused ?? []).map(({ title }) => title),
];
const titled = (...starts: string[]) => starts.map((start) => expect.stringMatching(new RegExp(`^${start}`)));

/** What the bench says of each layer under its name. */
async function layers(): Promise<string[]> {
  await workbench.showList('Layers');
  const told = await workbench.bench.locator('.layers li').allTextContents();
  await workbench.showList('Findings');
  return told;
}

test('a silhouette is read as the card that stays; its island, bridge and slot are mended', async () => {
  const { steps, text } = await mend('silhouette.svg');
  expect(taken(steps)).toEqual([
    ['floating-island', expect.stringMatching(/^Bridge this island/)],
    ['thin-bridge', 'Widen to 0.80 mm'],
    ['small-opening', 'Widen this opening to 0.60 mm'],
  ]);
  expect(rowsOf(steps[0])).toEqual(expect.arrayContaining(titled('Add one bridge', 'Remove the island', 'Ignore ')));
  expect(rowsOf(steps[2])).toEqual(expect.arrayContaining(['Remove this opening', 'Ignore small-opening here…']));
  const [d, ...strips] = [...text.matchAll(/ d="([^"]*)"/g)].map(([, data]) => data);
  expect(d).toMatch(
    /^M0 0 H80 V60 H0 Z\n {4}M12 24 .*\n {4}M54\.4 14 h6 v36 h-6 Z\n {4}M65\.89 18 h\.62 v32 h-\.62 Z$/s,
  );
  expect(strips).toHaveLength(3);
  expect(await layers()).toEqual([expect.stringMatching(/5 openings · no islands.*filled\s=\scard\sthat\sstays/)]);
});

test('an open line is closed, a doubled one united, a stray one removed', async () => {
  const { steps, text } = await mend('outlines.svg');
  expect(taken(steps)).toEqual([
    ['open-outline', 'Close this outline'],
    ['open-outline', 'Remove this line'],
    ['doubled-cut', 'Unite the two outlines along 32.00 mm'],
  ]);
  expect(rowsOf(steps[0])).toEqual(['Close this outline', 'Remove this line', 'Ignore open-outline here…']);
  expect(rowsOf(steps[1])).toEqual(['Remove this line', 'Ignore open-outline here…']);
  expect(rowsOf(steps[2])).toEqual(['Unite the two outlines along 32.00 mm', 'Ignore doubled-cut here…']);
  expect(text).toContain('V50 H14Z"/>');
  expect(text).toContain('<path d="M30 12 H36 V18 H42 V50 H36 H30 Z"/>');
  expect(text).not.toContain('M56 24');
  expect(await layers()).toEqual([expect.stringContaining('2 openings · no islands')]);
});

test('an export of a drawing program becomes a layer for each colour; its hidden photo is ignored', async () => {
  const { steps, text } = await mend('export.svg');
  expect(taken(steps)).toEqual([
    ['mixed-colours', 'Take each colour as a layer'],
    ['unsupported', 'Ignore unsupported here…'],
  ]);
  expect(text).toContain('<g id="g2" draw:label="Sky and water" data-tombolo-layers="by-paint">');
  expect(text).toContain(`    <!-- tombolo accept unsupported: ${REASON} -->\n    <g id="g3" draw:label="Photo"`);
  expect(await layers()).toEqual([
    expect.stringMatching(/Sky and water #d9a441.*1 opening/),
    expect.stringMatching(/Sky and water #8fb7b3.*1 opening/),
    expect.stringMatching(/Heron.*#3b4a54.*1 opening/),
  ]);
});

test('two layers with small bridges: the bridges are widened, the colours made to overlap', async () => {
  const { steps, text } = await mend('layers.svg');
  expect(taken(steps)).toEqual([
    ['floating-island', expect.stringMatching(/^Bridge this island/)],
    ['thin-bridge', 'Widen to 0.80 mm'],
    // Both halves of the seam, from bridge to bridge, at once.
    ['short-overlap', 'Extend "Water" 0.50 mm under "Fur"'],
    ['thin-bridge', 'Widen to 0.80 mm'],
  ]);
  // Two opposite bridges are what the first row does already: the same change is listed once.
  expect(rowsOf(steps[0])).toEqual(
    expect.arrayContaining(titled('Bridge this island', 'Add one bridge', 'Remove the island', 'Ignore ')),
  );
  expect(rowsOf(steps[1])).toEqual(expect.arrayContaining(titled('Ignore ', 'Remove this bridge$')));
  expect(text).toContain('M39.599 ');
  expect(await layers()).toEqual([
    expect.stringMatching(/Water.*2 openings · no islands/),
    expect.stringMatching(/Fur.*2 openings · no islands/),
  ]);
});
