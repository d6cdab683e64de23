// Makes sure that the corpora of the wide tests are there which npm does not have: the W3C SVG 1.1 test suite, as
// Debian's package librsvg2-tests brings it.
import { existsSync } from 'node:fs';
import { installPackages } from './apt.mjs';

const SUITE = '/usr/libexec/installed-tests/RSVG/fixtures/reftests/svg1.1';

if (!existsSync(SUITE)) installPackages(['librsvg2-tests']);
