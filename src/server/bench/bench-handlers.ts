/** Hands on what the bench asks to the worker, about the document as it stands now. */
import type { Connection } from 'vscode-languageserver';
import { CUT_FIGURES, CUT_FILES, CUT_ORDER, JOB_FILES } from '../../protocol/cutting';
import {
  BEGIN,
  BRIDGE_AT,
  BRIDGE_ISLANDS,
  BRIDGE_PLAN,
  type DocumentParams,
  type PreviewStack,
  SHAPE_AT,
  STACK,
  WRAP_PATHS,
} from '../../protocol/index';
import { DROP_LAYER_PLAN, LAYER_PLAN, LAYER_SKETCH, PLAN_GHOST } from '../../protocol/layer-plan';
import { PART, PART_AT } from '../../protocol/parts';
import { KEPT_PLAN } from '../../protocol/programs';
import { Priority } from '../../protocol/run-signals';
import { BRIDGE_GHOST, CHANGE_BRIDGE, STANDING_BRIDGES } from '../../protocol/standing-bridges';
import { BEST_ORDER, NECKS, REORDER, SLIP, SWEEP } from '../../protocol/views';
import type { StencilChecker } from '../documents/stencil-checker';
import type { Asked, EngineClient } from '../engine/engine-client';

/** Each makes a check if need be. */
const CHOSEN = [
  STACK,
  BEGIN,
  BRIDGE_ISLANDS,
  WRAP_PATHS,
  BRIDGE_AT,
  BRIDGE_PLAN,
  CHANGE_BRIDGE,
  NECKS,
  SLIP,
  SWEEP,
  REORDER,
  BEST_ORDER,
  KEPT_PLAN,
  CUT_FIGURES,
  CUT_ORDER,
  CUT_FILES,
  JOB_FILES,
];
/** A moving pointer or caret never makes a check: it asks again when the next one is done. */
const GLANCED = [SHAPE_AT, PART_AT, PART, STANDING_BRIDGES, BRIDGE_GHOST, PLAN_GHOST];

/** Answers are null where no such document is known, and where a later question has come meanwhile. */
export function handleBenchRequests(connection: Connection, checker: StencilChecker, engine: EngineClient): void {
  const choose = async (method: string, params: DocumentParams): Promise<Asked<unknown> | undefined> => {
    const known = await checker.current(params.uri);
    if (!known) return undefined;
    const openConfig = checker.openConfig(known);
    const question = { kind: 'bench', method, params, ...(openConfig && { openConfig }) } as const;
    return engine.ask(question, Priority.chosen);
  };
  for (const method of CHOSEN) {
    connection.onRequest(method, async (params: DocumentParams, token) => {
      const asked = await choose(method, params);
      if (!asked) return null;
      token.onCancellationRequested(asked.cancel);
      const told = await asked.answer;
      return (method === STACK && told ? checker.shown(told as PreviewStack) : told) ?? null;
    });
  }
  handleLayerPlans(connection, choose);
  const last = new Map<string, () => void>();
  for (const method of GLANCED) {
    connection.onRequest(method, async (params: DocumentParams) => {
      if (!checker.known(params.uri)) return null;
      const key = `${method} ${params.uri}`;
      last.get(key)?.();
      const { answer, cancel } = engine.ask({ kind: 'bench', method, params }, Priority.glance);
      last.set(key, cancel);
      return (await answer) ?? null;
    });
  }
}

/**
 * A plan may take long, and another one is wanted as soon as another style is: of sketches and plans only the last that
 * was asked for is worked out to its end.
 */
function handleLayerPlans(
  connection: Connection,
  choose: (method: string, params: DocumentParams) => Promise<Asked<unknown> | undefined>,
): void {
  let turn = 0;
  let cancelLast = () => {};
  const next = (): number => {
    cancelLast();
    cancelLast = () => {};
    turn += 1;
    return turn;
  };
  for (const method of [LAYER_SKETCH, LAYER_PLAN]) {
    connection.onRequest(method, async (params: DocumentParams, token) => {
      const own = next();
      const asked = await choose(method, params);
      if (!asked || own !== turn) {
        asked?.cancel();
        return null;
      }
      cancelLast = asked.cancel;
      token.onCancellationRequested(asked.cancel);
      return (await asked.answer) ?? null;
    });
  }
  connection.onRequest(DROP_LAYER_PLAN, () => {
    next();
    return null;
  });
}
