/** What one check reads: a document alone, or all files of a project, as they stand at one moment. */
import type { TextDocument } from 'vscode-languageserver-textdocument';
import type { GeneratorMarks } from '../../engine/index';
import type { CheckedFile } from '../../protocol/engine-worker';
import type { OpenFolders } from '../host/platform';
import type { DiskFiles } from './disk-files';
import type { FoundConfig } from './find-config';
import type { KnownConfigs } from './known-configs';
import { documentsOf } from './known-project';

export interface CheckInput {
  /** What is checked, from one version to the next: a document's address, or that of the project's `tombolo.json`. */
  readonly key: string;
  readonly files: readonly ReadFile[];
  readonly config: FoundConfig | undefined;
  readonly project: boolean;
  /** Of a project all that it names, those that are not there too. */
  readonly named: ReadonlySet<string>;
}

/** A file with its text. */
export type ReadFile = CheckedFile & { readonly text: string };

/** Where documents come from. */
export interface InputSources {
  readonly documents: { get(uri: string): TextDocument | undefined };
  readonly disk: DiskFiles;
  readonly configs: KnownConfigs;
  readonly workspace: OpenFolders;
  /** Files that are checked though they are not open. */
  readonly listed: ReadonlySet<string>;
  /** What a watched program left of a text. */
  readonly marksOf: (uri: string, text: string) => GeneratorMarks | undefined;
}

/** What is checked when a document is: itself, or the project that it is part of. */
export function keyFor(uri: string, sources: InputSources): string {
  return projectOf(uri, sources)?.config.uri ?? uri;
}

/** @returns undefined where there is nothing to check: a document that is neither open nor listed, and in no project */
export function inputFor(uri: string, sources: InputSources): CheckInput | undefined {
  const project = projectOf(uri, sources);
  if (project) return projectInput(project, sources);
  const open = sources.documents.get(uri);
  const document = open ?? (sources.listed.has(uri) ? sources.disk.read(uri) : undefined);
  if (!document) return undefined;
  const config = sources.configs.find(uri);
  const file = fileOf('', document, { open: open !== undefined, sources });
  return { key: uri, files: [file], config, project: false, named: new Set() };
}

interface NamedFiles {
  readonly config: FoundConfig;
  readonly uris: ReadonlyMap<string, string>;
}

function projectOf(uri: string, { configs }: InputSources): NamedFiles | undefined {
  const config = configs.find(uri);
  if (!config) return undefined;
  const uris = documentsOf(config, configs.read(config).config);
  return config.uri === uri || [...uris.values()].includes(uri) ? { config, uris } : undefined;
}

function projectInput({ config, uris }: NamedFiles, sources: InputSources): CheckInput {
  const { documents, disk, workspace } = sources;
  const files = [...uris].flatMap(([name, address]) => {
    const open = documents.get(address);
    const document = open ?? (workspace.holds(address, config.uri) ? disk.read(address) : undefined);
    return document ? [fileOf(name, document, { open: open !== undefined, sources })] : [];
  });
  return { key: config.uri, files, config, project: true, named: new Set(uris.values()) };
}

function fileOf(
  name: string,
  document: TextDocument,
  { open, sources }: { readonly open: boolean; readonly sources: InputSources },
): ReadFile {
  const { uri, version } = document;
  const text = document.getText();
  const marks = sources.marksOf(uri, text);
  return { name, uri, version, open, text, ...(marks && { marks }) };
}

/** Whether two checks would read the same. */
export function isSameInput(a: CheckInput, b: CheckInput): boolean {
  return (
    a.project === b.project &&
    a.config?.text === b.config?.text &&
    a.files.length === b.files.length &&
    a.files.every((file, i) => isSameFile(file, b.files[i]))
  );
}

function isSameFile(a: ReadFile, b: ReadFile | undefined): boolean {
  return a.uri === b?.uri && a.version === b.version && a.text === b.text && a.marks === b.marks;
}
