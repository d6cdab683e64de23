/** What was found in earlier runs, kept by the content of the files, the settings and the version of the program. */
import { createHash } from 'node:crypto';
import { mkdir, readdir, readFile, rm, stat, utimes } from 'node:fs/promises';
import { join } from 'node:path';
import { version } from '../../../package.json';
import { failureAt } from '../failure';
import type { ReportLoader } from '../files/load-report';
import { STANDARD_INPUT } from '../files/read-input';
import { writeDispensable } from '../files/write-output';
import type { FindingOptions } from '../options';
import type { CheckUnit } from './check-units';
import type { UnitResult } from './unit-check';

/** Milliseconds after which what nobody asked for is removed: thirty days. */
const KEPT_FOR = 30 * 24 * 3_600_000;

const ENDING = '.json';

/** Findings that may be others the next time: of work that was not finished, and of faults of ours. */
const PASSING: ReadonlySet<string> = new Set(['unfinished', 'internal']);

export interface Kept {
  /** Undefined for what cannot be kept. */
  readonly key: string | undefined;
  readonly result?: UnitResult;
}

export class ReportCache {
  private readonly folder: string;
  private readonly settings: string;

  private constructor(folder: string, settings: string) {
    this.folder = folder;
    this.settings = settings;
  }

  /** @throws Failure where the folder cannot be made */
  static async open(folder: string, options: FindingOptions): Promise<ReportCache> {
    try {
      await mkdir(folder, { recursive: true });
      await removeOld(folder);
    } catch (error) {
      throw failureAt(folder, error);
    }
    const { width, height, kerf, compensated, oneLayer, limit, withoutBaseline, format, mends, only, skip } = options;
    const { drawnPlaces } = options;
    const settings = {
      width,
      height,
      kerf,
      compensated,
      oneLayer,
      limit,
      withoutBaseline,
      format,
      mends,
      only,
      skip,
      drawnPlaces,
    };
    return new ReportCache(folder, JSON.stringify([version, settings]));
  }

  async find(unit: CheckUnit, loader: ReportLoader): Promise<Kept> {
    const key = await this.keyOf(unit, loader);
    if (key === undefined) return { key };
    const path = this.pathOf(key);
    try {
      const result = JSON.parse(await readFile(path, 'utf8')) as UnitResult;
      await utimes(path, new Date(), new Date());
      return result.files.length === unit.files.length ? { key, result } : { key };
    } catch {
      // What is not there, or was spoilt, is worked out again.
      return { key };
    }
  }

  /**
   * What is complete, and will be found the same again.
   * @throws Failure where it cannot be written
   */
  async keep(key: string | undefined, result: UnitResult): Promise<void> {
    if (key === undefined || !isLasting(result)) return;
    await writeDispensable(this.pathOf(key), JSON.stringify(result));
  }

  private pathOf(key: string): string {
    return join(this.folder, `${key}${ENDING}`);
  }

  /** What cannot be read is told anew each time. */
  private async keyOf({ files }: CheckUnit, loader: ReportLoader): Promise<string | undefined> {
    if (files.includes(STANDARD_INPUT)) return undefined;
    const hash = createHash('sha256').update(this.settings);
    try {
      for (const file of files) {
        for (const part of await loader.partsOf(file)) hash.update(`\0${part.length}\0`).update(part);
      }
    } catch {
      return undefined;
    }
    return hash.digest('hex');
  }
}

function isLasting({ files }: UnitResult): boolean {
  return files.every(
    (file) =>
      !('failure' in file) &&
      file.remarks.length === 0 &&
      file.checked.findings.every(({ check }) => !PASSING.has(check)),
  );
}

async function removeOld(folder: string): Promise<void> {
  const names = (await readdir(folder)).filter((name) => /^[\da-f]{64}\.json(?:\.\d+)?$/.test(name));
  await Promise.all(
    names.map(async (name) => {
      const path = join(folder, name);
      const { mtimeMs } = await stat(path);
      if (Date.now() - mtimeMs > KEPT_FOR) await rm(path, { force: true });
    }),
  );
}
