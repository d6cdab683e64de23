import { bareGap } from './bare-gap/check';
import { hiddenOpening } from './buried-opening/check';
import type { Check, StackCheck } from './check';
import { crossedOutline } from './crossed-outline/check';
import { doubledCut } from './doubled-cut/check';
import { edgeOpening } from './edge-opening/check';
import { floatingIsland } from './floating-island/check';
import { frameMismatch } from './frame-mismatch/check';
import { looseTongue } from './loose-tongue/check';
import { mixedColours } from './mixed-colours/check';
import { narrowOpening } from './narrow-opening/check';
import { nearBridge } from './near-bridge/check';
import { notCuttable } from './not-cuttable/check';
import { openOutline } from './open-outline/check';
import { oversizeSheet } from './oversize-sheet/check';
import { shortOverlap } from './short-overlap/check';
import { sliver } from './sliver/check';
import { smallOpening } from './small-opening/check';
import { thinBridge } from './thin-bridge/check';
import { unreadableMarkup } from './unreadable-markup/check';
import { unreadablePath } from './unreadable-path/check';
import { unsafeMaterial } from './unsafe-material/check';
import { unstatedSize } from './unstated-size/check';
import { unsupported } from './unsupported/check';

/** Every check, in the order they run. A check that is not listed here does not exist. */
export const ALL_CHECKS: readonly (Check | StackCheck)[] = [
  unreadableMarkup,
  unreadablePath,
  unsupported,
  notCuttable,
  unstatedSize,
  oversizeSheet,
  unsafeMaterial,
  mixedColours,
  floatingIsland,
  thinBridge,
  narrowOpening,
  smallOpening,
  sliver,
  looseTongue,
  edgeOpening,
  openOutline,
  crossedOutline,
  doubledCut,
  frameMismatch,
  bareGap,
  shortOverlap,
  hiddenOpening,
  nearBridge,
];
