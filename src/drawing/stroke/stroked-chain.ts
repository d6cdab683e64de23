/** What the pen paints along one chain of curves. A chain is met again after an edit, and is then not stroked again. */
import { defined } from '../../base/defined';
import type { Curve } from '../../geometry/base/curve-types';
import { derivedFacts } from '../../geometry/base/derived-facts';
import type { Span } from '../../text/text';
import type { Subpath } from '../types';
import { PolygonSink } from './figures';
import { outlineContour } from './outline-pieces';
import { isSamePen, type Pen } from './pen';
import { piecesOfLine, toPenUnits } from './pieces';

/** A closed figure in sheet mm, and the number of the curve that it comes of. */
interface Figure {
  readonly curves: readonly Curve[];
  readonly of: number;
}

interface Stroked {
  readonly pen: Pen;
  readonly closed: boolean;
  readonly figures: readonly Figure[];
}

const strokedChains = derivedFacts.table<readonly Curve[], Stroked>('stroke of a chain');

/** The closed figures of a stroke without dashes along a subpath in sheet mm. */
export function strokedChain(subpath: Subpath, pen: Pen): Subpath[] {
  const known = strokedChains.find(subpath.curves)?.value;
  const isSame = known?.closed === subpath.closed && isSamePen(known.pen, pen);
  const figures = isSame ? known.figures : figuresAlong(subpath, pen);
  if (!isSame) strokedChains.set(subpath.curves, { pen, closed: subpath.closed, figures });
  return figures.map((figure) => new FigureOfLine(figure, subpath));
}

/** Numbers stand for the places in the text, which are others after an edit. */
function figuresAlong({ curves, closed }: Subpath, pen: Pen): Figure[] {
  const sink = new PolygonSink(pen);
  const spans = curves.map((_, index) => ({ from: index, to: index }));
  outlineContour(piecesOfLine(toPenUnits({ curves, spans, closed }, pen), pen), pen, sink);
  return sink.subpaths.map((figure) => ({ curves: figure.curves, of: defined(figure.spans[0]).from }));
}

class FigureOfLine implements Subpath {
  readonly curves: readonly Curve[];
  readonly closed = true;
  private readonly of: number;
  private readonly line: Subpath;

  constructor({ curves, of }: Figure, line: Subpath) {
    this.curves = curves;
    this.of = of;
    this.line = line;
  }

  get spans(): readonly Span[] {
    const span = defined(this.line.spans[this.of]);
    return this.curves.map(() => span);
  }
}
