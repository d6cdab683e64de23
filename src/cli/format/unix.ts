/** One line for each finding, as compilers write them: `file:line:column: severity: message [check]`. */
import { oneLine } from '../plain-text';
import type { Format } from './format';

export const formatUnix: Format = ({ files }) =>
  files
    .flatMap(({ path, findings }) =>
      findings.map(
        ({ range: { start }, severity, message, check }) =>
          `${oneLine(path)}:${start.line + 1}:${start.character + 1}: ${severity}: ${oneLine(message)} [${check}]\n`,
      ),
    )
    .join('');
