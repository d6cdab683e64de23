/** The engine's worker in the thread of the test: it takes its turns between the test's own steps. */
import { EngineClient, type EngineOutlet } from '../../src/server/engine/engine-client';
import { EngineWorker } from '../../src/worker/engine-worker';

/** Sends copies, as from one thread to another. */
export function localEngine(outlet: Partial<EngineOutlet> = {}): EngineClient {
  return new EngineClient(
    (hear) => {
      let ended = false;
      const worker = new EngineWorker((message) => {
        const copy = structuredClone(message);
        setTimeout(() => ended || hear(copy));
      });
      return {
        post: (message) => ended || worker.receive(message.type === 'start' ? message : structuredClone(message)),
        end: () => {
          ended = true;
        },
      };
    },
    { offers: () => undefined, restarted: () => undefined, log: () => undefined, ...outlet },
  );
}
