/** The `tombolo.json` in force for each document, looked up and read once for as long as nothing changes. */
import { URI, Utils } from 'vscode-uri';
import { type ConfigReading, readConfig } from '../../engine/index';
import type { Files } from '../host/platform';
import { type FoundConfig, findConfig } from './find-config';

/** Milliseconds for which a folder is taken to be as it was: no longer than somebody takes to write a file and look. */
const TRUSTED_FOR = 1000;

interface Known {
  readonly found: FoundConfig | undefined;
  readonly at: number;
}

export class KnownConfigs {
  private readonly found = new Map<string, Known>();
  private readonly readings = new Map<string, { readonly text: string; readonly reading: ConfigReading }>();

  private readonly unsaved: (uri: string) => string | undefined;
  private readonly files: Files;

  /** @param unsaved the text of a file that is open in the editor, by its address */
  constructor(unsaved: (uri: string) => string | undefined, files: Files) {
    this.unsaved = unsaved;
    this.files = files;
  }

  /** Undefined where there is none. */
  find(documentUri: string): FoundConfig | undefined {
    const folder = Utils.dirname(URI.parse(documentUri)).toString();
    const known = this.found.get(folder);
    const isFresh = known !== undefined && performance.now() - known.at < TRUSTED_FOR;
    const found = isFresh ? known.found : findConfig(documentUri, this.unsaved, this.files);
    if (!isFresh) this.found.set(folder, { found, at: performance.now() });
    const text = found && this.unsaved(found.uri);
    return text === undefined ? found : { ...found, uri: found?.uri ?? '', text };
  }

  /** A `tombolo.json` was made, written, opened, closed or deleted somewhere. */
  changed(): void {
    this.found.clear();
  }

  read({ uri, text }: FoundConfig): ConfigReading {
    const known = this.readings.get(uri);
    if (known?.text === text) return known.reading;
    const reading = readConfig(text);
    this.readings.set(uri, { text, reading });
    return reading;
  }
}
