// Installs Debian packages: quiet but for errors, through sudo where we are not root.
import { execFileSync } from 'node:child_process';

/** Whether what is missing may be fetched: on a build machine, and where someone asked for it. */
export const mayInstall = process.env.CI === 'true' || process.argv.includes('--install');

/** Throws when apt-get does, its own words on stderr. */
export function installPackages(names) {
  const asRoot = process.getuid?.() === 0 ? [] : ['sudo'];
  const apt = (words) => {
    const [command, ...rest] = [...asRoot, 'apt-get', ...words];
    execFileSync(command, rest, { stdio: ['ignore', 'ignore', 'inherit'] });
  };
  console.log(`Installing ${names.join(', ')} by apt-get …`);
  apt(['update']);
  apt(['install', '-y', '--no-install-recommends', ...names]);
}
