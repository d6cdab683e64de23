/** Hands on what the bench asks to the worker, about the document as it stands now. */
import type { Connection } from 'vscode-languageserver/node';
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
import { PART, PART_AT } from '../../protocol/parts';
import { Priority } from '../../protocol/run-signals';
import { BRIDGE_GHOST, CHANGE_BRIDGE, STANDING_BRIDGES } from '../../protocol/standing-bridges';
import { BEST_ORDER, NECKS, REORDER, SLIP, SWEEP } from '../../protocol/views';
import type { StencilChecker } from '../documents/stencil-checker';
import type { EngineClient } from '../engine/engine-client';

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
];
/** A moving pointer or caret never makes a check: it asks again when the next one is done. */
const GLANCED = [SHAPE_AT, PART_AT, PART, STANDING_BRIDGES, BRIDGE_GHOST];

/** Answers are null where no such document is known, and where a later question has come meanwhile. */
export function handleBenchRequests(connection: Connection, checker: StencilChecker, engine: EngineClient): void {
  for (const method of CHOSEN) {
    connection.onRequest(method, async (params: DocumentParams, token) => {
      const known = await checker.current(params.uri);
      if (!known) return null;
      const openConfig = checker.openConfig(known);
      const question = { kind: 'bench', method, params, ...(openConfig && { openConfig }) } as const;
      const { answer, cancel } = engine.ask(question, Priority.chosen);
      token.onCancellationRequested(cancel);
      const told = await answer;
      return (method === STACK && told ? checker.shown(told as PreviewStack) : told) ?? null;
    });
  }
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
