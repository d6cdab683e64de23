import { formatMillimetres } from '../../config/values';
import { partnerOf } from '../../sheet/layer/partner';
import { type NearBridges, nearBridges } from '../../stack/near-bridges';
import type { StackLayer } from '../../stack/stack';
import { quoted } from '../../text/wording';
import type { StackCheck, StackStencil } from '../check';
import type { FindingDraft } from '../finding';
import { inLayer } from '../places';
import { layerTag, ownLayers, quotedName, relatedOnEdge, spanOnEdge } from '../stack-places';

/** Sheets of one painted region that do not cover each other's bridges at every slip. */
export const nearBridge: StackCheck = {
  meta: {
    id: 'near-bridge',
    summary: "Two sheets in one paint whose bridges are too near to each other to be covered by the other's paint.",
    outcome: "leave a bridge too near to one of the other sheet's",
    severity: 'warning',
    reads: 'stack',
    fixes: [],
    acceptable: true,
    afterFix: { refuses: true },
    row: { wrong: "two sheets in one paint do not cover each other's bridges", click: '' },
  },
  *run(stencil) {
    const { layers, firsts } = stencil.stack;
    for (const { number, layer } of ownLayers(stencil)) {
      const { with: called } = layer.sheet.layer;
      const all = layers.map(({ sheet }) => sheet.layer);
      if (called !== undefined && partnerOf(all, number) === undefined) yield describeUnknown(layer, called);
    }
    const openings = layers.map(({ sheet }) => sheet.openings);
    const limit = (number: number) => stencil.limits.slip + (layers[number]?.sheet.kerf ?? 0);
    for (const near of nearBridges(openings, firsts, limit)) {
      const [layer, first] = [layers[near.layer], layers[firsts[near.layer] ?? 0]];
      if (layer?.file === stencil.file && first) yield describe(stencil, layer, first, near, limit(near.layer));
    }
  },
};

function describe(
  stencil: StackStencil,
  layer: StackLayer,
  first: StackLayer,
  { distance, at, facing }: NearBridges,
  limit: number,
): FindingDraft {
  const [apart, least] = [distance, limit].map(formatMillimetres);
  const [other] = quoted([first.sheet.layer.name]);
  return {
    message: `Bridge only ${apart} from one in ${other} (minimum ${least}): a sheet that slips leaves both bare.`,
    detail:
      `Each of the two sheets paints what the other's bridges keep bare. Nearer than ${least}, which is how far a sheet ` +
      'may slip and the kerf, the two bare places can come to lie over each other. Move one of the bridges, or lower ' +
      'limits.slip in tombolo.json if you register more exactly.',
    span: spanOnEdge(stencil, layer, at),
    ...inLayer(layer.sheet),
    at,
    measure: { value: distance, limit, unit: 'mm' },
    related: [relatedOnEdge(stencil, first, facing, `The bridge in ${other}`)],
  };
}

function describeUnknown(layer: StackLayer, called: string): FindingDraft {
  const [name] = quoted([called]);
  return {
    message: `No other layer in this paint is called ${name}: this sheet is judged alone.`,
    detail:
      `Layer ${quotedName(layer)} says that it is one painted region with "${called}", which must be the id or the name ` +
      'of a layer in the very same paint. Correct data-tombolo-with, or "with" in tombolo.json, or remove it.',
    span: layerTag(layer.sheet),
    ...inLayer(layer.sheet),
    related: [],
  };
}
