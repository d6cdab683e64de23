/** What the pages are made of, beside what is written by hand: all of it is asked of the engine. */
import { ALL_METAS } from '../engine/check/known-checks';
import { check, readConfig, STRIP_WIDTHS, testStrip } from '../engine/index';
import { stackScene } from '../picture/picture';
import { sceneSvg } from '../picture/scene-svg';

export { checkExample } from './check-examples';

/** Of each check what the README's table says. */
export const CHECKS = ALL_METAS.map(({ id, summary, row, severity }) => ({ id, summary, severity, ...row }));

export const STRIP = { text: testStrip(), widths: STRIP_WIDTHS };

/** The print of a drawing, as SVG. */
export function printOf(text: string, config: string): string {
  return sceneSvg(stackScene(check(text, { config: readConfig(config).config })));
}
