/** The demo has the faults that its README names, and no others. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { check } from '../../src/engine/check/check-file';
import { checkProject } from '../../src/engine/check/check-project';
import { readConfig } from '../../src/engine/check/known-checks';
import { projectFiles } from '../../src/engine/check/project-layers';
import { fixesFor } from '../../src/engine/fixes/index';
import { registrationMarks } from '../../src/stack/registration-marks';
import { foundIn } from './project-files';

const demo = (name: string) => readFileSync(path.join(import.meta.dirname, '../../media/demo', name), 'utf8');

describe('the demo in several files', () => {
  const { config, problems } = readConfig(demo('trail/tombolo.json'));
  const report = checkProject(new Map(projectFiles(config).map((name) => [name, demo(`trail/${name}`)])), { config });

  it('is a stack of five colours', () => {
    expect([problems, report.faults]).toEqual([[], []]);
    expect(report.stack.layers.map(({ file, sheet }) => `${file} ${sheet.layer.name}`)).toEqual([
      'sun.svg Sun',
      'reeds.svg Reeds',
      'heron.svg Heron',
      'heron.svg Plumes',
      'rust.svg Rust',
    ]);
    expect(new Set(report.stack.layers.map(({ sheet }) => registrationMarks(sheet.layer).length))).toEqual(
      new Set([3]),
    );
  });

  it('has the faults that are named', () => {
    expect(foundIn(report).sort()).toEqual([
      'heron.svg: thin-bridge',
      'rust.svg: floating-island',
      'sun.svg: bare-gap',
      'sun.svg: short-overlap',
    ]);
    const measured = Object.fromEntries(
      [...report.files.values()].flatMap(({ findings }) =>
        findings.map((finding) => [finding.check, finding.measure?.value]),
      ),
    );
    expect(measured).toMatchObject({
      'bare-gap': expect.closeTo(0.3, 1),
      'short-overlap': expect.closeTo(0.3, 1),
      'thin-bridge': expect.closeTo(0.55, 2),
    });
  });

  it('can be mended of each', () => {
    const kinds = [...report.files.values()].flatMap((each) =>
      each.findings.map((finding) => fixesFor(each, finding).fixes[0]?.kind),
    );
    expect(kinds.sort()).toEqual(['bridge-island', 'spread-colour', 'spread-colour', 'widen-bridge']);
  });

  it('shows in the other files where the neighbours lie', () => {
    const related = report.files.get('sun.svg')?.findings.map((finding) => finding.related.map(({ file }) => file));
    expect(
      related
        ?.flat()
        .filter((file) => file !== undefined)
        .sort(),
    ).toEqual(['heron.svg', 'reeds.svg']);
  });
});

describe('the demo in one file', () => {
  const settings = { config: readConfig(demo('tombolo.json')).config };
  const checksOf = (name: string) => check(demo(name), settings).complete.map((finding) => finding.check);

  it('has the faults that are named', () => {
    expect(checksOf('waymarker.svg')).toEqual([
      'floating-island',
      'floating-island',
      'floating-island',
      'narrow-opening',
      'thin-bridge',
    ]);
    expect(checksOf('numeral-post.svg')).toEqual(['floating-island', 'floating-island']);
    expect(checksOf('sun.svg')).toEqual(['floating-island']);
  });
});
