/** What the server knows of a project that the worker has checked. */
import { URI, Utils } from 'vscode-uri';
import type { ConfigProblem } from '../../config/read';
import type { Config } from '../../config/types';
import { acceptanceProblems, layerProblems, projectFiles } from '../../engine/index';
import type { ProjectFaults } from '../../protocol/facts';
import type { FoundConfig } from './find-config';
import type { KnownDocument } from './known-document';

export class KnownProject {
  readonly documents: KnownDocument[] = [];

  readonly config: FoundConfig;
  /** All documents that the project names, those that are not there too. */
  readonly named: ReadonlySet<string>;
  private readonly amiss: ProjectFaults | undefined;

  constructor(config: FoundConfig, named: ReadonlySet<string>, amiss: ProjectFaults | undefined) {
    this.config = config;
    this.named = named;
    this.amiss = amiss;
  }

  document(uri: string): KnownDocument | undefined {
    return this.documents.find((document) => document.uri === uri);
  }

  /**
   * What only shows when the files are looked at: layers that name nothing, acceptances that accept nothing.
   * @param text of the `tombolo.json`, where it is another by now
   */
  problems(text = this.config.text): ConfigProblem[] {
    const { layers = [], acceptances = [] } = this.amiss ?? {};
    return [...layerProblems(text, layers), ...acceptanceProblems(text, acceptances)];
  }
}

/** The documents that a `tombolo.json` names, by its names for them; none where it has no layers. */
export function documentsOf({ uri }: FoundConfig, config: Config): ReadonlyMap<string, string> {
  const folder = Utils.dirname(URI.parse(uri));
  return new Map(projectFiles(config).map((name) => [name, Utils.joinPath(folder, name).toString()]));
}
