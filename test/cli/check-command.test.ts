import { mkdir, truncate } from 'node:fs/promises';
import type { Log } from 'sarif';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { version } from '../../package.json';
import { CliWorkshop, type Outcome } from './run-cli';
import { SOUND, stencil, TWO_LAYERS, WITH_ISLAND, WITH_THIN_WEB } from './stencils';

let workshop: CliWorkshop;

beforeAll(async () => {
  workshop = await CliWorkshop.create();
  await workshop.file('sound.svg', SOUND);
  await workshop.file('island.svg', WITH_ISLAND);
  await workshop.file('web.svg', WITH_THIN_WEB);
  await workshop.file('two.svg', TWO_LAYERS);
});
afterAll(() => workshop.dispose());

/** Ended with 2, nothing on stdout, and exactly one line on stderr. */
function expectRefused(outcome: Outcome, line: RegExp): void {
  expect(outcome.code).toBe(2);
  expect(outcome.stdout).toBe('');
  expect(outcome.stderr).toMatch(line);
  expect(outcome.stderr.trimEnd().split('\n')).toHaveLength(1);
}

/** As above, with one more line that points to the help. */
function expectMisused(outcome: Outcome, line: RegExp): void {
  expect(outcome.code).toBe(2);
  expect(outcome.stdout).toBe('');
  const [first, second, ...rest] = outcome.stderr.trimEnd().split('\n');
  expect(first).toMatch(line);
  expect(second).toMatch(/^Try: tombolo .*--help$/);
  expect(rest).toEqual([]);
}

describe('files that are too large', () => {
  it('are refused in one line before they are read, and the others are reported on', async () => {
    // A hole of a file: nothing of it is on the disk.
    await truncate(workshop.path(await workshop.file('huge.svg', '<svg')), 200_000_000);
    const outcome = await workshop.run(['check', 'island.svg', 'huge.svg', 'web.svg', '--format', 'json']);
    expect(outcome.code).toBe(2);
    expect(outcome.stderr).toBe('tombolo: huge.svg: is larger than 100 MB (200 MB or more) and was not read\n');
    const { files } = JSON.parse(outcome.stdout) as { files: { path: string; findings: unknown[] }[] };
    expect(files.map(({ path, findings }) => [path, findings.length > 0])).toEqual([
      ['island.svg', true],
      ['web.svg', true],
    ]);
  });

  it('are refused on standard input as well', async () => {
    const outcome = await workshop.run(['check', '-'], { input: Buffer.alloc(100_000_001, ' ') });
    expectRefused(outcome, /^tombolo: <stdin>: is larger than 100 MB/);
  });
});

describe('exit codes', () => {
  it('0 for a sound stencil', async () => {
    expect(await workshop.run(['check', 'sound.svg'])).toMatchObject({ code: 0, stderr: '' });
  });

  it('1 for an error', async () => {
    expect(await workshop.run(['check', 'island.svg'])).toMatchObject({ code: 1, stderr: '' });
  });

  it('an allowance of warnings does not cover errors', async () => {
    expect((await workshop.run(['check', 'island.svg', '--max-warnings', '100'])).code).toBe(1);
  });

  it('1 for a warning, 0 when it is allowed', async () => {
    expect((await workshop.run(['check', 'web.svg'])).code).toBe(1);
    expect((await workshop.run(['check', 'web.svg', '--max-warnings', '1'])).code).toBe(0);
  });

  it('an unstated size alone is no failure', async () => {
    const unstated = stencil('<rect x="10" y="10" width="40" height="20"/>', 'width="60" height="40"');
    await workshop.file('unstated.svg', unstated);
    const { code, stdout } = await workshop.run(['check', 'unstated.svg', '--format', 'unix']);
    expect(stdout).toContain('[unstated-size]');
    expect(code).toBe(0);
  });
});

describe('bad input', () => {
  it.each([
    ['an empty file', ''],
    ['a truncated file', WITH_ISLAND.slice(0, 120)],
    ['something that is not XML', 'waymarker: heron, reeds, sun\n{"a": [1, 2}\n'],
    ['half a tag', '<svg'],
    ['zeros', '\0\0\0\0'],
  ])('%s is reported, not thrown', async (_, content) => {
    await workshop.file('bad.svg', content);
    const { code, stdout, stderr } = await workshop.run(['check', 'bad.svg', '--format', 'unix']);
    expect(stderr).toBe('');
    expect(stdout).toMatch(/^bad\.svg:\d+:\d+: error: .* \[unreadable-markup\]$/m);
    expect(code).toBe(1);
  });

  it('a missing file', async () => {
    expectRefused(await workshop.run(['check', 'nowhere.svg']), /^tombolo: nowhere\.svg: no such file/);
  });

  it('a folder', async () => {
    await mkdir(workshop.path('layers'), { recursive: true });
    expectRefused(await workshop.run(['check', 'layers']), /^tombolo: layers: is a folder/);
  });

  it('a path through a file', async () => {
    const outcome = await workshop.run(['check', 'sound.svg/inner.svg']);
    expectRefused(outcome, /^tombolo: sound\.svg\/inner\.svg: a part of this/);
  });

  it('bytes that are not UTF-8', async () => {
    const text = '<?xml version="1.0" encoding="ISO-8859-1"?><svg><title>h\xe9ron</title></svg>';
    await workshop.file('latin.svg', Buffer.from(text, 'latin1'));
    const outcome = await workshop.run(['check', 'latin.svg']);
    expectRefused(outcome, /not valid UTF-8 text \(it says ISO-8859-1\); save it as UTF-8/);
  });
});

describe('arguments', () => {
  it.each([
    [['check', 'sound.svg', '--only', 'thin-brige'], /'thin-brige' is invalid\. Did you mean thin-bridge\?/],
    [['check', 'sound.svg', '--widht', '148mm'], /^tombolo: unknown option '--widht' \(Did you mean --width\?\)/],
    [['check', 'sound.svg', '--width', '148'], /'148' is invalid\. Write a length with its unit/],
    [['check', 'sound.svg', '--width', '0mm'], /more than nothing/],
    [['check', 'sound.svg', '--width', '-3mm'], /Write a length with its unit/],
    [['check', 'sound.svg', '--kerf', 'wide'], /Write a length with its unit/],
    [['check', 'sound.svg', '--format', 'xml'], /Allowed choices are text, json, sarif, unix/],
    [['check', 'sound.svg', '--max-warnings', '-1'], /Write a whole number/],
    [['chekc', 'sound.svg'], /^tombolo: unknown command 'chekc' \(Did you mean check\?\)/],
  ])('%j', async (words, line) => {
    expectMisused(await workshop.run(words), line);
  });

  it('--version and --help go to stdout and end with 0', async () => {
    expect(await workshop.run(['--version'])).toMatchObject({ code: 0, stdout: `${version}\n`, stderr: '' });
    const help = await workshop.run(['check', '--help']);
    expect(help).toMatchObject({ code: 0, stderr: '' });
    expect(help.stdout).toContain('Examples:\n  tombolo check heron.svg');
  });

  it('no command at all shows the help and ends with 2', async () => {
    const { code, stdout, stderr } = await workshop.run([]);
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    expect(stderr).toMatch(/^Usage: tombolo/);
  });
});

describe('several files', () => {
  it('one that cannot be read keeps none of the others from being checked', async () => {
    const { code, stdout, stderr } = await workshop.run(['check', 'nowhere.svg', 'island.svg', '--format', 'unix']);
    expect(code).toBe(2);
    expect(stdout).toMatch(/^island\.svg:\d+:\d+: error: .* \[floating-island\]$/m);
    expect(stderr).toBe('tombolo: nowhere.svg: no such file or folder\n');
  });

  it('each is checked once, in the order given', async () => {
    const { stdout } = await workshop.run(['check', 'two.svg', 'sound.svg', 'two.svg', '--format', 'json']);
    expect(JSON.parse(stdout).files.map((file: { path: string }) => file.path)).toEqual(['two.svg', 'sound.svg']);
  });
});

describe('places', () => {
  it('are drawn where that is asked for, in text alone', async () => {
    const asked = await workshop.run(['check', 'island.svg', 'sound.svg', '--snippets']);
    expect(asked.stdout).toMatch(
      /will fall out.*\n +╭─{26}╮\n(?: +(?:▸ )?│[\u2800-\u28ff]{26}│\n){6} +╰─*▴─*╯ \d+ mm\n/,
    );
    expect(asked.stdout.match(/▴/g)).toHaveLength(1);
    for (const words of [
      ['--no-snippets'],
      [],
      ['--snippets', '--format', 'json'],
      ['--snippets', '--format', 'unix'],
    ]) {
      expect((await workshop.run(['check', 'island.svg', ...words])).stdout, words.join(' ')).not.toMatch(
        /[▴╭\u2800-\u28ff]/,
      );
    }
  });

  it('are the same from threads and from what was kept', async () => {
    const words = ['check', 'island.svg', 'web.svg', '--snippets'];
    const { stdout } = await workshop.run(words);
    expect(stdout.match(/▴/g)?.length).toBeGreaterThan(1);
    expect((await workshop.run([...words, '--jobs', '2'])).stdout).toBe(stdout);
    for (let run = 0; run < 2; run += 1)
      expect((await workshop.run([...words, '--cache', 'kept'])).stdout).toBe(stdout);
    expect((await workshop.run(['check', 'island.svg', 'web.svg', '--cache', 'kept'])).stdout).not.toContain('▴');
  });
});

describe('configuration', () => {
  it('an unknown key is a finding in the configuration, and the rest of it holds', async () => {
    await mkdir(workshop.path('marsh/posts'), { recursive: true });
    await workshop.file('marsh/posts/island.svg', WITH_ISLAND);
    await workshop.file('marsh/tombolo.json', '{\n  "sise": {},\n  "checks": {"floating-island": "off"}\n}\n');
    const { code, stdout } = await workshop.run(['check', 'marsh/posts/island.svg', '--format', 'unix']);
    expect(stdout).toMatch(/^marsh\/tombolo\.json:2:3: warning: Unknown key "sise" .* \[unreadable-config\]$/m);
    expect(stdout).not.toContain('floating-island');
    expect(code).toBe(1);
  });

  it('one that is not JSON is a finding too', async () => {
    await workshop.file('broken.json', '{"size": ');
    const words = ['check', 'sound.svg', '--config', 'broken.json', '--format', 'unix'];
    const { code, stdout, stderr } = await workshop.run(words);
    expect(stdout).toMatch(/^broken\.json:1:\d+: error: /m);
    expect({ code, stderr }).toEqual({ code: 1, stderr: '' });
  });

  it('--config that is not there', async () => {
    const outcome = await workshop.run(['check', 'sound.svg', '--config', 'nowhere.json', '--format', 'unix']);
    expectRefused(outcome, /^tombolo: nowhere\.json: no such file/);
  });

  it('--kerf counts against the bridges', async () => {
    const narrow = WITH_THIN_WEB.replaceAll('29.8', '29.5').replaceAll('30.2', '30.5');
    await workshop.file('narrow.svg', narrow);
    expect((await workshop.run(['check', 'narrow.svg'])).code).toBe(0);
    const { code, stdout } = await workshop.run(['check', 'narrow.svg', '--kerf', '0.3mm', '--format', 'json']);
    expect(code).toBe(1);
    const [bridge] = JSON.parse(stdout).files[0].findings;
    expect(bridge).toMatchObject({ check: 'thin-bridge', measure: { value: 0.7, limit: 0.8 } });
  });

  it('--one-layer reads the groups as one', async () => {
    const layers = async (...words: string[]) => {
      const { stdout } = await workshop.run(['check', 'two.svg', '--format', 'json', ...words]);
      return JSON.parse(stdout).files[0].layers.length as number;
    };
    expect([await layers(), await layers('--one-layer')]).toEqual([2, 1]);
  });

  it('--width scales every measure', async () => {
    const { stdout } = await workshop.run(['check', 'island.svg', '--width', '120mm', '--format', 'json']);
    const [file] = JSON.parse(stdout).files;
    expect(file.size).toEqual({ width: 120, height: 80, stated: true });
    expect(file.layers[0].openingArea).toBeCloseTo(4 * 600, 2);
  });
});

describe('standard input', () => {
  it('is read for -', async () => {
    const { code, stdout } = await workshop.run(['check', '-', '--format', 'unix'], { input: WITH_ISLAND });
    expect(stdout).toMatch(/^<stdin>:\d+:\d+: error: .* \[floating-island\]$/m);
    expect(code).toBe(1);
  });

  it('--stdin-filename names it and finds its configuration', async () => {
    await mkdir(workshop.path('named'), { recursive: true });
    await workshop.file('named/tombolo.json', '{"checks": {"floating-island": "off"}}');
    const words = ['check', '-', '--stdin-filename', 'named/heron.svg', '--format', 'json'];
    const { code, stdout } = await workshop.run(words, { input: WITH_ISLAND });
    expect(JSON.parse(stdout).files[0]).toMatchObject({ path: 'named/heron.svg', findings: [] });
    expect(code).toBe(0);
  });
});

describe('output', () => {
  it('JSON has the measures of the closed form', async () => {
    const { stdout } = await workshop.run(['check', 'island.svg', '--format', 'json', '--mends']);
    const result = JSON.parse(stdout);
    expect(result.files[0].size).toEqual({ width: 60, height: 40, stated: true });
    expect(result.files[0].layers).toEqual([
      {
        name: expect.any(String),
        reading: 'openings',
        paint: '#222222',
        openings: 1,
        openingArea: 600,
        materialArea: 1800,
        islands: 1,
        cutLength: 180,
      },
    ]);
    const [island] = result.files[0].findings;
    expect(island).toMatchObject({ check: 'floating-island', severity: 'error', measure: { value: 200, unit: 'mm²' } });
    expect(island.range.start.line).toBe(1);
    expect(island.mends.length).toBeGreaterThan(0);
    expect(island.mends[0]).toEqual({
      title: expect.any(String),
      preferred: expect.any(Boolean),
      safe: expect.any(Boolean),
      edits: expect.arrayContaining([
        {
          range: expect.objectContaining({ from: expect.any(Number), to: expect.any(Number) }),
          text: expect.any(String),
        },
      ]),
    });
    expect(result.summary.error).toBe(1);
  });

  it('a fix in SARIF, applied by its lines and columns, mends the file', async () => {
    const { stdout } = await workshop.run(['check', 'island.svg', '--format', 'sarif', '--mends']);
    const [result] = (JSON.parse(stdout) as Log).runs[0]?.results ?? [];
    const document = TextDocument.create('', '', 0, WITH_ISLAND);
    const edits = result?.fixes?.[0]?.artifactChanges[0]?.replacements.map(({ deletedRegion, insertedContent }) => {
      const { startLine = 0, startColumn = 0, endLine = 0, endColumn = 0 } = deletedRegion;
      const start = { line: startLine - 1, character: startColumn - 1 };
      return {
        range: { start, end: { line: endLine - 1, character: endColumn - 1 } },
        newText: insertedContent?.text ?? '',
      };
    });
    const mended = TextDocument.applyEdits(document, edits ?? []);
    expect(mended).not.toBe(WITH_ISLAND);
    expect((await workshop.run(['check', '-'], { input: mended })).code).toBe(0);
  });

  it('text says where no fix holds, where fixes are asked for', async () => {
    // A speck that no bridge can hold, with a pinhole in it that keeps it from being cut away.
    const speck = 'M10 10H50V30H10Z M20 20h.6v.6h-.6z M20.2 20.2h.2v.2h-.2z';
    await workshop.file('speck.svg', stencil(`<path fill-rule="evenodd" d="${speck}"/>`));
    const [place, cut] = [
      'No bridge fits the island at 20.1, 20.1 mm, which is narrower than a bridge of 0.80 mm',
      'There are openings inside',
    ];
    const { stdout: text } = await workshop.run(['check', 'speck.svg', '--mends']);
    const lines = text.split('\n').filter((line) => line.includes('no fix holds'));
    expect(lines).toHaveLength(1);
    expect(lines[0]).toMatch(/^ *no fix holds: /);
    for (const reason of [place, cut]) expect(lines[0]).toContain(reason);
    const { stdout: untried } = await workshop.run(['check', 'speck.svg']);
    expect(untried).not.toContain('no fix holds');
    const { stdout: json } = await workshop.run(['check', 'speck.svg', '--format', 'json', '--mends']);
    const [island] = JSON.parse(json).files[0].findings;
    expect(island.refusals[0]).toEqual({ title: 'Bridge this island', reason: `${place}.` });
  });

  it('no fix is proven that was not asked for', async () => {
    const { stdout } = await workshop.run(['check', 'island.svg', '--format', 'json']);
    expect(JSON.parse(stdout).files[0].findings[0].mends).toEqual([]);
  });

  it('--quiet prints errors alone, yet counts the rest', async () => {
    const { code, stdout, stderr } = await workshop.run(['check', 'web.svg', '--quiet']);
    expect({ code, stdout }).toEqual({ code: 1, stdout: '' });
    expect(stderr).toBe('tombolo: no errors, but 1 warning; --max-warnings 0 are let pass\n');
  });

  it('text is coloured when asked, and not in a pipe', async () => {
    expect((await workshop.run(['check', 'island.svg'])).stdout).not.toContain('\u001b');
    expect((await workshop.run(['check', 'island.svg', '--color'])).stdout).toContain('\u001b[31m');
    const forced = { environment: { FORCE_COLOR: '1' } };
    expect((await workshop.run(['check', 'island.svg'], forced)).stdout).toContain('\u001b[31m');
    expect((await workshop.run(['check', 'island.svg', '--no-color'], forced)).stdout).not.toContain('\u001b');
    const refused = { environment: { FORCE_COLOR: '1', NO_COLOR: '1' } };
    expect((await workshop.run(['check', 'island.svg'], refused)).stdout).not.toContain('\u001b');
  });

  it('the stack is shown only when asked for', async () => {
    const plain = await workshop.run(['check', 'nowhere.svg']);
    expect(plain.stderr).not.toContain('    at ');
    const debugging = await workshop.run(['check', 'nowhere.svg'], { environment: { TOMBOLO_DEBUG: '1' } });
    expect(debugging.stderr).toContain('    at ');
  });
});

describe('what a program draws', () => {
  it('is told at the line that data-tombolo-from names', async () => {
    const name = 'drawn.svg';
    await workshop.file(name, WITH_ISLAND.replace('<path', '<path id="ring" data-tombolo-from="gen.mjs:7:13"'));
    const json = await workshop.run(['check', name, '--format', 'json']);
    const { files } = JSON.parse(json.stdout) as { files: { findings: { from: unknown }[] }[] };
    const at = { line: 6, character: 12 };
    expect(files[0]?.findings[0]?.from).toEqual({
      path: 'gen.mjs',
      range: { start: at, end: at },
      drawn: 'ring, drawn here',
    });
    const unix = await workshop.run(['check', name, '--format', 'unix']);
    expect(unix.stdout).toMatch(
      /^gen\.mjs:7:13: error: .* \(ring, drawn here; drawn\.svg:\d+:\d+\) \[floating-island\]\n$/,
    );
    const sarif = await workshop.run(['check', name, '--format', 'sarif', '--at-generator']);
    const [result] = (JSON.parse(sarif.stdout) as Log).runs[0]!.results!;
    expect(result?.locations?.[0]?.physicalLocation?.artifactLocation?.uri).toBe('gen.mjs');
  });
});
