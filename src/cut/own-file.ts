/** By what a file that was written here is told from an artist's own. */

/** Stands in every such file. */
export const CUT_MARK = 'tombolo cut';

/** The attribute of a picture's root, by which checks pass it over: a cut file is no stencil either. */
export const SVG_MARK = 'data-tombolo-picture';

/** Whether a file's first bytes, as text, are those of one that was written here. */
export function isCutFile(start: string): boolean {
  return (
    start.includes(`${SVG_MARK}="cut"`) ||
    start.startsWith(`%PDF-1.4\n%${CUT_MARK}`) ||
    start.startsWith(`<!-- ${CUT_MARK} -->`) ||
    start.startsWith(`999\n${CUT_MARK}`)
  );
}
