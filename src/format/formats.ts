/** What prints reports, by its name. */
import type { Format } from './format';
import { formatGithub } from './github';
import { formatGitlab } from './gitlab';
import { formatJson } from './json';
import { formatJunit } from './junit';
import { formatSarif } from './sarif';
import { formatText } from './text';
import { formatUnix } from './unix';

export const FORMATS = {
  text: formatText,
  json: formatJson,
  sarif: formatSarif,
  unix: formatUnix,
  github: formatGithub,
  gitlab: formatGitlab,
  junit: formatJunit,
} satisfies Record<string, Format>;

export type FormatName = keyof typeof FORMATS;
