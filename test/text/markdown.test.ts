import { expect, test } from 'vitest';
import { escapeMarkdown } from '../../src/text/markdown';

test('what an artist wrote is shown as it is', () => {
  expect(escapeMarkdown('a_b *c* [d](e) <f>')).toBe('a\\_b \\*c\\* \\[d\\]\\(e\\) \\<f\\>');
  expect(escapeMarkdown('two\n  lines')).toBe('two lines');
});
