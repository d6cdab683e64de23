/** Commands that change files: each file by itself, whatever becomes of the others. */
import { filesNamed } from './check/check-units';
import { Failure, internalFailure } from './failure';
import { ReportLoader } from './files/load-report';
import { STANDARD_INPUT } from './files/read-input';
import type { ResultOptions } from './files/write-result';
import type { Host } from './host';
import { nameOf, type ReadingOptions } from './options';

/**
 * @param change is given each file
 * @param refuseForSeveral throws what the options ask for that is of one file
 * @throws Failure where it is not said where the results go
 */
export async function changeFiles<Options extends ReadingOptions & ResultOptions>(
  named: readonly string[],
  options: Options,
  host: Host,
  change: (file: string, options: Options, host: Host) => Promise<void>,
  refuseForSeveral: (options: Options) => void = () => undefined,
): Promise<void> {
  const { write, diff } = options;
  if (write && named.includes(STANDARD_INPUT)) throw new Failure('--write needs a file: standard input has none');
  const files = await filesNamed(named, { loader: new ReportLoader(options), configs: new Set(), options: {} }, host);
  if (files.length > 1) {
    refuseForSeveral(options);
    if (!write && !diff) throw new Failure('several files need --write or --diff');
  }
  for (const file of files) {
    try {
      await change(file, options, host);
    } catch (error) {
      host.fail(internalFailure(nameOf(file, options), error));
    }
  }
}
