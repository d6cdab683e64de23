/** The worker as a browser would run it: bundled for one, with nothing of Node.js, and without shared memory. */
import path from 'node:path';
import { createContext, runInContext } from 'node:vm';
import { build } from 'esbuild';
import { expect, test } from 'vitest';
import type { CheckFacts } from '../../src/protocol/facts';
import { Priority } from '../../src/protocol/run-signals';
import { EngineClient } from '../../src/server/engine/engine-client';
import { ring, sheet } from '../engine/project-files';

const uri = 'file:///sun.svg';
const text = sheet(ring(5, 5), 'width="60mm" height="60mm" data-tombolo-reading="openings"');

async function code(): Promise<string> {
  const { outputFiles } = await build({
    entryPoints: [path.resolve(__dirname, '../../src/worker/web.ts')],
    bundle: true,
    write: false,
    platform: 'browser',
    format: 'iife',
    target: 'es2022',
    alias: { 'jsonc-parser': 'jsonc-parser/lib/esm/main.js' },
  });
  return outputFiles[0]?.text ?? '';
}

/** A client whose worker runs in a global of its own, with what a worker has there. */
function clientOf(script: string): EngineClient {
  return new EngineClient(
    (hear) => {
      const listeners: ((event: { data: unknown }) => void)[] = [];
      const self = {
        addEventListener: (_: string, listen: (event: { data: unknown }) => void) => listeners.push(listen),
        postMessage: (message: never) => setTimeout(() => hear(structuredClone(message))),
      };
      runInContext(script, createContext({ self, setTimeout, performance }));
      const post = (message: unknown) => {
        for (const listen of listeners) listen({ data: structuredClone(message) });
      };
      return { post, end: () => undefined };
    },
    { offers: () => undefined, restarted: () => undefined, log: (line) => expect.fail(line) },
  );
}

test('it checks, answers and drops what is cancelled before its turn', async () => {
  const engine = clientOf(await code());
  const ask = (version: number) =>
    engine.ask(
      {
        kind: 'check',
        key: uri,
        files: [{ name: '', uri, version, open: true, text }],
        config: undefined,
        project: false,
        always: false,
      },
      Priority.check,
    );
  const first = ask(1);
  first.cancel();
  const facts: CheckFacts | undefined = await ask(2).answer;
  expect(await first.answer).toBeUndefined();
  expect(facts?.documents).toMatchObject([{ version: 2, findings: [{ check: 'floating-island' }] }]);
  const hover = await engine.ask({ kind: 'hover', uri, version: 2, offset: text.indexOf('<path') }, Priority.glance)
    .answer;
  expect(hover?.area).toBeCloseTo(12 * 12 - 6 * 6, 2);
});
