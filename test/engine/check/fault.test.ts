/** What fails inside the engine is told by itself, and takes nothing else away. */
import { afterEach, beforeEach, describe, expect, it, it as test, vi } from 'vitest';
import { ALL_CHECKS } from '../../../src/checks/all';
import type { Check } from '../../../src/checks/check';
import { internalReason } from '../../../src/engine/check/fault';
import type { FixKind } from '../../../src/engine/fixes/kind';
import { FIX_KINDS } from '../../../src/engine/fixes/kinds';
import { applyEdits, check, fixesFor } from '../../../src/engine/index';

const DRAWING =
  '<svg xmlns="http://www.w3.org/2000/svg" width="80mm" height="80mm" viewBox="0 0 80 80">' +
  '<path fill-rule="evenodd" d="M10 10H70V70H10ZM25 25V55H55V25Z"/></svg>';

function break_(id: string): void {
  const broken = ALL_CHECKS.find(({ meta }) => meta.id === id);
  vi.spyOn(broken as Check, 'run').mockImplementation(() => {
    throw new TypeError('cannot read the bank of a bridge');
  });
}

describe('with faults of its own told instead of thrown', () => {
  beforeEach(() => {
    globalThis.tomboloAssertions = false;
  });
  afterEach(() => {
    vi.restoreAllMocks();
    globalThis.tomboloAssertions = true;
  });

  it('a check that fails is one finding, and the others stand', () => {
    const whole = check(DRAWING).findings;
    break_('thin-bridge');
    const { findings } = check(DRAWING);
    const [told] = findings.filter(({ check: id }) => id === 'internal');
    expect(told?.message).toBe('Tombolo itself failed at thin-bridge: nothing is known of it; the rest stands.');
    expect(told?.detail).toContain('cannot read the bank of a bridge');
    expect(findings.filter(({ check: id }) => id !== 'internal').map(({ message }) => message)).toEqual(
      whole.map(({ message }) => message),
    );
  });

  it('a fix that fails is refused with its words, and the others stand', () => {
    const kind = FIX_KINDS.get('cut-island-away');
    vi.spyOn(kind as FixKind, 'prove').mockImplementation(() => {
      throw new RangeError('Edit 3..5 overlaps another or lies outside the text.');
    });
    const report = check(DRAWING);
    const finding = report.findings.find(({ check: id }) => id === 'floating-island')!;
    const { fixes, refusals } = fixesFor(report, finding);
    expect(fixes.map((fix) => fix.kind)).toContain('bridge-island');
    expect(refusals.find((refusal) => refusal.kind === 'cut-island-away')?.reason).toBe(
      'Tombolo itself failed here; please report it: Edit 3..5 overlaps another or lies outside the text.',
    );
  });
});

test('in the tests a fault is thrown, so that none passes unseen', () => {
  break_('thin-bridge');
  expect(() => check(DRAWING)).toThrow('cannot read the bank of a bridge');
  vi.restoreAllMocks();
});

test('a reason stays one short line', () => {
  expect(internalReason({ fault: 'x'.repeat(500) }).length).toBeLessThanOrEqual(120);
});

describe('lines that one element draws in several places', () => {
  // As in a renderer's suite: a marker's path that is stroked shapes, at each vertex of a shape.
  const marked = (shape: string, places: string) =>
    '<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="100mm" viewBox="0 0 200 200">' +
    '<marker id="m" markerWidth="4" markerHeight="4" refX="5" refY="5" viewBox="0 0 10 10">' +
    '<path d="M0 0L10 5L0 10z" opacity="0.5" fill="green"/></marker>' +
    `<${shape} fill="none" stroke="black" stroke-width="6" ${places}/>` +
    '<rect x="1" y="1" width="198" height="198" fill="none" stroke="black"/></svg>';
  const CIRCLE = 'circle cx="100" cy="100" r="60"';

  it('are neither united nor removed in their text', () => {
    const report = check(marked(CIRCLE, 'marker-start="url(#m)" marker-end="url(#m)"'));
    const doubled = report.findings.filter(({ check: id }) => id === 'doubled-cut');
    const reasons = doubled.flatMap((finding) => fixesFor(report, finding).refusals.map(({ reason }) => reason));
    expect(reasons).toContain('The <path> that draws it draws it in other places, too.');
  });

  const SHAPES = [
    CIRCLE,
    'polygon points="40 40 160 60 120 150"',
    'rect x="40" y="40" width="120" height="100"',
    'rect x="40" y="40" width="120" height="100" rx="20"',
  ];
  const PLACES = ['start', 'mid', 'end'].map((place) => `marker-${place}="url(#m)"`);
  it.each(SHAPES.flatMap((shape) => PLACES.map((place) => [shape, place] as const)))(
    'have fixes that fit their text: %s %s',
    (shape, place) => {
      const report = check(marked(shape, place));
      expect(report.findings.length).toBeGreaterThan(0);
      expect(report.findings.map(({ check: id }) => id)).not.toContain('internal');
      for (const finding of report.findings.filter(({ check: id }) => id === 'doubled-cut')) {
        const { fixes, refusals } = fixesFor(report, finding);
        for (const { edits } of fixes) expect(() => applyEdits(report.text, edits)).not.toThrow();
        for (const { reason } of refusals) expect(reason).not.toMatch(/^Tombolo itself failed/);
      }
    },
  );
});
