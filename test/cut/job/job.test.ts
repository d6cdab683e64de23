import { parseSync } from 'svgson';
import { describe, expect, it, it as test } from 'vitest';
import { DEFAULT_CONFIG } from '../../../src/config/types';
import { check, cutStack, jobFiles, jobOf, readConfig } from '../../../src/engine/index';

const text =
  '<svg xmlns="http://www.w3.org/2000/svg" width="120mm" height="100mm" viewBox="0 0 120 100">' +
  '<g><title>Sky &lt;b></title><rect x="10" y="10" width="100" height="50" fill="#8fd3ff"/></g>' +
  '<g><title>Sun</title><!-- tombolo accept floating-island: laid by hand -->' +
  '<path fill="#ffb300" fill-rule="evenodd" d="M40 40H80V80H40Z M50 50V70H70V50Z"/></g></svg>';

const settings = {
  config: {
    ...DEFAULT_CONFIG,
    speed: 20,
    acceleration: 500,
    accept: { 'bare-gap': 'meant so' },
    paint: { coverage: 1.5, coats: 2, wait: '10 min', layers: { Sun: { coats: 3 } } },
  },
};
const report = check(text, settings);
const job = jobOf(report, cutStack(report), 'Marsh', [text]);

describe('the page at the wall', () => {
  it('has the layers in order, with what each takes', () => {
    expect(job.layers.map(({ number, name, paint, coats, wait }) => [number, name, paint, coats, wait])).toEqual([
      [1, 'Sky <b>', '#8fd3ff', 2, '10 min'],
      [2, 'Sun', '#ffb300', 3, '10 min'],
    ]);
    expect(job.layers.map(({ area }) => area)).toEqual([50, 12]);
    // cm² to m², times coats, over what a can covers.
    expect(job.layers[1]!.cans).toBeCloseTo((12e-4 * 3) / 1.5, 12);
    expect(job.layers[0]!.cutLength).toBeCloseTo(300 + 440, 6);
    expect(job.layers[0]!.cutTime).toBeGreaterThan(740 / 20);
  });

  it('numbers each loose piece once, and says what is accepted', () => {
    expect(job.pieces.map(({ label }) => label)).toEqual(['2.1']);
    expect(job.pieces[0]!.at.x).toBeGreaterThan(50);
    expect(job.pieces[0]!.at.x).toBeLessThan(70);
    expect(job.accepted).toEqual(['bare-gap: meant so', 'floating-island: laid by hand']);
  });

  const pages = jobFiles(report, cutStack(report), 'Marsh', [text]);

  it('as HTML has nothing that runs or is fetched, and no markup of names', () => {
    const html = pages['job.html'];
    expect(html).toContain('Sky &lt;b&gt;');
    expect(html).not.toMatch(/<script|https?:\/\/(?!www\.w3\.org\/2000\/svg)|<b>/);
    for (const words of ['2.1', '10 min', '12.0 cm²', 'Never leave it|never leave it', 'respirator']) {
      expect(html).toMatch(new RegExp(words));
    }
    const svg = /<svg[\s\S]*?<\/svg>/.exec(html)![0];
    expect(parseSync(svg).children.filter(({ attributes }) => attributes.fill === '#ffb300')).toHaveLength(1);
  });

  it('shows where loose pieces are laid, sheet by sheet and at true size where there is room', () => {
    expect(job.positions.map(({ number, pieces }) => [number, pieces.map(({ label }) => label)])).toEqual([
      [2, ['2.1']],
    ]);
    const drawn = parseSync(/<section>.*?(<svg.*<\/svg>)<\/section>/.exec(pages['job.html'])![1]!);
    expect(drawn.attributes).toMatchObject({ width: '120mm', height: '100mm', viewBox: '0 0 120 100' });
    const texts = drawn.children.filter(({ name }) => name === 'text').map(({ children }) => children[0]!.value);
    expect(texts).toEqual(['2.1']);
    expect(drawn.children.some(({ attributes: { d = '' } }) => /^M[57]0 [57]0L[57]0 [57]0L.*Z$/.test(d))).toBe(true);
    expect(pages['job.html']).toContain('Loose pieces of sheet 2, Sun: true size');
  });

  it('numbers no piece that nobody keeps, and says that it falls out', () => {
    const unkept = check(text.replace(/<!--.*?-->/, ''), settings);
    const { pieces, positions, notes } = jobOf(unkept, cutStack(unkept), 'Marsh', [unkept.text]);
    expect([pieces, positions]).toEqual([[], []]);
    expect(notes[0]).toBe('1 piece falls out of the sheets and is not kept: see the findings.');
    expect(job.notes[0]).toMatch(/^Laser/);
  });

  it('as PDF is one page of A4, and one for each sheet with loose pieces', () => {
    const pdf = pages['job.pdf'];
    expect(pdf.match(/\/Type\/Page\//g)).toHaveLength(2);
    const plain = check(text.replace(/ M50 50.*?Z/, ''), settings);
    expect(jobFiles(plain, cutStack(plain), 'Marsh')['job.pdf'].match(/\/Type\/Page\//g)).toHaveLength(1);
    expect(pdf).toContain('/MediaBox[0 0 595.27559 841.88976]');
    expect(pdf).toMatch(/^[\x20-\x7e\n]*$/);
    for (const words of ['(Marsh)', '(2.1)', '(10 min)', '(50.0 cm\\262)']) expect(pdf).toContain(words);
  });
});

test('how layers are painted is read from tombolo.json', () => {
  const { config, problems } = readConfig(
    '{"paint": {"coverage": "1.5m²", "coats": 2, "wait": "10 min", "layers": {"Sun": {"coats": 3, "wait": "1 h"}}}}',
  );
  expect(problems).toEqual([]);
  expect(config.paint).toEqual({
    coverage: 1.5,
    coats: 2,
    wait: '10 min',
    layers: { Sun: { coats: 3, wait: '1 h' } },
  });
  const wrong = readConfig(
    '{"paint": {"coverage": "much", "coats": 0, "wait": 5, "tint": 1, "layers": {"Sun": {"coats": 99}}}}',
  );
  expect(wrong.problems).toHaveLength(5);
  expect(wrong.config.paint).toEqual({ layers: { Sun: {} } });
});
