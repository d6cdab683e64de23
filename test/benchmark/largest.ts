/** Run by itself, so that the peak of its memory is its own: one check of so many segments. Prints that peak in MB. */
import { check } from '../../src/engine/index';
import { peakMegabytes } from './peak-memory';
import { blobSheet } from './seeded';

check(blobSheet(Number(process.argv[2])), { budget: Infinity });
console.log(peakMegabytes());
