/** The order in which the sheets are sprayed. */
import { sprayOrder as bestOrder } from '../engine/queries/spray-order';
import { numberFrom, readOptions, type Signal, StencilError, signalOption, whileWanted } from './failure';
import { engineReport, type StencilReport } from './report';

/**
 * The order with the fewest islands that prints the same. Numbers of layers count from zero.
 *
 * @example
 * ```js
 * const { names, before, after } = sprayOrder(report);
 * console.log(names.join(', '), `${before} islands now, ${after} then`);
 * ```
 */
export interface SprayOrder {
  /** The layers' names, first sprayed first. */
  readonly names: readonly string[];
  /** Their numbers in the present order, from zero. */
  readonly order: readonly number[];
  /** The fewest layers that must be moved, by number, from zero. */
  readonly moved: readonly number[];
  /** How many islands there are. */
  readonly islands: number;
  /** How many are left now when those that later paint covers are cut away. */
  readonly before: number;
  /** How many are left in the best order. */
  readonly after: number;
}

/**
 * Looks for the order of spraying with the fewest islands: those that later paint covers may as well be cut away.
 *
 * @param report of a drawing, or of one file of a project, from `check`
 * @param options `lightOverDark`: how many islands a lighter paint over a darker one counts, 0 where it is not said
 * @throws StencilError where there are too many layers, or an option is wrong
 * @example
 * ```js
 * import { check, sprayOrder } from 'tombolo-stencil';
 *
 * console.log(sprayOrder(check(svgText, { width: '148mm' }), { lightOverDark: 0.5 }).names);
 * ```
 */
export function sprayOrder(
  report: StencilReport,
  options: { readonly lightOverDark?: number; readonly signal?: Signal } = {},
): SprayOrder {
  const source = engineReport(report, 'sprayOrder()');
  const { lightOverDark, signal } = readOptions<typeof options>(options, 'sprayOrder()', {
    lightOverDark: numberFrom(0, 1e6),
    signal: signalOption,
  });
  const best = whileWanted(signal, () => bestOrder(source, lightOverDark));
  if (typeof best === 'string') throw new StencilError(best);
  const { order, moved, islands, before, after } = best;
  const names = order.map((layer) => source.stack.layers[layer]?.sheet.layer.name ?? '');
  return { names, order, moved, islands, before, after };
}
