/** The findings that are marked, where they lie in the picture that is shown. */
import type { Point } from '../../geometry/base/curve-types';
import { apply, IDENTITY } from '../../geometry/base/matrix';
import type { Scene } from '../../picture/scene';
import type { PreviewFinding, PreviewStack } from '../../protocol/index';
import { type BenchState, isFindingShown } from '../state/state';

export interface FindingMarker {
  /** In mm of the picture. */
  readonly finding: PreviewFinding;
  readonly selected: boolean;
}

/** Those that show, in the stack's order: the most serious of each file first. */
export function placedFindings(stack: PreviewStack, state: BenchState, scene: Scene): FindingMarker[] {
  if (!state.marks) return [];
  return stack.findings.flatMap((finding) => {
    if (!isFindingShown(state, stack, finding)) return [];
    const placed = { ...finding, at: placeOnPicture(finding, scene), chord: chordOnPicture(finding, scene) };
    const hidden = placed.at !== undefined && isCovered(placed.at, finding, stack, scene);
    return hidden ? [] : [{ finding: placed, selected: finding.number === state.selected }];
  });
}

/** Where a finding's place lies in the picture, in its mm. */
export function placeOnPicture(finding: PreviewFinding, scene: Scene): Point | undefined {
  return finding.at && apply(placeOf(finding, scene), finding.at);
}

function chordOnPicture(finding: PreviewFinding, scene: Scene): PreviewFinding['chord'] {
  const place = placeOf(finding, scene);
  return finding.chord && [apply(place, finding.chord[0]), apply(place, finding.chord[1])];
}

/** From the sheet of the finding's layer to the picture. */
function placeOf({ layer }: PreviewFinding, { sceneLayers }: Scene) {
  return sceneLayers.find((plate) => layer !== undefined && plate.layer === layer)?.place ?? IDENTITY;
}

/** Of sheets that lie on each other the upper one hides what is found on the lower. */
function isCovered(at: Point, { layer }: PreviewFinding, { sheet }: PreviewStack, scene: Scene): boolean {
  if (scene.kind !== 'sheets' || layer === undefined) return false;
  const own = scene.sceneLayers.findIndex((plate) => plate.layer === layer);
  return scene.sceneLayers.slice(own + 1).some(({ place: { e, f } }) => {
    const { minX, minY, maxX, maxY } = sheet;
    return at.x >= minX + e && at.x <= maxX + e && at.y >= minY + f && at.y <= maxY + f;
  });
}
