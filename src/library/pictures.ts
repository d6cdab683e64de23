/** Pictures of what the sheets give. */
import { layerNames, stackScene } from '../picture/picture';
import { sceneSvg } from '../picture/scene-svg';
import { colour, knownLayer, numberFrom, oneOf, readOptions, words } from './failure';
import { engineReport, type StencilReport } from './report';

/**
 * What a picture shows.
 *
 * @example
 * ```js
 * pictureSvg(report, { look: 'sheet', layer: 'reeds' });
 * pictureSvg(report, { ground: '#f4efe4', opacity: 0.9 }); // each coat covers 0.9 of 1
 * ```
 */
export interface PictureOptions {
  /** The print, one sheet, or all sheets; the print where it is not said. */
  readonly look?: 'print' | 'sheet' | 'sheets';
  /** Only the layer of this name. */
  readonly layer?: string;
  /** What is painted on, as `#rrggbb`; else what the settings say. */
  readonly ground?: string;
  /** How much each coat of paint covers, 0 to 1; 1 where it is not said. */
  readonly opacity?: number;
}

/**
 * Draws what the sheets give when they are sprayed one after the other, or the sheets themselves.
 *
 * @param report of a drawing, or of one file of a project, from `check`
 * @returns the text of an SVG file at true size, in mm
 * @throws StencilError where an option is wrong, or no layer has the name
 * @example
 * ```js
 * import { check, pictureSvg } from 'tombolo-stencil';
 *
 * writeFileSync('print.svg', pictureSvg(check(svgText, { width: '148mm' }), { ground: '#f4efe4' }));
 * ```
 */
export function pictureSvg(report: StencilReport, options: PictureOptions = {}): string {
  const source = engineReport(report, 'pictureSvg()');
  const read = readOptions<PictureOptions>(options, 'pictureSvg()', {
    look: oneOf(['print', 'sheet', 'sheets']),
    layer: words,
    ground: colour,
    opacity: numberFrom(0, 1),
  });
  const names = layerNames(source);
  knownLayer(read.layer, names);
  return sceneSvg(stackScene(source, read), { names });
}
