/** What the pages are made of, beside what is written by hand: all of it is asked of the engine. */
import { limitsOf } from '../config/limits';
import { MATERIALS } from '../config/material';
import { ALL_METAS } from '../engine/check/known-checks';
import { check, readConfig, STRIP_WIDTHS, testStrip } from '../engine/index';
import { stackScene } from '../picture/picture';
import { sceneSvg } from '../picture/scene-svg';

export { checkExample } from './check-examples';

/** Of each check what the README's table says. */
export const CHECKS = ALL_METAS.map(({ id, summary, row, severity }) => ({ id, summary, severity, ...row }));

/** The limits that count where none is stated, by material. */
export const MATERIAL_ROWS = Object.keys(MATERIALS).map((name) => ({
  name,
  limits: limitsOf(readConfig(JSON.stringify({ material: name })).config),
}));

export const STRIP = { text: testStrip(), widths: STRIP_WIDTHS };

/** The print of a drawing, as SVG. */
export function printOf(text: string, config: string): string {
  return sceneSvg(stackScene(check(text, { config: readConfig(config).config })));
}
