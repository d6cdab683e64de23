/** Options that several commands share, and how their values are read. */
import { type Command, InvalidArgumentError, Option } from 'commander';
import type { BridgeRoots } from '../config/bridge-style';
import type { Config } from '../config/types';
import { parseLength } from '../config/values';
import { parseColour } from '../drawing/style/colour';
import type { Settings } from '../engine/index';
import { MEMORY_BUDGET, memoryInUse } from './memory';

/** How a file is to be read; the same for every command. Lengths in mm. */
export interface ReadingOptions {
  readonly config?: string;
  readonly width?: number;
  readonly height?: number;
  readonly kerf?: number;
  /** The files that will be cut allow for the kerf, whatever `tombolo.json` says of them. */
  readonly compensated?: boolean;
  readonly oneLayer?: boolean;
  /** How bridges meet their banks, whatever `tombolo.json` says. */
  readonly roots?: BridgeRoots;
  readonly stdinFilename?: string;
  /** False to work on however long it takes. */
  readonly limit?: boolean;
  /** Also give the findings that `tombolo.json` lets pass because they were there before. */
  readonly withoutBaseline?: boolean;
}

/** What a file is checked for, and how it is told. */
export interface FindingOptions extends ReadingOptions {
  readonly format: string;
  /** Whether fixes are proven. */
  readonly mends?: boolean;
  readonly only?: readonly string[];
  readonly skip?: readonly string[];
  readonly changed?: boolean;
  /** Whether places are drawn small in text; as suits the terminal where it is not said. */
  readonly snippets?: boolean;
  /** How many of a file, the most serious first. */
  readonly drawnPlaces?: number;
}

/** @param kerf whether the command reads a kerf as all checks do: what is measured then grows by it */
export function addReadingOptions(command: Command, { kerf = true }: { readonly kerf?: boolean } = {}): Command {
  command
    .option('--config <file>', 'use this tombolo.json instead of the nearest one above each file')
    .addOption(lengthOption('--width <length>', 'cut at this width, such as 148mm or 6in', parsePositiveLength))
    .addOption(lengthOption('--height <length>', 'cut at this height', parsePositiveLength));
  if (kerf) {
    command.addOption(lengthOption('--kerf <length>', 'width that the tool takes away, such as 0.1mm', parseAnyLength));
  }
  return command
    .option('--one-layer', 'read a whole file as one layer')
    .option(
      '--no-limit',
      'take as long as it needs, also for a file that asks for far more work than its length suggests',
    )
    .option('--stdin-filename <name>', 'what standard input (-) is called, and where its tombolo.json is sought');
}

/** Milliseconds for one file, beside its bound on work. Nobody waits at a keyboard for the command line. */
const BUDGET = 600_000;

/** @param file what `tombolo.json` calls a file that is checked by itself */
export function settingsFrom(options: ReadingOptions, config: Config, file?: string): Settings {
  const { width, height, kerf, oneLayer, withoutBaseline, compensated, roots, limit = true } = options;
  return {
    config: {
      ...config,
      ...(withoutBaseline && { baseline: [] }),
      ...(compensated && { compensated }),
      ...(roots && { bridges: { ...config.bridges, roots } }),
    },
    budget: limit ? BUDGET : Infinity,
    memoryInUse,
    memoryBudget: MEMORY_BUDGET,
    ...(file !== undefined && { file }),
    ...(width !== undefined && { width }),
    ...(height !== undefined && { height }),
    ...(kerf !== undefined && { kerf }),
    ...(oneLayer !== undefined && { oneLayer }),
  };
}

/** The name that stands for an input in messages, and from which its configuration is sought. */
export function nameOf(file: string, options: ReadingOptions): string {
  return file === '-' ? (options.stdinFilename ?? '<stdin>') : file;
}

function lengthOption(flags: string, description: string, parse: (text: string) => number): Option {
  return new Option(flags, description).argParser(parse);
}

export function parsePositiveLength(text: string): number {
  const length = parseAnyLength(text);
  if (length > 0) return length;
  throw new InvalidArgumentError('The length must be more than nothing.');
}

/** mm; nought is allowed. */
export function parseAnyLength(text: string): number {
  const length = parseLength(text);
  if (length !== undefined && length >= 0) return length;
  throw new InvalidArgumentError('Write a length with its unit, such as 148mm or 6in.');
}

/** mm from the sheet's upper left corner. */
export function parsePlace(text: string): { x: number; y: number } {
  const [x = NaN, y = NaN, ...rest] = text
    .split(',')
    .map((part) => (/^\s*-?\d*\.?\d+\s*$/.test(part) ? Number(part) : NaN));
  if (rest.length === 0 && Number.isFinite(x) && Number.isFinite(y)) return { x, y };
  throw new InvalidArgumentError('Write a place as two numbers of millimetres, such as 31,18.5.');
}

export function parseCount(text: string): number {
  if (/^\d{1,9}$/.test(text)) return Number(text);
  throw new InvalidArgumentError('Write a whole number, 0 or more.');
}

export function parseJobs(text: string): number {
  const jobs = parseCount(text);
  if (jobs > 0 && jobs <= 256) return jobs;
  throw new InvalidArgumentError('Write how many threads, from 1 to 256.');
}

/** One of several shares of the files, such as the second of five: 2/5. */
export function parseShard(text: string): { readonly share: number; readonly of: number } {
  const [, share = NaN, of = NaN] = (/^(\d{1,4})\/(\d{1,4})$/.exec(text) ?? []).map(Number);
  if (share >= 1 && share <= of) return { share, of };
  throw new InvalidArgumentError('Write which share of how many, such as 2/5.');
}

/** A share or a factor. */
export function parseNumber(text: string): number {
  if (/^\d{1,6}(?:\.\d+)?$|^\.\d+$/.test(text)) return Number(text);
  throw new InvalidArgumentError('Write a number, 0 or more, such as 0.5.');
}

export function parsePercent(text: string): number {
  const value = /^\d{1,3}%?$/.test(text) ? Number.parseInt(text, 10) : NaN;
  if (value <= 100) return value;
  throw new InvalidArgumentError('Write a share from 0 to 100, such as 80.');
}

export function parsePixelsPerMm(text: string): number {
  const value = /^\d*\.?\d+$/.test(text) ? Number(text) : NaN;
  if (value > 0) return value;
  throw new InvalidArgumentError('Write how many pixels a millimetre gets, such as 10.');
}

/** Any opaque colour that CSS names, as `#rrggbb`. */
export function parseColourOption(text: string): string {
  const colour = parseColour(text);
  if (colour?.alpha === 1) return colour.hex;
  throw new InvalidArgumentError('Write a colour such as "#f5f0e4" or linen.');
}
