/** Icons with a change here and there: no fix brings a fault at warning or above without saying so. */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { ALL_CHECKS } from '../../../src/checks/all';
import { applyEdits, createEngine, fixesFor, type Report } from '../../../src/engine/index';
import { seededRandom } from '../../benchmark/seeded';
import { cases, isThorough } from '../../thorough';

const ICONS = path.resolve(__dirname, '../../../node_modules/@mdi/svg/svg');
const COUNT = cases(40, 2);
/** What is found must not depend on how busy the machine is. */
const settings = { width: 40, budget: Infinity };

const names = readdirSync(ICONS);

/** An icon as a stencil, some of its numbers changed a little or doubled. */
function mutated(random: () => number): string {
  const icon = readFileSync(path.join(ICONS, names[Math.floor(random() * names.length)] ?? ''), 'utf8');
  const data = /(?<= d=")[^"]*/;
  const changed = (d: string) =>
    d.replace(/\d+(\.\d+)?/g, (number) => {
      const chance = random();
      if (chance < 0.04) return String(Math.round(Number(number) * (0.7 + random() * 0.6) * 100) / 100);
      return chance < 0.05 ? String(Number(number) * 2) : number;
    });
  return icon.replace(data, changed);
}

/** A fine tip that a bridge cuts off is a small opening: checks of a family have names for the same fault. */
const FAMILIES = new Map<string, string>(ALL_CHECKS.map(({ meta }) => [meta.id, meta.afterFix?.family ?? meta.id]));
const familyOf = ({ check }: { readonly check: string }): string => FAMILIES.get(check) ?? check;

/** What is found at warning or above that was not found before. */
function newFaults(before: Report, after: Report): string[] {
  const familiesIn = ({ findings }: Report) =>
    new Set(findings.filter(({ severity }) => severity === 'error' || severity === 'warning').map(familyOf));
  const known = familiesIn(before);
  return [...familiesIn(after)].filter((family) => !known.has(family));
}

test(`of ${COUNT} mutated icons`, () => {
  const random = seededRandom(Number(process.env.TOMBOLO_SEED ?? 20));
  let [fixes, bringing] = [0, 0];
  for (let i = 0; i < COUNT; i += 1) {
    const text = mutated(random);
    // One cache: what was checked for a proof is not checked again.
    const engine = createEngine();
    const before = engine.check(text, settings);
    for (const finding of before.findings) {
      const { fixes: offered, refusals } = fixesFor(before, finding);
      const wanted = refusals.flatMap(({ anyway }) => anyway ?? []);
      for (const fix of [...offered, ...wanted]) {
        const found = newFaults(before, engine.check(applyEdits(text, fix.edits), settings));
        fixes += 1;
        if (found.length === 0) continue;
        bringing += 1;
        expect(fix.brings.map(familyOf), `${fix.title}\n${text}`).toEqual(expect.arrayContaining(found));
        expect(fix.preferred, `${fix.title}\n${text}`).toBe(false);
        expect(fix.title, text).toMatch(/leaves|anyway/);
      }
    }
  }
  expect(fixes).toBeGreaterThan(COUNT);
  if (isThorough) console.log(`${fixes} fixes, ${bringing} bring something and say so, none is worse unsaid`);
}, 600_000);
