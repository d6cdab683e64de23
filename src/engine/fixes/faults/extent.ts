/** How far faults of a sheet reach: what is compared of them before and after a change. Sheet mm. */

import type { Finding, Subject } from '../../../checks/finding';
import type { Matrix } from '../../../geometry/base/curve-types';
import { derivedFacts } from '../../../geometry/base/derived-facts';
import { apply, IDENTITY, maxScale } from '../../../geometry/base/matrix';
import type { Box, Region } from '../../../geometry/base/polygon-types';
import { growBox, polygonOfBox } from '../../../geometry/base/ring';
import { NEAR_EDGE, SAME_FINDING } from '../../../geometry/base/tolerances';
import { areaOf } from '../../../geometry/boolean/index';
import { thinWithin } from '../../../geometry/polygon/thin-within';
import { transformRegion } from '../../../geometry/polygon/transform';
import type { Segment } from '../../../geometry/spatial/segment-distance';
import { courseOf } from '../../../sheet/cut-lines/course';
import { outlineOf } from './course';
import { thinGround } from './thin-ground';

/** What a fault takes up: a part of the sheet, or a course along lines. */
export type Place =
  | { readonly kind: 'area'; readonly region: Region }
  | { readonly kind: 'course'; readonly segments: readonly Segment[] };

export interface Extent {
  /** A box round its place, where one is known without it. */
  readonly box?: Box;
  /** Of a thin part it is worked out when it is asked for: that takes long. */
  readonly place: Place;
  /** mm² of an area, mm of a course: what must not become more in sum. Undefined where only new places count. */
  readonly amount?: number;
  /** mm: how far its measure is on the wrong side; the more, the worse. */
  readonly depth?: number;
  /**
   * Where it may reach that no old fault did. A loose piece: into whatever did not hang safely before. A doubled line, or
   * an opening near the edge: wherever the line or the opening now goes. A tongue: to a root elsewhere, as long as most
   * of it hung loose before, for what makes it lift is its length, not the place that it is held at. How deep a tongue is
   * tells a plain strip that lifts as much: its length.
   */
  readonly mayReach?: 'loose' | 'anywhere' | 'root';
  /** Whether it is a whole opening, measured at its widest: what is cut off it may end before that. */
  readonly isWhole?: boolean;
  /** mm that it may get deeper and still count as equally bad; by default what is drawn alike. */
  readonly depthTolerance?: number;
}

type ThinSubject = Extract<Subject, { kind: 'thin' }>;

/** @returns undefined where a finding says nothing that takes up a place */
export function extentOf({ subject, measure }: Finding): Extent | undefined {
  const depth = measure?.unit === 'mm' ? { depth: Math.abs(measure.value - measure.limit) } : {};
  switch (subject?.kind) {
    case 'island':
      return { place: area([subject.piece.polygon]), mayReach: 'loose' };
    case 'thin':
      return thinExtent(subject, measure?.limit ?? 0, depth);
    case 'opening':
      return { place: area([subject.opening]), ...depth, mayReach: 'anywhere' };
    case 'edge':
      return { place: area(subject.openings.map(({ opening }) => opening)), ...depth, mayReach: 'anywhere' };
    case 'tongue': {
      const { outline, strip } = subject.tongue;
      const place = area([{ outer: outline, holes: [] }]);
      return { place, depth: strip, mayReach: 'root', depthTolerance: SAME_LENGTH };
    }
    case 'overlap': {
      const { course, length, width } = subject.overlap;
      return { place: { kind: 'course', segments: course }, amount: length, depth: (measure?.limit ?? 0) - width };
    }
    case 'gap':
      return gapExtent(subject, measure?.limit ?? 0);
    case 'doubled':
      return { place: { kind: 'course', segments: courseOf(subject.doubled) }, ...depth, mayReach: 'anywhere' };
    default:
      return undefined;
  }
}

/** mm: a tongue that lifts like a strip longer by less, since its root was moved, lifts as much as before. */
const SAME_LENGTH = SAME_FINDING;

/** The box of a place that has no area. */
function orBox(region: Region, box: Box): Region {
  return region.length > 0 ? region : [polygonOfBox(growBox(box, NEAR_EDGE))];
}

function area(region: Region): Place {
  return { kind: 'area', region };
}

/** By subject: it is compared again for each change that is tried. */
const thinAreas = derivedFacts.table<ThinSubject, Region>('area of a thin part');

/** A tip's width says little of how bad it is: how far it goes does. */
function thinExtent(subject: ThinSubject, limit: number, depth: Pick<Extent, 'depth'>): Extent {
  const { kind, extent } = subject.part;
  const region = (): Region => {
    const known = thinAreas.find(subject)?.value ?? thinArea(subject, limit);
    thinAreas.set(subject, known);
    return known;
  };
  return {
    ...(kind === 'whole' ? { isWhole: true } : { box: growBox(extent, 2 * NEAR_EDGE) }),
    get place() {
      return area(region());
    },
    get amount() {
      return areaOf(region());
    },
    ...(kind !== 'tip' && depth),
  };
}

function thinArea({ sheet, part }: ThinSubject, limit: number): Region {
  const isMaterial = sheet.thinMaterial.includes(part);
  const width = isMaterial ? limit + sheet.kerf : limit - sheet.kerf;
  const polygon = (isMaterial ? sheet.material : sheet.openings)[part.polygon];
  const own = polygon ? [polygon] : [];
  return part.kind === 'whole' ? own : orBox(thinWithin(own, part.extent, width), part.extent);
}

/** The ground between two colours, by its outline. A gap is worse than colours that only touch, by its width. */
function gapExtent({ gap, earlier, later }: Extract<Subject, { kind: 'gap' }>, slip: number): Extent {
  const ground = orBox(thinGround([earlier.sheet, later.sheet], gap.extent, slip), gap.extent);
  return {
    place: { kind: 'course', segments: outlineOf(ground) },
    amount: gap.length,
    depth: slip + gap.width,
  };
}

/** The same where everything has been moved or scaled. How deep it is stays what it was measured to be. */
export function moveExtent(extent: Extent, moved: Matrix): Extent {
  if (moved === IDENTITY) return extent;
  const { place, amount } = extent;
  const scale = maxScale(moved);
  if (place.kind === 'area') {
    const region = transformRegion(place.region, moved);
    return { ...extent, place: area(region), ...(amount !== undefined && { amount: amount * scale * scale }) };
  }
  const segments = place.segments.map(({ ax, ay, bx, by }) => {
    const [a, b] = [apply(moved, { x: ax, y: ay }), apply(moved, { x: bx, y: by })];
    return { ax: a.x, ay: a.y, bx: b.x, by: b.y };
  });
  return { ...extent, place: { kind: 'course', segments }, ...(amount !== undefined && { amount: amount * scale }) };
}
