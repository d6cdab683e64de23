/** What the command line prints of a stranger's file, in each format. */
import type { Log } from 'sarif';
import { describe, expect, it as test } from 'vitest';
import { describeError, Failure } from '../../src/cli/failure';
import { formatJson } from '../../src/format/json';
import { formatSarif } from '../../src/format/sarif';
import { formatText } from '../../src/format/text';
import { formatUnix } from '../../src/format/unix';
import { HOSTILE_NAMES } from '../text/hostile-names';
import { file, finding, input, range } from './made-files';

/** Everything that may hold words of the file holds this. */
function hostileFile(name: string) {
  const place = range(4, 1, 2, 210);
  const told = finding({
    message: `${name} is thin`,
    detail: name,
    layer: name,
    related: [{ message: name, path: `${name}.svg`, range: place, at: undefined }],
    mends: [{ title: `Widen ${name}`, preferred: true, safe: false, edits: [{ range: place, text: name }] }],
    refusals: [{ title: name, reason: name }],
  });
  const { layers } = file([]);
  return input([file([told], { path: name, layers: layers.map((layer) => ({ ...layer, name })) })]);
}

const CONTROLS =
  /[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069]|[\u{e0000}-\u{e007f}]|\p{Cs}/u;

/** What a build service takes for a command. */
const COMMANDS = /^\s*::|##(?:vso)?\[/m;

describe.each(HOSTILE_NAMES)('%s', (_, name) => {
  test.each([
    ['text', formatText],
    ['unix', formatUnix],
    ['json', formatJson],
    ['sarif', formatSarif],
  ])('%s: nothing that a terminal or a build service obeys', (_format, format) => {
    const output = format(hostileFile(name));
    expect(output).not.toMatch(CONTROLS);
    expect(output).not.toMatch(COMMANDS);
  });

  test('text and unix: one line for each finding', () => {
    expect(formatUnix(hostileFile(name)).split('\n').length).toBe(2);
    expect(formatText(hostileFile(name)).split('\n').length).toBe(9);
  });

  test('json: the name as it was, to whoever parses it', () => {
    const { files } = JSON.parse(formatJson(hostileFile(name)));
    expect([files[0].path, files[0].layers[0].name, files[0].findings[0].layer]).toEqual([name, name, name]);
  });

  test('sarif: no embedded link, no placeholder, addresses that are addresses', () => {
    const [result] = (JSON.parse(formatSarif(hostileFile(name))) as Log).runs[0]?.results ?? [];
    const texts = [
      result?.message.text,
      result?.relatedLocations?.[0]?.message?.text,
      result?.fixes?.[0]?.description?.text,
    ];
    for (const text of texts) {
      expect(text?.replace(/\\[\\[\]]/g, '')).not.toMatch(/[[\]\\]/);
      expect(text?.replace(/\{\{|\}\}/g, '')).not.toMatch(/[{}]/);
    }
    const uri = result?.locations?.[0]?.physicalLocation?.artifactLocation?.uri;
    expect(uri).toMatch(/^[\w.~!*'()%/-]*$/);
    expect(() => decodeURIComponent(uri ?? '')).not.toThrow();
    // The text that a fix puts in is the file's own.
    expect(result?.fixes?.[0]?.artifactChanges[0]?.replacements[0]?.insertedContent?.text).toBe(name);
  });

  test('a failure is one line, with its stack as many as that has', () => {
    expect(describeError(new Failure(`${name}: is a folder`), false)).not.toMatch(CONTROLS);
    const debug = describeError(new Failure(`${name}: is a folder`, { cause: new Error(name) }), true);
    expect(debug.replaceAll(/[\r\n]/g, '')).not.toMatch(CONTROLS);
  });
});
