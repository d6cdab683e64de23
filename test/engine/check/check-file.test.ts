import { describe, expect, it } from 'vitest';
import { Stopped, underWatch } from '../../../src/base/checkpoint';
import { check } from '../../../src/engine/check/check-file';
import { readConfig } from '../../../src/engine/check/known-checks';

/** A stencil of 100 × 100 mm, one unit a millimetre. */
const stencil = (body: string, attributes = '') =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="100mm" ` +
  `viewBox="0 0 100 100" ${attributes}>${body}</svg>`;

/** `check: text underlined` for each finding. */
function found(svg: string, settings = {}): string[] {
  const { findings } = check(svg, settings);
  return findings.map((finding) => `${finding.check}: ${svg.slice(finding.span.from, finding.span.to)}`);
}

const RING = 'M50 20A30 30 0 0 1 50 80A30 30 0 0 1 50 20Z';
const HOLE = 'M50 40A10 10 0 0 0 50 60A10 10 0 0 0 50 40Z';

describe('check', () => {
  it('finds nothing wrong with a plain opening', () => {
    expect(found(stencil(`<path d="${RING}"/>`))).toEqual([]);
  });

  it('underlines the contour of an island, with its area', () => {
    const svg = stencil(`<path fill-rule="evenodd" d="${RING}${HOLE}"/>`);
    // The moveto draws nothing; the contour begins with its first curve.
    expect(found(svg)).toEqual([`floating-island: ${HOLE.slice(HOLE.indexOf('A'), HOLE.indexOf('Z'))}`]);
    const [island] = check(svg).findings;
    expect((island?.measure?.value ?? 0) / (100 * Math.PI)).toBeCloseTo(1, 3);
    expect(island?.at?.x).toBeCloseTo(50, 0);
    expect(island?.at?.y).toBeCloseTo(50, 0);
  });

  it('underlines the two sides of a thin bridge', () => {
    const svg = stencil('<rect x="20" y="20" width="20" height="40"/><rect x="40.5" y="20" width="20" height="40"/>');
    const { findings } = check(svg);
    expect(findings.map((finding) => finding.check)).toEqual(['thin-bridge']);
    expect(findings[0]?.measure).toEqual({ value: expect.closeTo(0.5, 3), limit: 0.8, unit: 'mm' });
    expect(findings[0]?.message).toMatch(/^Bridge only 0\.50 mm wide \(minimum 0\.80 mm for 0\.3 mm card\)/);
    const sides = findings[0]?.related.map(({ span }) => svg.slice(span.from, span.to)) ?? [];
    expect(sides.sort()).toEqual([
      '<rect x="20" y="20" width="20" height="40"/>',
      '<rect x="40.5" y="20" width="20" height="40"/>',
    ]);
  });

  it('makes a bridge that alone holds an island an error', () => {
    // A ring opening with a gap of 0.5 mm at the top: the disc inside hangs on that one tie.
    const svg = stencil('<path d="M50.25 20V30H60V50H40V30H49.75V20H30V60H70V20Z"/>');
    const bridge = check(svg).findings.find((finding) => finding.check === 'thin-bridge');
    expect(bridge?.severity).toBe('error');
    expect(bridge?.detail).toMatch(/It alone holds a piece of 400\.\d mm²|It alone holds a piece of \d+/);
  });

  it('measures slots and pinholes', () => {
    const slot = '<path d="M20 20H40V39.8H60V20H80V60H60V40.2H40V60H20Z"/>';
    expect(check(stencil(slot)).findings.map(({ check: id, measure }) => [id, measure?.value.toFixed(2)])).toEqual([
      ['narrow-opening', '0.40'],
    ]);
    expect(
      check(stencil('<circle cx="50" cy="50" r="0.2"/>')).findings.map(({ check: id, measure }) => [
        id,
        measure?.value.toFixed(2),
      ]),
    ).toEqual([['small-opening', '0.40']]);
  });

  it('takes the kerf from bridges and gives it to openings', () => {
    const bars = '<rect x="20" y="20" width="20" height="40"/><rect x="40.9" y="20" width="20" height="40"/>';
    expect(found(stencil(bars))).toEqual([]);
    const [bridge] = check(stencil(bars), { kerf: 0.2 }).findings;
    expect(bridge?.measure?.value).toBeCloseTo(0.7, 3);
    expect(check(stencil('<circle cx="50" cy="50" r="0.25"/>'), { kerf: 0.2 }).findings).toEqual([]);
  });

  it('says when the kerf burns a tie through', () => {
    const tied = '<path d="M50.1 20V30H60V50H40V30H49.9V20H30V60H70V20Z"/>';
    const findings = check(stencil(tied), { kerf: 0.3 }).findings;
    expect(findings.map(({ check: id }) => id)).toEqual(['floating-island']);
    expect(findings[0]?.message).toContain('Its bridge is thinner than the 0.30 mm kerf and burns away.');
  });

  it('finds openings at the edge', () => {
    expect(
      check(stencil('<rect x="-5" y="20" width="20" height="20"/>')).findings.map(({ check: id, message }) => [
        id,
        message.slice(0, 32),
      ]),
    ).toEqual([['edge-opening', "Opening crosses the sheet's edge"]]);
    expect(
      check(stencil('<rect x="0.5" y="20" width="20" height="20"/>')).findings.map(({ measure }) => measure?.value),
    ).toEqual([expect.closeTo(0.5, 3)]);
    const { config } = readConfig('{"margin": "5mm"}');
    expect(check(stencil('<rect x="0.5" y="20" width="20" height="20"/>'), { config }).findings).toEqual([]);
  });

  it('reads each top-level group as a layer', () => {
    const svg = stencil(
      '<g id="sky" fill="#8fd3ff"><rect x="20" y="20" width="20" height="20"/></g>' +
        '<g fill="red"><title>heron</title><rect x="50" y="50" width="20" height="20"/></g>',
    );
    expect(check(svg).sheets.map(({ layer }) => [layer.name, layer.paint, layer.reading])).toEqual([
      ['sky', '#8fd3ff', 'openings'],
      ['heron', '#ff0000', 'openings'],
    ]);
    expect(check(svg, { oneLayer: true }).sheets).toHaveLength(1);
  });

  it('reads a fill that reaches round the frame as the sheet, unless told otherwise', () => {
    const sheet = '<path fill-rule="evenodd" d="M0 0H100V100H0ZM30 30V70H70V30Z"/>';
    const [first] = check(stencil(sheet)).sheets;
    expect([first?.layer.reading, first?.openings.length]).toEqual(['sheet', 1]);
    const stated = check(stencil(sheet, 'data-tombolo-reading="openings"')).sheets[0];
    expect([stated?.layer.reading, stated?.layer.readingStated]).toEqual(['openings', true]);
  });

  it('reports a reading that does not exist, and detects it', () => {
    const svg = stencil('<circle cx="50" cy="50" r="20"/>', 'data-tombolo-reading="openning"');
    expect(found(svg)).toEqual(['unsupported: data-tombolo-reading="openning"']);
    expect(check(svg).sheets[0]?.layer.readingStated).toBe(false);
    expect(found(stencil('<circle cx="50" cy="50" r="20"/>', 'data-tombolo-reading="detect"'))).toEqual([]);
  });

  it('accepts what a comment accepts, and reports an acceptance that matches nothing', () => {
    const island = `<path fill-rule="evenodd" d="${RING}${HOLE}"/>`;
    expect(found(stencil(`<!-- tombolo accept floating-island: glued -->${island}`))).toEqual([]);
    expect(
      found(stencil(`${island}<!-- tombolo accept thin-bridge: strong -->`)).map((line) => line.split(':')[0]),
    ).toEqual(['floating-island', 'unused-acceptance']);
  });

  it('accepts what an attribute accepts on the element or around it, and reports one that matches nothing', () => {
    const island = (own = '') => `<path ${own} fill-rule="evenodd" d="${RING}${HOLE}"/>`;
    const accepted = 'data-tombolo-accept="floating-island: glued by hand"';
    expect(found(stencil(island(accepted)))).toEqual([]);
    expect(found(stencil(`<g ${accepted}>${island()}</g>`))).toEqual([]);
    const beside = stencil(`<g ${accepted}/>${island('data-tombolo-accept="thin-brige"')}`);
    expect(found(beside).sort()).toEqual([
      expect.stringMatching(/^floating-island: /),
      `unused-acceptance: ${accepted}`,
      'unused-acceptance: data-tombolo-accept="thin-brige"',
    ]);
    const messages = check(beside).findings.map(({ message }) => message);
    expect(messages).toContain('No floating-island in this element: this acceptance does nothing.');
    expect(messages).toContain('There is no check "thin-brige": this acceptance does nothing.');
  });

  it('follows the severities of the configuration', () => {
    const island = stencil(`<path fill-rule="evenodd" d="${RING}${HOLE}"/>`);
    const { config } = readConfig('{"checks": {"floating-island": "hint"}}');
    expect(check(island, { config }).findings.map(({ severity }) => severity)).toEqual(['hint']);
    expect(check(island, { config: readConfig('{"checks": {"floating-island": "off"}}').config }).findings).toEqual([]);
  });

  it.each([
    '',
    ' ',
    'hello',
    '<',
    '<svg',
    '<svg xmlns="http://www.w3.org/2000/svg"',
    '<svg><path d="M0 0L',
    '<a><b></a>',
    '\ufeff',
    '\0',
  ])('gives a report for %j', (text) => {
    const report = check(text);
    expect(report.findings.length).toBeGreaterThan(0);
    for (const { span } of report.findings) {
      expect(span.from).toBeGreaterThanOrEqual(0);
      expect(span.to).toBeLessThanOrEqual(text.length);
    }
  });

  it('says what it left out when its time is over', () => {
    const report = check(stencil(`<path d="${RING}"/>`), { budget: -1 });
    expect(report.findings.map(({ check: id }) => id)).toEqual(['unfinished']);
    expect(report.findings[0]?.message).toContain('layer "stencil"');
  });

  it('says what it left out when its memory is used up', () => {
    const text = stencil(`<path d="${RING}"/>`);
    const lacking = [expect.stringMatching(/^Check ran out of memory; .*layer "stencil"/)];
    const fixed = check(text, { memoryInUse: () => 3000, memoryBudget: 2000 });
    expect(fixed.findings.map(({ message }) => message)).toEqual(lacking);
    let inUse = 5e9;
    const growing = check(text, { memoryInUse: () => (inUse += 1.2 * 2 ** 30) });
    expect(growing.findings.map(({ message }) => message)).toEqual([expect.stringMatching(/^Check ran out of memory/)]);
    expect(check(text, { memoryInUse: () => 3000 }).findings).toEqual([]);
  });

  it('says that the drawing was not read when its time was over by then', () => {
    const text = stencil(`<path d="${RING}"/>`.repeat(20_000));
    const { findings, drawing, sheets } = check(text, { budget: -1 });
    expect(findings.map(({ message }) => message)).toEqual([expect.stringContaining('before the drawing was read')]);
    expect([drawing.document.text, drawing.shapes, sheets]).toEqual([text, [], []]);
  });

  it('keeps what the other checks found when one of them is stopped', () => {
    const text = stencil(`<path fill-rule="evenodd" d="${RING}${HOLE}"/>`);
    const whole = check(text).results.map(({ check: id }) => id);
    let looks = 0;
    const checkedUntil = (stop: number) => {
      looks = 0;
      return underWatch(
        () => {
          looks += 1;
          return looks === stop ? 'time' : undefined;
        },
        () => check(text),
      );
    };
    checkedUntil(Infinity);
    const last = looks;
    const reports = Array.from({ length: 12 }, (_, i) => checkedUntil(last - i));
    for (const { results, findings } of reports) {
      const done = new Set(results.map(({ check: id }) => id));
      const [skipped, ...others] = whole.filter((id) => !done.has(id));
      expect(others).toEqual([]);
      expect(findings.find(({ check: id }) => id === 'unfinished')?.message).toContain(`not done: ${skipped}.`);
    }
  });

  it('leaves a cancelled run at once, and keeps no hold on who cancels it', () => {
    let looks = 0;
    const cancelled = () => {
      looks += 1;
      return looks > 3;
    };
    expect(() => check(stencil(`<path d="${RING}"/>`), { cancelled })).toThrow(Stopped);
    expect(looks).toBe(4);
    expect(check(stencil(''), { cancelled: () => false }).settings).toEqual({});
  });
});
