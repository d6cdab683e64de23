/** `npm run fuzz -- --seed 1 --count 1000 --seconds 600 --fixed all --jobs 2 --longest 4000 --out folder [--pictures]` */
import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { parseArgs } from 'node:util';
import { fuzzInBatches } from './batches';
import { realDocuments } from './documents';
import { documentOf } from './fuzz';
import { rowsOf } from './table';

const { values } = parseArgs({
  options: {
    seed: { type: 'string', default: '1' },
    from: { type: 'string', default: '0' },
    count: { type: 'string', default: '1000000' },
    seconds: { type: 'string', default: '600' },
    fixed: { type: 'string', default: '3' },
    jobs: { type: 'string', default: '1' },
    longest: { type: 'string', default: '30000' },
    out: { type: 'string', default: 'fuzz-failures' },
    pictures: { type: 'boolean', default: false },
    show: { type: 'string' },
  },
});
const [seed, longest] = [Number(values.seed), Number(values.longest)];

if (values.show !== undefined) {
  const documents = realDocuments(process.cwd(), longest);
  process.stdout.write(documentOf({ seed, documents }, Number(values.show))[0]);
} else {
  const folder = path.resolve(values.out);
  mkdirSync(folder, { recursive: true });
  const table = await fuzzInBatches({
    program: process.env.TOMBOLO_FUZZ_BATCH ?? '',
    seed,
    longest,
    from: Number(values.from),
    count: Number(values.count),
    seconds: Number(values.seconds),
    fixed: values.fixed === 'all' ? Infinity : Number(values.fixed),
    jobs: Number(values.jobs),
    pictures: values.pictures,
    onFailure: ({ kind, number, words, text }) => {
      writeFileSync(path.join(folder, `${kind.replaceAll(' ', '-')}-${seed}-${number}.svg`), text);
      console.log(`${kind}: document ${number}: ${words.slice(0, 400)}`);
    },
    onBatch: ({ documents, fixes, slowest }) =>
      console.log(`${documents} documents, ${fixes} fixes, slowest check ${slowest.toFixed(0)} ms`),
  });
  console.table(rowsOf(table));
  process.exitCode = table.failures.length > 0 ? 1 : 0;
}
