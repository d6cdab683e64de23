/** Where colours that were taken apart print in another order than they are drawn. */
import { type PaintOrder, paintOrder } from '../sheet/layer/paint-order';
import type { Sheet } from '../sheet/types';
import type { Stencil } from './check';

/** The sheets of one file or group that was taken apart by paint, and the order that was found for them. */
export interface TakenApart {
  readonly sheets: readonly Sheet[];
  readonly order: PaintOrder;
}

export function takenApart({ sheets, drawing }: Stencil): TakenApart[] {
  const byElement = new Map<Sheet['layer']['element'], Sheet[]>();
  for (const sheet of sheets.filter(({ layer }) => layer.byPaint)) {
    const own = byElement.get(sheet.layer.element);
    if (own) own.push(sheet);
    else byElement.set(sheet.layer.element, [sheet]);
  }
  return [...byElement.values()].map((own) => {
    const shapes = new Set(own.flatMap(({ layer }) => layer.shapes));
    // The very list that the layers were made from has its order already.
    const all = shapes.size === drawing.shapes.length;
    return {
      sheets: own,
      order: paintOrder(all ? drawing.shapes : drawing.shapes.filter((shape) => shapes.has(shape))),
    };
  });
}
