import { describe, expect, it } from 'vitest';
import { newConfigText } from '../../src/config/new-config';
import { DEFAULT_CONFIG } from '../../src/config/types';
import { readConfig } from '../../src/engine/check/known-checks';

describe('newConfigText', () => {
  it('is read as what was answered', () => {
    const text = newConfigText({ width: ' 148 mm', material: 'film-0.19', tool: 'knife' });
    expect(text).toBe(`{
  "size": {
    "width": "148 mm"
  },
  "material": "film-0.19",
  "cutter": {
    "tool": "knife"
  }
}
`);
    expect(readConfig(text)).toEqual({
      config: { ...DEFAULT_CONFIG, width: 148, material: 'film-0.19', tool: 'knife' },
      problems: [],
    });
  });

  it('leaves the size to a drawing that states it', () => {
    expect(readConfig(newConfigText({ width: undefined, material: 'card-0.3', tool: 'laser' })).config).toEqual(
      DEFAULT_CONFIG,
    );
  });
});
