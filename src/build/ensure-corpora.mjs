// Makes sure that the corpora of the wide tests are there which npm does not have: the W3C SVG 1.1 test suite, as
// Debian's package librsvg2-tests brings it.
//   --install   fetches it where it is missing
import { existsSync } from 'node:fs';
import { installPackages, mayInstall } from './apt.mjs';

const SUITE = '/usr/libexec/installed-tests/RSVG/fixtures/reftests/svg1.1';

if (!existsSync(SUITE)) {
  if (mayInstall) installPackages(['librsvg2-tests']);
  else {
    console.error(`The W3C SVG 1.1 test suite is not in ${SUITE}; npm run setup installs it by apt-get.`);
    process.exitCode = 1;
  }
}
