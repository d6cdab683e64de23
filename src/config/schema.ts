/** The JSON schema of `tombolo.json`: what is always the same, and what the checks say of themselves. */
import base from './schema.base.json';

/** What the schema tells of a check. */
export interface CheckInSchema {
  readonly id: string;
  readonly summary: string;
  readonly acceptable: boolean;
}

/** A schema of draft 7, for completion and hover in the editor. */
export function configSchema(checks: readonly CheckInSchema[]) {
  const { baseline, ...properties } = base.properties;
  return {
    ...base,
    definitions: { ...base.definitions, checkId: checkIds(checks) },
    properties: { ...properties, checks: severities(checks), accept: reasons(checks), baseline },
  };
}

function checkIds(checks: readonly CheckInSchema[]) {
  const names = { enum: checks.map(({ id }) => id), enumDescriptions: checks.map(({ summary }) => summary) };
  return { anyOf: [names, { type: 'string' }] as const };
}

function severities(checks: readonly CheckInSchema[]) {
  const severity = { allOf: [{ $ref: '#/definitions/severity' }] };
  return {
    description: 'The severity of each check, or off.',
    type: 'object',
    properties: Object.fromEntries(checks.map(({ id, summary }) => [id, { description: summary, ...severity }])),
  };
}

function reasons(checks: readonly CheckInSchema[]) {
  const acceptable = checks.filter((check) => check.acceptable);
  return {
    description:
      'Checks whose findings are accepted, each with the reason: everywhere in this project, or in a file, a layer or an ' +
      'element by its id. For one element only, a comment before it does as well.',
    type: 'object',
    properties: Object.fromEntries(
      acceptable.map(({ id, summary }) => [
        id,
        { description: `${summary} The reason why it is accepted.`, anyOf: [{ type: 'string' }, PART, PARTS] },
      ]),
    ),
  };
}

const PART = {
  type: 'object',
  required: ['reason'],
  properties: {
    reason: { description: 'Why it is accepted.', type: 'string' },
    file: { description: 'In this drawing, relative to this file.', type: 'string' },
    layer: { description: 'In the layer of this name.', type: 'string' },
    id: { description: 'In the element of this id and in what it holds.', type: 'string' },
  },
} as const;

const PARTS = { type: 'array', items: PART } as const;
