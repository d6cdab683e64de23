import { formatMillimetres, shortSides } from '../../config/values';
import { DRAWN_ALIKE } from '../../geometry/base/tolerances';
import { distance } from '../../geometry/base/vector';
import type { Sheet } from '../../sheet/types';
import { type RegistrationMark, registrationMarks } from '../../stack/registration-marks';
import type { StackLayer } from '../../stack/stack';
import { quoted } from '../../text/wording';
import type { StackCheck, StackStencil } from '../check';
import type { FindingDraft, Related } from '../finding';
import { inLayer, rootSpan } from '../places';
import { layerTag, ownLayers } from '../stack-places';

/** mm: frames and marks that differ by less are the same, written with other digits. */
const SAME = DRAWN_ALIKE;

/** Sheets that cannot be laid in register: of another size than the others, or with marks at other places. */
export const frameMismatch: StackCheck = {
  meta: {
    id: 'frame-mismatch',
    summary: 'Layers whose frames or register marks differ.',
    outcome: 'leave sheets that cannot be laid in register',
    severity: 'error',
    reads: 'stack',
    fixes: ['register-stack'],
    acceptable: true,
    afterFix: { refuses: true, never: true },
    row: { wrong: 'the sheets of a stack cannot be laid in register', click: 'add register marks' },
  },
  *run(stencil) {
    const { layers } = stencil.stack;
    const own = ownLayers(stencil).map(({ layer }) => layer);
    const usual = usualFrame(layers);
    const odd = usual && own.find((layer) => !isSameFrame(layer, usual));
    if (odd && usual) yield describeFrame(stencil, odd, usual);
    const marked = layers.find(({ sheet }) => registrationMarks(sheet.layer).length > 0);
    for (const layer of marked ? own : []) {
      const finding = layer === marked ? undefined : compareRegistrationMarks(stencil, layer, marked as StackLayer);
      if (finding) yield finding;
    }
  },
};

/** A layer of the frame that most have; of several such frames, the one met first. */
function usualFrame(layers: readonly StackLayer[]): StackLayer | undefined {
  const kinds = new Map<string, { layer: StackLayer; count: number }>();
  for (const layer of layers) {
    const key = sizeOf(layer.sheet).join(' ');
    const kind = kinds.get(key);
    if (kind) kind.count += 1;
    else kinds.set(key, { layer, count: 1 });
  }
  const frames = [...kinds.values()].map(({ layer }) => {
    const alike = [...kinds.values()].filter((other) => isSameFrame(layer, other.layer));
    return { layer, shared: alike.reduce((sum, { count }) => sum + count, 0) };
  });
  const [first, ...others] = frames;
  return first && others.reduce((best, each) => (each.shared > best.shared ? each : best), first).layer;
}

function isSameFrame(a: StackLayer, b: StackLayer): boolean {
  const [[width, height], [otherWidth, otherHeight]] = [sizeOf(a.sheet), sizeOf(b.sheet)];
  return Math.abs(width - otherWidth) <= SAME && Math.abs(height - otherHeight) <= SAME;
}

function sizeOf({ frame }: Sheet): [number, number] {
  return [frame.maxX - frame.minX, frame.maxY - frame.minY];
}

function describeFrame(stencil: StackStencil, odd: StackLayer, usual: StackLayer): FindingDraft {
  const [size, other] = [sizeOf(odd.sheet), sizeOf(usual.sheet)];
  const [oddSides, usualSides] = [shortSides(...size), shortSides(...other)];
  const [own, theirs] = quoted([odd.sheet.layer.name, usual.sheet.layer.name]);
  const off = Math.max(Math.abs(size[0] - other[0]), Math.abs(size[1] - other[1]));
  return {
    message: `Sheets differ in size by ${formatMillimetres(off)}: ${own} ${oddSides}, ${theirs} ${usualSides}.`,
    detail: 'Laid corner to corner they do not lie in register. Give all sheets of the stack the same size.',
    span: rootSpan(stencil),
    measure: { value: off, limit: SAME, unit: 'mm' },
    related: [relatedTag(stencil, usual, `${theirs} is ${usualSides}`)],
  };
}

function compareRegistrationMarks(
  stencil: StackStencil,
  layer: StackLayer,
  marked: StackLayer,
): FindingDraft | undefined {
  const [own, theirs] = [registrationMarks(layer.sheet.layer), registrationMarks(marked.sheet.layer)];
  const [missing, extra] = [unmatched(theirs, own), unmatched(own, theirs)];
  const [lost, odd] = [missing[0], extra[0]];
  if (!lost && !odd) return undefined;
  const off = lost && odd && distance(lost.centre, odd.centre);
  const [one, other] = quoted([layer.sheet.layer.name, marked.sheet.layer.name]);
  const what =
    off !== undefined
      ? `Register mark ${formatMillimetres(off)} off in ${one} (compared with ${other})`
      : `${one} ${lost ? 'lacks' : 'has'} a register mark that ${other} ${lost ? 'has' : 'lacks'}`;
  const at = (odd ?? lost)?.centre;
  return {
    message: `${what}: the sheets will not line up.`,
    detail: 'Laid by its marks, this sheet prints out of register. Cut the same marks in every sheet.',
    span: odd?.element.nameSpan ?? layerTag(layer.sheet),
    ...inLayer(layer.sheet),
    ...(at && { at }),
    ...(off !== undefined && { measure: { value: off, limit: SAME, unit: 'mm' as const } }),
    related: [relatedTag(stencil, marked, `The marks of ${other}`)],
  };
}

function unmatched(marks: readonly RegistrationMark[], others: readonly RegistrationMark[]): RegistrationMark[] {
  return marks.filter(({ centre }) => !others.some((other) => distance(centre, other.centre) <= SAME));
}

function relatedTag({ file }: StackStencil, layer: StackLayer, message: string): Related {
  return { message, ...(layer.file === file ? {} : { file: layer.file }), span: layerTag(layer.sheet) };
}
