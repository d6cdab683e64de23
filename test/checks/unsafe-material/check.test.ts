import { describe, expect, it } from 'vitest';
import { MATERIALS } from '../../../src/config/material';
import SOURCES from '../../../src/config/material-sources.json';
import { readConfig } from '../../../src/engine/check/known-checks';
import { findingsOf, sheetOf } from '../stencils';

const unsafe = (material: string, tool = 'laser') => {
  const { config } = readConfig(`{"material": "${material}", "cutter": {"tool": "${tool}"}}`);
  return findingsOf('unsafe-material', sheetOf(''), { config });
};

describe('unsafe-material', () => {
  // Every list of laser workshops seen forbids PVC and vinyl (UIC, TWI: hydrogen chloride); on polyester film, acetate
  // and plywood they disagree (Purdue, Iowa State, UT Austin, CMU).
  it.each([
    ['vinyl-0.08', 'error', /^Never cut vinyl .*hydrogen chloride/],
    ['film-0.19', 'info', /^Ask your workshop before lasering polyester film/],
    ['acetate-0.25', 'info', /^Ask your workshop before lasering/],
    ['plywood-3', 'info', /^Ask your workshop before lasering/],
    ['abs-1', 'info', /^Ask your workshop before lasering/],
    ['polycarbonate-0.5', 'info', /^Ask your workshop before lasering/],
  ])('%s under a laser: %s', (material, severity, message) => {
    const found = unsafe(material);
    expect(found).toMatchObject([{ text: 'svg', severity }]);
    expect(found[0]?.message).toMatch(message);
  });

  it('has nothing against card, nor against a knife', () => {
    expect(unsafe('card-0.3')).toEqual([]);
    expect(Object.keys(MATERIALS).flatMap((material) => unsafe(material, 'knife'))).toEqual([]);
  });

  it('knows a source, or says that there is none, for each figure of each material', () => {
    for (const [name, figures] of Object.entries(MATERIALS)) {
      const sources: Readonly<Record<string, string>> = SOURCES[name as keyof typeof SOURCES];
      const stated = Object.keys(figures).filter((key) => key !== 'title' && key !== 'short');
      expect(Object.keys(sources).sort()).toEqual(stated.sort());
      for (const source of Object.values(sources)) {
        expect(source).toMatch(
          /^common practice, no source$|\.(com|co\.uk)\b|^workshops disagree: |^every list seen|\(figures from memory\)|H-37232-3/,
        );
      }
    }
  });
});
