/** What `tombolo.json` says of checks: how serious each is, what is accepted and why, what the baseline lets pass. */
import type { Node } from 'jsonc-parser';
import { type CheckId, type KnownChecks, SEVERITIES, type Severity } from './check-id';
import { type Decoder, decodeFields, decodeOneOf, decodePlace, decodeWord, type ReportProblem } from './decode';
import type { BaselineEntry, Config, PartAcceptance } from './types';

export function decodeChecks(node: Node, { ids }: KnownChecks, report: ReportProblem): Config['checks'] {
  const checks: Partial<Record<CheckId, Severity | 'off'>> = {};
  const severity = decodeOneOf<Severity | 'off'>([...SEVERITIES, 'off'], 'severity');
  decodeFields(
    node,
    'checks',
    report,
    forEachCheck(ids, (id, value) => {
      const decoded = severity(value, report);
      if (decoded) checks[id] = decoded;
    }),
  );
  return checks;
}

type Acceptances = Pick<Config, 'accept' | 'acceptedIn'>;

export function decodeAccept(node: Node, { acceptable }: KnownChecks, report: ReportProblem): Acceptances {
  const accept: Partial<Record<CheckId, string>> = {};
  const acceptedIn: PartAcceptance[] = [];
  decodeFields(
    node,
    'accept',
    report,
    forEachCheck(acceptable, (id, value) => {
      const parts = value.type === 'array' ? (value.children ?? []) : value.type === 'object' ? [value] : [];
      if (parts.length > 0) acceptedIn.push(...parts.flatMap((part) => decodePartAcceptance(id, part, report) ?? []));
      else if (reasonOf(value)) accept[id] = reasonOf(value);
      else report(value, `Say in double quotes why ${id} is accepted: without a reason it is not.`);
    }),
  );
  return { accept, acceptedIn };
}

function decodePartAcceptance(check: CheckId, node: Node, report: ReportProblem): PartAcceptance | undefined {
  const part: { -readonly [K in 'reason' | 'file' | 'layer' | 'id']?: string } = {};
  const word = (key: keyof typeof part) => (value: Node) => {
    const decoded = decodeWord(value, report);
    if (decoded !== undefined) part[key] = decoded.trim();
  };
  const keys = { reason: word('reason'), file: word('file'), layer: word('layer'), id: word('id') };
  decodeFields(node, 'an acceptance', report, keys);
  const { reason, ...where } = part;
  if (!reason) return void report(node, `Say in "reason" why ${check} is accepted: without a reason it is not.`);
  if (Object.keys(where).length === 0) {
    return void report(node, `Say in "file", "layer" or "id" where ${check} is accepted.`);
  }
  return { check, reason, ...where };
}

function reasonOf({ type, value }: Node): string {
  return type === 'string' ? String(value).trim() : '';
}

function forEachCheck(
  ids: readonly CheckId[],
  decode: (id: CheckId, value: Node) => void,
): Record<string, (value: Node) => void> {
  return Object.fromEntries(ids.map((id) => [id, (value: Node) => decode(id, value)]));
}

export const baselineEntryDecoder =
  ({ ids }: KnownChecks): Decoder<BaselineEntry> =>
  (node, report) => {
    const entry: { -readonly [K in keyof BaselineEntry]?: BaselineEntry[K] | undefined } = {};
    let wrong = node.type !== 'object';
    const decode = <T>(decoder: Decoder<T>, value: Node): T | undefined => {
      const decoded = decoder(value, report);
      wrong ||= decoded === undefined;
      return decoded;
    };
    decodeFields(node, 'a baseline entry', report, {
      check: (value) => {
        entry.check = decode(decodeOneOf(ids, 'check'), value);
      },
      file: (value) => {
        entry.file = decode(decodeWord, value);
      },
      layer: (value) => {
        entry.layer = decode(decodeWord, value);
      },
      at: (value) => {
        entry.at = decode(decodePlace, value);
      },
    });
    const { check, file, layer, at } = entry;
    if (wrong) return undefined;
    if (!check) return void report(node, 'A baseline entry needs "check": the check whose finding it lets pass.');
    return { check, file, layer, at };
  };
