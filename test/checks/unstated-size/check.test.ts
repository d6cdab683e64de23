import { describe, expect, it } from 'vitest';
import { readConfig } from '../../../src/engine/check/known-checks';
import { findingsOf } from '../stencils';

const svg = (attributes: string) => `<svg xmlns="http://www.w3.org/2000/svg" ${attributes}/>`;

describe('unstated-size', () => {
  it.each(['width="384" height="192"', 'width="384px" height="192px"', 'viewBox="0 0 384 192"'])(
    'reports %s',
    (attributes) => {
      const [found] = findingsOf('unstated-size', svg(attributes));
      expect(found).toMatchObject({ text: 'svg', severity: 'info' });
      // 96 px to the inch: CSS Values and Units 4, "Absolute Lengths".
      expect(found?.message).toContain('at 96 px to the inch the artwork is 101.6 × 50.8 mm');
    },
  );

  it('takes any physical unit, and a size that is given from outside', () => {
    expect(findingsOf('unstated-size', svg('width="10cm" height="5cm"'))).toEqual([]);
    expect(findingsOf('unstated-size', svg('width="384" height="192"'), { width: 148 })).toEqual([]);
    const { config } = readConfig('{"size": {"width": "148mm"}}');
    expect(findingsOf('unstated-size', svg('width="148mm" height="74mm"'), { config })).toEqual([]);
  });

  it('tells what other programs make of a file that leaves its size to tombolo.json', () => {
    const { config } = readConfig('{"size": {"width": "148mm"}}');
    const told = (attributes: string) => findingsOf('unstated-size', svg(attributes), { config });
    expect(told('width="384" height="192"')).toMatchObject([
      {
        severity: 'info',
        message:
          'The file itself does not say its size: other programs will open it at 101.6 × 50.8 mm, not 148.0 × 74.0 mm.',
      },
    ]);
    expect(told(`width="${(148 * 96) / 25.4}" viewBox="0 0 2 1"`)[0]?.message).toBe(
      'The file itself does not say its size: programs may open it at another than 148.0 × 74.0 mm.',
    );
    expect(told('width="10cm" height="5cm"')[0]?.message).toBe(
      'The file itself says 100.0 × 50.0 mm: other programs will open it at that, not at 148.0 × 74.0 mm.',
    );
    expect(told('data-tombolo-width="148mm" viewBox="0 0 384 192"')[0]?.message).toContain('does not say its size');
    expect(findingsOf('unstated-size', svg('width="384"'), { config, width: 148 })).toEqual([]);
  });
});
