import { describe, expect, it as test } from 'vitest';
import { escapeMarkdown } from '../../src/text/markdown';
import { noticeText } from '../../src/text/notice';
import { oneLine, showable } from '../../src/text/plain-text';
import { shortened } from '../../src/text/wording';
import { HOSTILE_NAMES } from './hostile-names';

/** What no list, title or terminal is to be given: written out anew, not taken from what is tested. */
function unseen(text: string): string[] {
  return [...text].filter((character) => {
    const code = character.codePointAt(0) ?? 0;
    const isControl = code < 0x20 || (code >= 0x7f && code < 0xa0);
    const isTurning = [0x61c, 0x200e, 0x200f].includes(code) || (code >= 0x2028 && code <= 0x202e);
    return (
      isControl ||
      isTurning ||
      (code >= 0x2066 && code <= 0x2069) ||
      (code >= 0xd800 && code < 0xe000) ||
      code >= 0xe0000
    );
  });
}

describe.each(HOSTILE_NAMES)('%s', (_, name) => {
  test('is one line of what can be seen', () => {
    expect(unseen(oneLine(name))).toEqual([]);
    expect(unseen(shortened(name, 30))).toEqual([]);
    expect(oneLine(name)).toMatch(/heron|outside|script|onerror/);
  });

  test('keeps its lines, and nothing that is obeyed, where a whole text is shown', () => {
    expect(unseen(showable(name)).filter((character) => !'\t\r\n'.includes(character))).toEqual([]);
    expect(showable(name).split('\n').length).toBe(name.split('\n').length);
  });

  test('is text and nothing else in Markdown', () => {
    // CommonMark 2.4: what is escaped is itself; and of the rest nothing begins anything, addresses included.
    expect(escapeMarkdown(name).replace(/\\[!-/:-@[-`{-~]/g, '')).toMatch(/^[^!#$&()*+\-.:<=>@[\\\]_`{|}~\n]*$/);
  });

  test('makes no link in a notification', () => {
    // As editors find them.
    expect(noticeText(`"${name}" is left`)).not.toMatch(/\[[^\]]+\]\((?:https?:\/\/|command:|file:)/);
  });
});

test('what is no harm stays as it is', () => {
  for (const name of ['Fischreiher (groß)', '水辺', 'שלום', 'Ente 🦆', 'a‍b']) {
    expect([oneLine(name), showable(name), noticeText(name)]).toEqual([name, name, name]);
  }
  expect(showable('a\tb\r\n\u001b[0m\u007f')).toBe('a\tb\r\n\u241b[0m\u2421');
});
