import { describe, expect, it } from 'vitest';
import { acceptanceEdits } from '../../src/config/keep-acceptance';
import { readConfig } from '../../src/engine/index';
import { applyEdits } from '../../src/text/text';

const halo = { file: 'post.svg', id: 'halo', reason: 'glued by hand' };
const after = (text: string) => applyEdits(text, acceptanceEdits(text, 'floating-island', [halo]));
const acceptedIn = (text: string) => readConfig(after(text)).config.acceptedIn.map(({ id }) => id);

describe('accepting in tombolo.json', () => {
  it('leaves the rest as it is', () => {
    const text = '{\n  // The posts.\n  "material": "card-0.3"\n}\n';
    expect(after(text)).toContain('// The posts.\n  "material": "card-0.3"');
    expect(readConfig(after(text)).config.acceptedIn).toEqual([{ check: 'floating-island', ...halo }]);
  });

  it('goes on with what is accepted already', () => {
    const sun = '{ "file": "post.svg", "id": "sun", "reason": "glued" }';
    expect(acceptedIn(`{ "accept": { "floating-island": ${sun} } }`)).toEqual(['sun', 'halo']);
    expect(acceptedIn(`{ "accept": { "floating-island": [${sun}] } }`)).toEqual(['sun', 'halo']);
    expect(acceptedIn('{ "accept": { "loose-tongue": "held down" } }')).toEqual(['halo']);
  });

  it('has nothing to say where it is accepted everywhere', () => {
    expect(acceptanceEdits('{ "accept": { "floating-island": "all glued" } }', 'floating-island', [halo])).toEqual([]);
  });
});
