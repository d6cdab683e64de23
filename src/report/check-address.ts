/** Where the page of a check is on the project's site: the one place that says so. */

/**
 * @param homepage of package.json: where the site lies; empty as long as it lies nowhere
 * @returns the page's address; undefined where there is no site
 */
export function checkAddress(homepage: string, check: string): string | undefined {
  return /^https?:\/\//.test(homepage) ? `${homepage.replace(/\/+$/, '')}/checks/${check}/` : undefined;
}
