/** `npm run fuzz -- --seed 1 --count 1000 --seconds 600 --fixed 2 --out folder [--pictures]` */
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { parseArgs } from 'node:util';
import { realDocuments } from './documents';
import { documentOf, fuzz } from './fuzz';
import { pictureFaults } from './pictures';

const { values } = parseArgs({
  options: {
    seed: { type: 'string', default: '1' },
    count: { type: 'string', default: '1000000' },
    seconds: { type: 'string', default: '600' },
    fixed: { type: 'string', default: '3' },
    out: { type: 'string', default: 'fuzz-failures' },
    pictures: { type: 'boolean', default: false },
    show: { type: 'string' },
  },
});
const documents = realDocuments(process.cwd());
const seed = Number(values.seed);

if (values.show !== undefined) {
  process.stdout.write(documentOf({ seed, documents }, Number(values.show))[0]);
} else {
  const folder = path.resolve(values.out);
  const current = path.join(folder, 'current.svg');
  mkdirSync(folder, { recursive: true });
  const table = await fuzz({
    seed,
    documents,
    count: Number(values.count),
    seconds: Number(values.seconds),
    fixed: Number(values.fixed),
    ...(values.pictures && { onFix: pictureFaults }),
    onDocument: (text, number) => {
      writeFileSync(current, text);
      if (number > 0 && number % 100 === 0) console.log(`${number} documents`);
    },
  });
  rmSync(current);
  for (const { kind, number, words, text } of table.failures) {
    writeFileSync(path.join(folder, `${kind.replaceAll(' ', '-')}-${seed}-${number}.svg`), text);
    console.log(`${kind}: document ${number}: ${words.slice(0, 400)}`);
  }
  const kinds = new Map<string, number>();
  for (const { kind } of table.failures) kinds.set(kind, (kinds.get(kind) ?? 0) + 1);
  console.table({
    documents: table.documents,
    'fixes made': table.fixes,
    'fixes that part a fault': table.parted,
    'slowest check, ms of processor time': Math.round(table.slowest),
    'most memory, MB': Math.round(process.resourceUsage().maxRSS / 1024),
    failures: table.failures.length,
    ...Object.fromEntries(kinds),
  });
  process.exitCode = table.failures.length > 0 ? 1 : 0;
}
