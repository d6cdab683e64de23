import { readdirSync } from 'node:fs';
import path from 'node:path';
import { URI } from 'vscode-uri';
import { checkAddress } from '../../report/check-address';

/**
 * Finds the page of each check in a folder of `<id>.md` files; where the project has a site, it is the one there.
 * @param homepage where the site is; empty where there is none
 * @returns a function that gives the page's address, or undefined for a check without a page
 */
export function checkPages(folder: string, homepage: string): (check: string) => string | undefined {
  const pages = new Map(
    pagesIn(folder).map((name) => [path.basename(name, '.md'), URI.file(path.join(folder, name)).toString()]),
  );
  return (check) => (pages.has(check) ? (checkAddress(homepage, check) ?? pages.get(check)) : undefined);
}

function pagesIn(folder: string): string[] {
  try {
    return readdirSync(folder).filter((name) => name.endsWith('.md'));
  } catch {
    return [];
  }
}
