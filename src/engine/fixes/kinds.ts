/** Every kind of fix that a finding may ask for. One that is not listed here does not exist. */

import type { FixKind } from './kind';
import { accept } from './kinds/accept';
import { addMargin, addMarginStack } from './kinds/add-margin';
import { bridgeFile } from './kinds/bridge-file';
import { bridgeIsland, bridgeIslandShortest, bridgeIslandTwo } from './kinds/bridge-island';
import { bridgeLayer, bridgeLayerUpright } from './kinds/bridge-layer';
import { closeOutline } from './kinds/close-outline';
import { closeSlot } from './kinds/close-slot';
import { cutCoveredFile, cutCoveredIslandKind, cutCoveredLayer } from './kinds/cut-covered';
import { cutIslandAway } from './kinds/cut-island-away';
import { removeBothLines, removeDoubledLine, uniteOutlines } from './kinds/doubled-lines';
import { joinLines, removeOpenLine } from './kinds/open-lines';
import { openUp } from './kinds/open-up';
import { removeOpening } from './kinds/openings/remove-opening';
import { removeSlivers } from './kinds/openings/remove-slivers';
import { registerStack } from './kinds/register-stack';
import { scaleStack, scaleToFit } from './kinds/scale-to-bed';
import { shortenTip } from './kinds/shorten-tip';
import { spreadColour } from './kinds/spread-colour';
import { stateSize, stateSizeInUnits } from './kinds/state-size';
import { layersByPaint, layersInnerGroups } from './kinds/take-layers';
import { tieTongue } from './kinds/tie-tongue';
import { widenBridge } from './kinds/widen-bridge';
import { twoSheets } from './two-sheets/kind';

const KINDS: readonly FixKind[] = [
  bridgeIsland,
  bridgeIslandShortest,
  bridgeIslandTwo,
  bridgeLayer,
  bridgeLayerUpright,
  bridgeFile,
  twoSheets,
  cutCoveredIslandKind,
  cutCoveredLayer,
  cutCoveredFile,
  cutIslandAway,
  widenBridge,
  tieTongue,
  openUp,
  shortenTip,
  closeSlot,
  removeOpening,
  removeSlivers,
  scaleToFit,
  scaleStack,
  addMargin,
  addMarginStack,
  stateSize,
  stateSizeInUnits,
  closeOutline,
  joinLines,
  removeOpenLine,
  uniteOutlines,
  removeDoubledLine,
  removeBothLines,
  layersByPaint,
  layersInnerGroups,
  registerStack,
  spreadColour,
  accept,
];

export const FIX_KINDS: ReadonlyMap<string, FixKind> = new Map(KINDS.map((each) => [each.kind, each]));
