/** The checks in a phrase each, for formats that list them. */
import { CHECK_IDS, type CheckId } from '../../config/check-id';
import { CONFIG_CHECK } from '../checked-file';

const SUMMARIES: Readonly<Record<CheckId, string>> = {
  'floating-island': 'A piece of material that hangs on nothing and falls out when the sheet is cut.',
  'thin-bridge': 'A bridge or web narrower than the material bears.',
  'narrow-opening': 'An opening with a place too narrow to cut or to spray through.',
  'small-opening': 'An opening too small to cut or to spray through.',
  'loose-tongue': 'Material held at one end only, which lifts under the spray.',
  'edge-opening': 'An opening across the edge of the sheet, or too near it.',
  'oversize-sheet': 'A sheet that does not fit the bed either way round.',
  'unstated-size': 'A file that states no physical size.',
  'open-outline': 'An outline that does not close.',
  'doubled-cut': 'Lines that would be cut twice.',
  'crossed-outline': 'An outline that crosses itself where it changes what is cut.',
  'not-cuttable': 'Something that cannot be cut: text, an image, a gradient, a filter, a mask, part opacity.',
  'frame-mismatch': 'Layers whose frames or register marks differ.',
  'bare-gap': 'Bare ground between neighbouring colours.',
  'short-overlap': 'Neighbouring colours that overlap less than the layers may slip.',
  'buried-opening': 'An opening that later layers paint over altogether.',
  'unsafe-material': 'Material that must not be lasered, or that the workshop must agree to.',
  'unreadable-markup': 'Markup that could not be read.',
  'unreadable-path': 'Path data that could not be read.',
  unsupported: 'Something in the file that is not read.',
  'unused-acceptance': 'An accepted finding that is no longer there.',
  unfinished: 'A run that stopped before all was looked at.',
};

export interface Rule {
  readonly id: string;
  readonly summary: string;
}

export const RULES: readonly Rule[] = [
  ...CHECK_IDS.map((id) => ({ id, summary: SUMMARIES[id] })),
  { id: CONFIG_CHECK, summary: 'Something in tombolo.json that is not understood.' },
];
