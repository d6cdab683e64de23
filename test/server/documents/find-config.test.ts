import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { URI } from 'vscode-uri';
import { findConfig } from '../../../src/server/documents/find-config';
import { NODE_FILES } from '../../../src/server/host/node-files';

let folder: string;
const uri = (name: string) => URI.file(path.join(folder, name)).toString();
const nothingOpen = () => undefined;

beforeAll(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'tombolo find config ü '));
  mkdirSync(path.join(folder, 'trail/post 8/tombolo.json'), { recursive: true });
  writeFileSync(path.join(folder, 'trail/tombolo.json'), '{"margin": "5mm"}');
});
afterAll(() => rmSync(folder, { recursive: true }));

describe('the configuration in force', () => {
  it('is the nearest above; a folder of that name is none', () => {
    expect(findConfig(uri('trail/post 8/sun.svg'), nothingOpen, NODE_FILES)).toEqual({
      uri: uri('trail/tombolo.json'),
      text: '{"margin": "5mm"}',
    });
  });

  it('is what stands in the editor, saved or not', () => {
    const config = uri('trail/post 8/tombolo.json');
    const open = (asked: string) => (asked === config ? '{}' : undefined);
    expect(findConfig(uri('trail/post 8/sun.svg'), open, NODE_FILES)).toEqual({ uri: config, text: '{}' });
  });

  it('does not exist for documents that are on no disk', () => {
    expect(findConfig('untitled:trail/sun.svg', nothingOpen, NODE_FILES)).toBeUndefined();
  });
});
