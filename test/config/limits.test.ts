import { describe, expect, it } from 'vitest';
import { kerfOf, limitsOf, materialOf } from '../../src/config/limits';
import { DEFAULT_CONFIG } from '../../src/config/types';

describe('limits', () => {
  it('come from the material where they are not stated', () => {
    expect(limitsOf({ ...DEFAULT_CONFIG, material: 'film-0.19' })).toEqual({
      bridge: 0.6,
      opening: 0.5,
      slip: 0.5,
      material: '0.19 mm polyester film',
    });
    expect(limitsOf({ ...DEFAULT_CONFIG, limits: { bridge: 2, slip: 1 } })).toMatchObject({
      bridge: 2,
      opening: 0.6,
      slip: 1,
    });
  });

  it('of an unknown material are those of card', () => {
    expect(materialOf({ ...DEFAULT_CONFIG, material: 'constructor' }).title).toBe('card');
  });
});

describe('the kerf', () => {
  const kerf = (settings: object) => kerfOf({ ...DEFAULT_CONFIG, compensated: false, ...settings });

  it('is what is stated, else what is usual for a laser in the material; a knife takes nothing away', () => {
    expect(kerf({ kerf: 0.15 })).toBe(0.15);
    expect(kerf({ kerf: 0 })).toBe(0);
    expect(kerf({})).toBe(0.08);
    expect(kerf({ material: 'plywood-3' })).toBe(0.2);
    expect(kerf({ tool: 'knife' })).toBe(0);
    expect(kerf({ tool: 'knife', kerf: 0.15 })).toBe(0.15);
  });

  it('does not count where the files allow for it', () => expect(kerf({ compensated: true, kerf: 0.15 })).toBe(0));
});
