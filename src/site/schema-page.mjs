// The reference of tombolo.json, made of the schema that the editor completes by.
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { root } from '../build/bundles.mjs';

export function schemaPage(schema) {
  const [example = ''] = /```json\n[\s\S]*?```/.exec(readFileSync(path.join(root, 'README.md'), 'utf8')) ?? [];
  const sections = Object.entries(schema.properties)
    .filter(([key]) => key !== '$schema')
    .map(([key, value]) => `## ${key}\n\n${described(value, schema)}`);
  return `---
title: tombolo.json
description: Every key of tombolo.json, what it means, and what it takes.
section: reference
order: 1
permalink: config/index.html
---

It holds for every SVG in its folder and below; the nearest one counts. Comments and commas after the last entry are allowed. Lengths
are texts with a unit: \`"0.8mm"\`, \`"6in"\`.

${example}

${sections.join('\n\n')}
`;
}

function described(value, schema) {
  const kind = kindOf(value, schema);
  const head = [value.description, kind === '' ? '' : `Takes ${kind}.`].filter(Boolean).join(' ');
  return [escaped(head), choices(value, schema), keys(value, schema)].filter(Boolean).join('\n\n');
}

function resolved(value, schema) {
  const all = [value, ...(value.allOf ?? []), ...(value.anyOf ?? [])];
  const through = (each) => (each.$ref ? resolved(schema.definitions[each.$ref.split('/').at(-1)], schema) : [each]);
  return all.flatMap((each) => (each === value ? [each] : through(each).concat(each.$ref ? [] : nested(each, schema))));
}

const nested = ({ allOf = [], anyOf = [] }, schema) => [...allOf, ...anyOf].flatMap((each) => resolved(each, schema));

function kindOf(value, schema) {
  const ref = [value, ...(value.allOf ?? [])]
    .find((each) => each.$ref)
    ?.$ref?.split('/')
    .at(-1);
  if (ref === 'length') return 'a length';
  if (ref === 'colour') return 'a colour';
  const examples = resolved(value, schema).flatMap((each) => each.examples ?? []);
  if (examples.length > 0)
    return `a text such as ${examples.map((each) => `\`${JSON.stringify(each)}\``).join(' or ')}`;
  if (value.type === 'array') return 'a list';
  if (value.type === 'boolean') return '`true` or `false`';
  return value.type === 'number' || value.type === 'integer' ? 'a number' : '';
}

function choices(value, schema) {
  const seen = resolved(value, schema).filter((each) => each.enum);
  return seen
    .map((each) =>
      each.enum
        .map(
          (word, i) =>
            `- \`${JSON.stringify(word)}\`${each.enumDescriptions?.[i] ? `: ${escaped(each.enumDescriptions[i])}` : ''}`,
        )
        .join('\n'),
    )
    .join('\n');
}

function keys(value, schema) {
  const inner = resolved(value, schema).flatMap((each) =>
    [each, each.items, each.additionalProperties].filter((part) => part && typeof part === 'object'),
  );
  const rows = new Map(inner.flatMap((each) => Object.entries(each.properties ?? {})));
  // Which checks there are stands on a page of its own.
  if (rows.has('thin-bridge')) return 'By the names of [the checks](/checks/).';
  if (rows.size === 0) return '';
  return [
    '| key | means |',
    '|---|---|',
    ...[...rows].map(([key, each]) => `| \`${key}\` | ${cell(each, schema)} |`),
  ].join('\n');
}

function cell(value, schema) {
  const words = resolved(value, schema).find((each) => each.enum)?.enum ?? [];
  const deeper = resolved(value, schema).flatMap((each) => Object.keys(each.properties ?? {}));
  const parts = [
    value.description ?? '',
    words.length > 0 && words.length < 12
      ? `One of ${words.map((word) => `\`${JSON.stringify(word)}\``).join(', ')}.`
      : '',
    deeper.length > 0 ? `With ${deeper.map((key) => `\`${key}\``).join(', ')}.` : '',
    words.length > 0 || kindOf(value, schema) === '' ? '' : `Takes ${kindOf(value, schema)}.`,
  ];
  return escaped(parts.filter(Boolean).join(' ')).replaceAll('|', '\\|');
}

const escaped = (text) => text.replaceAll('<', '&lt;');
