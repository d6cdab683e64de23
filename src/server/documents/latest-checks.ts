/** What the last checks found of each document, told or not, and whether that still is what the editor shows. */

import type { OpenDocuments } from './checker-surroundings';
import type { KnownConfigs } from './known-configs';
import type { KnownDocument } from './known-document';
import type { PublishedChecks } from './published-checks';

export class LatestChecks {
  /**
   * The documents of the last check that nobody was told of: of a document that is no stencil, or of a text that is not
   * to be checked yet.
   */
  private untold: readonly KnownDocument[] = [];
  private readonly documents: OpenDocuments;
  private readonly configs: KnownConfigs;
  private readonly published: PublishedChecks;

  constructor(documents: OpenDocuments, configs: KnownConfigs, published: PublishedChecks) {
    this.documents = documents;
    this.configs = configs;
    this.published = published;
  }

  keepUntold(known: readonly KnownDocument[]): void {
    this.untold = known;
  }

  /** A document was closed. */
  drop(uri: string): void {
    this.untold = this.untold.filter((known) => known.uri !== uri);
  }

  /** What is known of a document: what was published first. */
  allOf(uri: string): KnownDocument[] {
    const published = this.published.get(uri);
    const others = this.untold.filter((known) => known.uri === uri);
    return published ? [published, ...others] : others;
  }

  /** Of a stencil, of whichever text. */
  lastOf(uri: string): KnownDocument | undefined {
    return this.allOf(uri).find(({ facts }) => facts.stencil);
  }

  /** The check of the document's present text, whatever has become of the others of its project. */
  upToDate(uri: string): KnownDocument | undefined {
    return this.allOf(uri).find((each) => this.isUpToDate(each));
  }

  /** The check of the texts that are in the editor now, its own and those of its project. */
  current(uri: string): KnownDocument | undefined {
    return this.allOf(uri).find((each) => this.isCurrent(each));
  }

  isCurrent(known: KnownDocument): boolean {
    const config = this.configs.find(known.uri);
    if (config?.uri !== known.config?.uri || config?.text !== known.config?.text) return false;
    return (known.project?.documents ?? [known]).every((each) => this.isUpToDate(each));
  }

  private isUpToDate({ uri, version }: KnownDocument): boolean {
    return (this.documents.get(uri)?.version ?? 0) === version;
  }
}
