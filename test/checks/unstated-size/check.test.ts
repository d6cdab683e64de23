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
    expect(findingsOf('unstated-size', svg('width="384" height="192"'), { config })).toEqual([]);
  });
});
