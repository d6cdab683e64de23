/** `tombolo init`: the `tombolo.json` that a project begins with. */
import { join } from 'node:path';
import { type Command, InvalidArgumentError, Option } from 'commander';
import { DEFAULT_MATERIAL, MATERIALS } from '../../config/material';
import { newConfigText } from '../../config/new-config';
import { CONFIG_NAME, type CuttingTool } from '../../config/types';
import { oneLine } from '../../format/plain-text';
import { nearestWord } from '../../text/nearest-word';
import { Failure } from '../failure';
import { isFolder, isThere } from '../files/load-report';
import { writeAtomically } from '../files/write-output';
import type { Host } from '../host';
import { parseAnyLength, parsePositiveLength } from '../options';

interface InitOptions {
  /** As written, with its unit. */
  readonly width?: string;
  readonly material: string;
  readonly tool: CuttingTool;
  readonly kerf?: string;
}

export function addInitCommand(program: Command, host: Host): void {
  program
    .command('init')
    .summary('write the tombolo.json that a project begins with')
    .description('Writes a tombolo.json that says how wide the artwork is cut, from what and with which tool.')
    .argument('[folder]', 'where the drawings are', '.')
    .addOption(
      new Option('--width <length>', 'cut at this width, such as 148mm; without it the drawings say').argParser(
        positive,
      ),
    )
    .addOption(new Option('--material <name>', 'the sheet').argParser(parseMaterial).default(DEFAULT_MATERIAL))
    .addOption(new Option('--tool <name>', 'what cuts').choices(['laser', 'knife']).default('laser'))
    .addOption(
      new Option('--kerf <length>', 'what the tool takes away, where the cut files do not allow for it').argParser(
        anyLength,
      ),
    )
    .addHelpText('after', () => `\nMaterials:\n${materialLines().join('\n')}`)
    .action((folder: string, options: InitOptions) => runInit(folder, options, host));
}

function materialLines(): string[] {
  const names = Object.keys(MATERIALS);
  const room = Math.max(...names.map((name) => name.length));
  return names.map((name) => `  ${name.padEnd(room)}  ${MATERIALS[name]?.title}`);
}

function parseMaterial(text: string): string {
  if (Object.hasOwn(MATERIALS, text)) return text;
  const near = nearestWord(text, Object.keys(MATERIALS));
  throw new InvalidArgumentError(
    near === undefined ? `They are ${Object.keys(MATERIALS).join(', ')}.` : `Did you mean ${near}?`,
  );
}

/** As it was written: `tombolo.json` says it in the artist's own unit. */
function positive(text: string): string {
  parsePositiveLength(text);
  return text.trim();
}

function anyLength(text: string): string {
  parseAnyLength(text);
  return text.trim();
}

async function runInit(folder: string, { width, material, tool, kerf }: InitOptions, host: Host): Promise<void> {
  if (!(await isFolder(folder))) throw new Failure(`${folder}: no such folder`);
  const { title, laser } = MATERIALS[material] ?? {};
  if (tool === 'laser' && laser === 'never') throw new Failure(`never cut ${title} with a laser; take --tool knife`);
  const path = join(folder, CONFIG_NAME);
  if (await isThere(path)) throw new Failure(`${path}: is there already`);
  const taken = kerf !== undefined && { kerf: { kerf, compensated: false } };
  await writeAtomically(path, newConfigText({ width, material, tool, ...taken }));
  host.print(`${oneLine(path)}: written. tombolo check ${oneLine(folder)} reads the drawings in it.\n`);
  if (tool === 'laser') host.print(CAUTION);
}

const CAUTION =
  'A laser burns: never leave it alone, draw the fumes off, cut only what you know to be safe. Local rules come first.\n';
