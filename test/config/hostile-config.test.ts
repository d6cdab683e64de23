/** A tombolo.json that means harm. */
import { describe, expect, it } from 'vitest';
import { bridgeStyleOf } from '../../src/config/bridge-style';
import { materialOf } from '../../src/config/limits';
import { DEFAULT_CONFIG } from '../../src/config/types';
import { readConfig } from '../../src/engine/check/known-checks';

describe('bounds', () => {
  it.each([
    ['lists', '['.repeat(1_000_000)],
    ['objects', '{"size":'.repeat(300_000)],
    ['both, closed', `{"layers": ${'[{"from": '.repeat(5000)}1${'}]'.repeat(5000)}}`],
  ])('%s within each other without end are told, and nothing is read', (_, text) => {
    const { config, problems } = readConfig(text);
    expect(config).toEqual(DEFAULT_CONFIG);
    expect(problems.map(({ severity, span }) => [severity, span.from])).toEqual([['error', expect.any(Number)]]);
    expect(problems[0]?.message).toMatch(/within each other/);
  });

  it('brackets in text, and in comments, are no nesting', () => {
    const { config, problems } = readConfig(
      `/* ${'['.repeat(500)} */ {"material": "${'{'.repeat(500)}", "margin": "5mm"}`,
    );
    expect(config.margin).toBe(5);
    expect(problems.length).toBe(1);
  });

  it('a text that is too long is told, and nothing is read', () => {
    const { config, problems } = readConfig(`{"margin": "5mm", "baseline": [${'{},'.repeat(2_000_000)}]}`);
    expect(config).toEqual(DEFAULT_CONFIG);
    expect(problems.map(({ message }) => message)).toEqual([expect.stringMatching(/longer than/)]);
  });
});

describe('names that JavaScript has for other things', () => {
  const NAMES = ['__proto__', 'constructor', 'toString', 'hasOwnProperty', 'valueOf'];

  it.each(NAMES)('%s is the name of a layer like any other', (name) => {
    const { config, problems } = readConfig(`{"bridges": {"style": "level", "layers": {"${name}": "upright"}}}`);
    expect(problems).toEqual([]);
    expect(bridgeStyleOf(config, name)).toBe('upright');
    expect(bridgeStyleOf(readConfig('{"bridges": "level"}').config, name)).toBe('level');
    expect(({} as Record<string, unknown>).upright).toBeUndefined();
  });

  it.each(NAMES)('%s is the name of a material like any other', (name) => {
    const { config } = readConfig(`{"material": "${name}", "materials": {"${name}": {"thickness": "2mm"}}}`);
    expect(materialOf(config).thickness).toBe(2);
    expect(readConfig(`{"material": "${name}"}`).problems.map(({ severity }) => severity)).toEqual(['error']);
  });

  it.each(NAMES)('%s is no key that is known', (name) => {
    for (const text of [
      `{"${name}": {"margin": "5mm"}}`,
      `{"size": {"${name}": 1}}`,
      `{"checks": {"${name}": "off"}}`,
      `{"accept": {"${name}": "so"}}`,
      `{"limits": {"${name}": "1mm"}}`,
    ]) {
      const { config, problems } = readConfig(text);
      expect(problems.map(({ severity }) => severity)).toEqual(['warning']);
      expect(config.margin).toBe(0);
    }
    expect((Object.prototype as { margin?: unknown }).margin).toBeUndefined();
  });

  it.each(NAMES)('%s is no check, severity or reading', (name) => {
    for (const text of [
      `{"checks": {"thin-bridge": "${name}"}}`,
      `{"reading": "${name}"}`,
      `{"baseline": [{"check": "${name}"}]}`,
      `{"layers": "${name}"}`,
      `{"bridges": "${name}"}`,
    ]) {
      expect(readConfig(text).problems.map(({ severity }) => severity)).toEqual(['error']);
    }
  });
});
