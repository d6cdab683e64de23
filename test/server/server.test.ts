import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type {
  CodeAction,
  DocumentSymbol,
  Hover,
  MarkupContent,
  TextDocumentEdit,
  TextEdit,
} from 'vscode-languageserver-protocol';
import { TextDocument } from 'vscode-languageserver-textdocument';
import type { Beginning, BridgedIslands, PreviewStack, VersionedEdits } from '../../src/protocol/index';
import { applyEdits } from '../../src/text/text';
import { buildServer } from './build-server';
import { ServerProcess } from './server-process';

/** A ring of 30 mm in a sheet of 60 mm: its middle falls out. The title makes columns differ from bytes. */
const ring = (attributes = 'data-tombolo-reading="openings"') => `<svg xmlns="http://www.w3.org/2000/svg" ${attributes}
     width="60mm" height="60mm" viewBox="0 0 60 60">
  <title>🌞 Sonne über dem Moor</title>
  <path d="M15 30 a15 15 0 1 1 30 0 a15 15 0 1 1 -30 0 Z M20 30 a10 10 0 1 0 20 0 a10 10 0 1 0 -20 0 Z"/>
</svg>
`;

const whole = (text: string) => [{ text }];

let built: Awaited<ReturnType<typeof buildServer>>;
let server: ServerProcess;

beforeAll(async () => {
  built = await buildServer();
});
afterAll(() => built.remove());
beforeEach(async () => {
  server = await ServerProcess.start(built.file);
});
afterEach(async () => {
  await server.stop();
});

describe('diagnostics', () => {
  it('an island is reported on opening, at the commands that cut it out', async () => {
    const document = await server.open('ring.svg', ring());
    const [island, ...others] = await server.diagnostics(document);
    expect(others).toEqual([]);
    expect(island).toMatchObject({ source: 'tombolo', code: 'floating-island', severity: 1 });
    expect(island?.message).toMatch(/^Island, 314\.\d mm²/);
    const text = document.getText(island?.range);
    expect(text).toMatch(/^a10 10/);
    expect(text.length).toBeLessThan(70);
  });

  it('a change gives those of the changed text, with its version', async () => {
    const document = await server.open('ring.svg', ring());
    await server.diagnostics(document);
    const at = document.positionAt(document.getText().indexOf('a15 15 0 1 1 30 0'));
    await server.change(document, [{ range: { start: at, end: { ...at, character: at.character + 3 } }, text: 'a8 ' }]);
    expect(document.getText()).toContain('M15 30 a8  15');
    await server.diagnostics(document);
    await server.change(document, whole(ring().replace(' M20 30 a10 10 0 1 0 20 0 a10 10 0 1 0 -20 0 Z', '')));
    expect(await server.diagnostics(document)).toEqual([]);
  });

  it('of many quick changes only the last is checked', async () => {
    await server.set({ delay: 150 });
    const document = await server.open('ring.svg', ring());
    await server.diagnostics(document);
    for (let i = 0; i < 20; i += 1) await server.change(document, whole(`${ring()}<!-- ${i} -->`));
    await server.diagnostics(document);
    const versions = server.checked.map(({ version }) => version);
    expect(versions.at(-1)).toBe(21);
    expect(versions.length).toBeLessThan(10);
  });

  it('a drawing that nobody called a stencil is left in peace, and taken up once it is one', async () => {
    const document = await server.open('icon.svg', ring(''));
    await server.until('a first look', () => server.checked.find(({ stencil }) => !stencil));
    expect(server.published).toEqual([]);
    await server.change(document, whole(ring()));
    expect(await server.diagnostics(document)).toHaveLength(1);
    await server.change(document, whole(ring('')));
    expect(await server.diagnostics(document)).toEqual([]);
  });

  it('they are gone when the document is closed', async () => {
    const document = await server.open('ring.svg', ring());
    await server.diagnostics(document);
    await server.close(document);
    await server.until('an empty list', () => server.published.at(-1)?.diagnostics.length === 0 || undefined);
  });

  it('run: onSave checks on opening and on saving, not on typing', async () => {
    await server.set({ run: 'onSave', delay: 0 });
    const document = await server.open('ring.svg', ring());
    await server.diagnostics(document);
    await server.change(document, whole(ring().replaceAll('10', '11')));
    await server.connection.sendNotification('textDocument/didSave', { textDocument: { uri: document.uri } });
    await server.diagnostics(document);
    expect(server.checked.map(({ version }) => version)).toEqual([1, 2]);
    await server.change(document, whole(ring()));
    await server.connection.sendRequest('tombolo/checkAgain', { uri: document.uri });
    expect(server.checked.map(({ version }) => version)).toEqual([1, 2, 3]);
  });
});

describe('tombolo.json', () => {
  it('makes stencils of the drawings beside and below it, and its changes are followed', async () => {
    server.write('tombolo.json', '{ "size": { "width": "60mm" } }');
    const document = await server.open('icon.svg', ring(''));
    expect(await server.diagnostics(document)).toHaveLength(1);
    expect(server.checked.at(-1)?.summary?.config).toBe(server.uri('tombolo.json'));
    server.write('tombolo.json', '{ "checks": { "floating-island": "hint" } }');
    const before = server.checked.length;
    await server.connection.sendNotification('workspace/didChangeWatchedFiles', {
      changes: [{ uri: server.uri('tombolo.json'), type: 2 }],
    });
    await server.until('another run', () => server.checked.length > before || undefined);
    const [island] = await server.diagnostics(document);
    expect(island).toMatchObject({ code: 'floating-island', severity: 4, tags: [1] });
  });

  it('its unsaved text counts, and its own faults are shown in it', async () => {
    server.write('tombolo.json', '{}');
    const drawing = await server.open('icon.svg', ring(''));
    expect(await server.diagnostics(drawing)).toHaveLength(1);
    const config = await server.open('tombolo.json', '{}');
    await server.change(config, whole('{ "checks": { "floating-island": "off" }, "colour": 1 }'));
    await server.until('no finding', () => server.checked.at(-1)?.summary?.counts.error === 0 || undefined);
    const faults = await server.until(
      'a fault',
      () =>
        server.published.findLast(({ uri, diagnostics }) => uri === config.uri && diagnostics.length > 0)?.diagnostics,
    );
    expect(faults.map(({ range }) => config.getText(range))).toEqual(['"colour"']);
  });
});

describe('code actions', () => {
  it('bridging the island mends it: the finding goes, and nothing else comes', async () => {
    const document = await server.open('ring.svg', ring());
    const [island] = await server.diagnostics(document);
    const actions = await server.actions(document, island!);
    const bridge = actions.find(({ title }) => /bridge/i.test(title));
    expect(bridge, JSON.stringify(actions.map(({ title }) => title))).toBeDefined();
    expect(bridge?.diagnostics).toEqual([island]);
    await server.change(document, whole(mended(document, bridge!)));
    expect(await server.diagnostics(document)).toEqual([]);
  });

  it('edits name the version they are for', async () => {
    const document = await server.open('ring.svg', ring());
    const [island] = await server.diagnostics(document);
    await server.change(document, whole(ring().replace('Sonne', 'Sun')));
    const [first] = await server.actions(document, island!);
    expect(edited(first!).textDocument).toEqual({ uri: document.uri, version: 2 });
  });

  it('nothing that changes the cut may run on saving', async () => {
    const document = await server.open('ring.svg', ring());
    const [island] = await server.diagnostics(document);
    expect(await server.actions(document, island!, ['source.fixAll.tombolo'])).toEqual([]);
    // Of what is no fix, only white space for its long line.
    const others = await server.actions(document, island!, ['refactor']);
    expect(others.map(({ title }) => title)).toEqual(['Wrap this path at 100 columns']);
  });
});

describe('what only the editor asks', () => {
  it('the text at the caret leads to its shape, other text to none', async () => {
    const text =
      '<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="60mm" viewBox="0 0 60 60" ' +
      'data-tombolo-reading="openings"><rect x="5" y="6" width="7" height="8"/></svg>';
    const document = await server.open('caret.svg', text);
    const ask = (offset: number) => server.connection.sendRequest('tombolo/shapeAt', { uri: document.uri, offset });
    await server.diagnostics(document);
    const [from, to] = [text.indexOf('<rect'), text.indexOf('</svg>')];
    expect(await ask(from + 3)).toEqual({ outline: 'M5 6L12 6L12 14L5 14Z', layers: ['#0'], from, to });
    expect(await ask(from - 1)).toBeNull();
    expect(await ask(to)).toBeNull();
  });

  it('the stack is in millimetres, drawn with our own path data', async () => {
    const document = await server.open('ring.svg', ring());
    const stack = await server.connection.sendRequest<PreviewStack>('tombolo/stack', { uri: document.uri });
    expect(stack).toMatchObject({ width: 60, height: 60, stencil: true, version: 1 });
    const [layer] = stack.layers;
    expect(layer?.openings).toMatch(/^M[\d.]+ [\d.]+(?:L[\d.]+ [\d.]+)+Z/);
    expect(layer?.openingArea).toBeCloseTo(Math.PI * (15 ** 2 - 10 ** 2), 0);
    expect(layer?.islands).toHaveLength(1);
    expect(stack.findings[0]).toMatchObject({ check: 'floating-island', layer: 0 });
  });

  it('the outline lists layers, and hovering a shape gives its measures', async () => {
    const document = await server.open('ring.svg', ring());
    const textDocument = { uri: document.uri };
    const [layer] = await server.connection.sendRequest<DocumentSymbol[]>('textDocument/documentSymbol', {
      textDocument,
    });
    expect(layer?.detail).toMatch(/^1 opening, 1 island, 157\.1 mm of cut$/);
    expect(layer?.children?.map(({ name }) => name.split(' ')[0])).toEqual(['Sheet', 'Island', 'Opening']);
    const position = document.positionAt(document.getText().indexOf('M15 30'));
    const hover = () => server.connection.sendRequest<Hover>('textDocument/hover', { textDocument, position });
    const measured = async () => ((await hover()).contents as MarkupContent).value;
    expect(await measured()).toMatch(/^\*\*path\*\*/);
    // What is not measured in time is there for the next time.
    await expect.poll(measured).toContain('30.00 × 30.00 mm · 392.6');
    expect(
      await server.connection.sendRequest('textDocument/hover', { textDocument, position: { line: 2, character: 5 } }),
    ).toBeNull();
    const plain = await server.open('plain.svg', ring(''));
    const asked = { textDocument: { uri: plain.uri } };
    expect(await server.connection.sendRequest('textDocument/documentSymbol', asked)).toBeNull();
    expect(await server.connection.sendRequest('textDocument/hover', { ...asked, position })).toBeNull();
  });

  it('beginning a stencil states its reading on the root', async () => {
    const document = await server.open('icon.svg', ring(''));
    const begun = await server.connection.sendRequest<Beginning>('tombolo/begin', { uri: document.uri });
    expect(begun).toMatchObject({ stencil: false, width: 60, sizeStated: true });
    const text = applyEdits(document.getText(), begun.edits);
    expect(text).toMatch(/^<svg data-tombolo-reading="openings" xmlns=/);
    const sized = await server.connection.sendRequest<Beginning>('tombolo/begin', { uri: document.uri, width: '9cm' });
    expect(applyEdits(document.getText(), sized.sizeEdits ?? [])).toContain('width="9cm" height="9cm"');
    expect(begun.sizeEdits).toBeUndefined();
    await server.change(document, whole(text));
    expect(await server.diagnostics(document)).toHaveLength(1);
  });

  it('every island can be bridged at once', async () => {
    const two = ring().replace('</svg>', '<path d="M4 4h8v8h-8z M6 6v4h4v-4z"/></svg>');
    const document = await server.open('two.svg', two);
    expect(await server.diagnostics(document)).toHaveLength(2);
    const done = await server.connection.sendRequest<BridgedIslands>('tombolo/bridgeIslands', { uri: document.uri });
    expect(done.refusals).toEqual([]);
    await server.change(document, whole(applyEdits(document.getText(), done.edits)));
    const left = await server.diagnostics(document);
    expect(left.filter(({ code }) => code === 'floating-island')).toEqual([]);
  });

  it('long path data can be wrapped, all at once or those at the caret', async () => {
    const arcs = Array.from({ length: 9 }, () => 'a10 10 0 1 0 20 0 a10 10 0 1 0 -20 0').join(' ');
    const document = await server.open('long.svg', ring().replace(' Z"/>', ` Z"/>\n  <path d="M20 30 ${arcs} Z"/>`));
    await server.diagnostics(document);
    const wrapped = await server.connection.sendRequest<VersionedEdits>('tombolo/wrapPaths', { uri: document.uri });
    const start = document.positionAt(document.getText().lastIndexOf('M20 30'));
    const [action, ...others] = await server.connection.sendRequest<CodeAction[]>('textDocument/codeAction', {
      textDocument: { uri: document.uri },
      range: { start, end: start },
      context: { diagnostics: [], only: ['refactor.rewrite'] },
    });
    expect([action?.title, others]).toEqual(['Wrap this path at 100 columns', []]);
    const resolved = await server.connection.sendRequest<CodeAction>('codeAction/resolve', action);
    const edits = (resolved.edit!.documentChanges as TextDocumentEdit[])[0]!.edits as TextEdit[];
    const [one, all] = [TextDocument.applyEdits(document, edits), applyEdits(document.getText(), wrapped.edits)];
    expect(one.split('\n').map((line) => line.length > 103)).toContain(true);
    expect(all.split('\n').map((line) => line.length > 103)).not.toContain(true);
    for (const text of [one, all]) expect(text.replace(/\s/g, '')).toBe(document.getText().replace(/\s/g, ''));
  });

  it('of documents it does not know it says so', async () => {
    for (const method of ['stack', 'begin', 'bridgeIslands', 'bestOrder', 'wrapPaths', 'checkAgain']) {
      expect(await server.connection.sendRequest(`tombolo/${method}`, { uri: server.uri('none.svg') })).toBeNull();
    }
  });
});

describe('it stays up', () => {
  const garbage = [
    '',
    '<',
    '<svg',
    '<svg data-tombolo-reading',
    '<svg data-tombolo-reading="openings"',
    '\u0000\uFFFF\uD800',
    '<svg data-tombolo-x=""><path d="M1e999 NaN"/></svg>',
    '<svg data-tombolo-x="" width="-1" height="0"/>',
    '<svg data-tombolo-x="">'.repeat(3000),
    '<svg data-tombolo-x=""><use href="#a"/><g id="a"><use href="#a"/></g></svg>',
    `<svg data-tombolo-x="" viewBox="0 0 9 9"><path d="${'M0 0h9v9z'.repeat(500)}"/></svg>`,
  ];

  it('whatever is written in a document', async () => {
    const document = await server.open('garbage.svg', garbage[0]!);
    for (const text of garbage) {
      await server.change(document, whole(text));
      const stack = await server.connection.sendRequest('tombolo/stack', { uri: document.uri });
      expect(stack, text.slice(0, 40)).not.toBeNull();
      const all = { start: { line: 0, character: 0 }, end: document.positionAt(text.length) };
      await server.actions(document, { range: all, message: '' });
    }
    await server.change(document, whole(ring()));
    expect(await server.diagnostics(document)).toHaveLength(1);
    expect(server.alive).toBe(true);
    expect(server.logged.filter((line) => /fail|error/i.test(line))).toEqual([]);
  });
});

function edited({ edit }: CodeAction): TextDocumentEdit {
  return edit?.documentChanges?.[0] as TextDocumentEdit;
}

function mended(document: TextDocument, action: CodeAction): string {
  return TextDocument.applyEdits(document, edited(action).edits as Parameters<typeof TextDocument.applyEdits>[1]);
}
