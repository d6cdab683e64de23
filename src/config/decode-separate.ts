/** What `tombolo.json` says of how a picture was separated. */
import type { Node } from 'jsonc-parser';
import {
  type Decoder,
  decodeBoolean,
  decodeColour,
  decodeEntries,
  decodeFields,
  decodeLength,
  decodeList,
  decodePositiveLength,
  decodeWord,
} from './decode';
import type { LeftOutBox, MergedColours, SeparateSettings } from './types';

type Mutable<T> = { -readonly [K in keyof T]: T[K] };

/** More sheets than these no print has, and more colours no separation tells apart. */
export const MAX_COLOURS = 24;

export const decodeSeparate: Decoder<SeparateSettings> = (node, report) => {
  const settings: Mutable<SeparateSettings> = { files: {} };
  const set = <K extends keyof SeparateSettings>(key: K, value: SeparateSettings[K] | undefined): void => {
    if (value !== undefined) settings[key] = value;
  };
  decodeFields(node, 'separate', report, {
    picture: (value) => set('picture', decodeWord(value, report)),
    colours: (value) => set('colours', decodeColours(value, report)),
    paints: (value) => set('paints', decodeList(decodeColour)(value, report)),
    detail: (value) => set('detail', decodePositiveLength(value, report)),
    follow: (value) => set('follow', decodePositiveLength(value, report)),
    leaveOut: (value) => set('leaveOut', decodeList<string | LeftOutBox>(decodeLeftOut)(value, report)),
    outline: (value) => set('outline', decodeBoolean(value, report)),
    merged: (value) => set('merged', decodeList<MergedColours>(decodeMerged)(value, report)),
    order: (value) => set('order', decodeList(decodeColour)(value, report)),
    files: (value) => {
      const files: [string, string][] = [];
      decodeEntries(value, 'files', report, (_, name, text) => {
        const hash = decodeWord(text, report);
        if (hash !== undefined) files.push([name, hash]);
      });
      settings.files = Object.fromEntries(files);
    },
  });
  return settings;
};

const decodeColours: Decoder<number> = (node, report) => {
  const { value } = node;
  if (node.type === 'number' && Number.isInteger(value) && value >= 1 && value <= MAX_COLOURS) return value as number;
  return void report(node, `This must be a whole number of colours, from 1 to ${MAX_COLOURS}.`);
};

const decodeMerged: Decoder<MergedColours> = (node, report) => {
  const pair = (node.type === 'array' ? (node.children ?? []) : []).map((each: Node) => decodeColour(each, report));
  const [from, into] = pair;
  if (pair.length !== 2)
    return void report(node, 'Write two colours: ["#5f93a8", "#3b4a54"] sprays the first as the second.');
  return from === undefined || into === undefined ? undefined : [from, into];
};

const decodeLeftOut: Decoder<string | LeftOutBox> = (node, report) => {
  if (node.type === 'string') return decodeColour(node, report);
  const sides = (node.type === 'array' ? (node.children ?? []) : []).map((side: Node) => decodeLength(side, report));
  const [x, y, width, height] = sides;
  if (sides.length !== 4) {
    return void report(node, 'Write a colour, or a rectangle as four lengths: ["10mm", "10mm", "30mm", "20mm"].');
  }
  if (x === undefined || y === undefined || width === undefined || height === undefined) return undefined;
  return [x, y, width, height];
};
