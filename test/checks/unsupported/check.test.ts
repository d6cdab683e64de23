import { describe, expect, it } from 'vitest';
import { findingsOf, sheetOf } from '../stencils';

const unsupported = (body: string, attributes = '') => findingsOf('unsupported', sheetOf(body, attributes));

describe('unsupported', () => {
  it('says what of a file is not read', () => {
    const [found] = unsupported('<use href="marsh.svg#reed"/><rect x="20" y="20" width="20" height="20"/>');
    expect(found?.text).toContain('marsh.svg#reed');
  });

  it('reports a reading that does not exist', () => {
    expect(unsupported('', 'data-tombolo-reading="holes"')).toMatchObject([
      { text: 'data-tombolo-reading="holes"', severity: 'warning' },
    ]);
  });

  it('has nothing to say of plain shapes', () => {
    expect(
      unsupported('<g><rect x="20" y="20" width="20" height="20"/></g>', 'data-tombolo-reading="openings"'),
    ).toEqual([]);
  });
});
