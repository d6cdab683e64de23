import type { PreviewLayer, PreviewStack } from '../../src/protocol/index';
import { layerId } from '../../src/sheet/layer/layer-id';

const uri = 'file:///heron.svg';

const layer = (name: string, index: number): PreviewLayer => ({
  id: layerId('', index),
  uri,
  name,
  paint: '#000000',
  reading: 'openings',
  readingStated: true,
  openings: '',
  openingCount: 0,
  openingArea: 0,
  materialArea: 0,
  cutLength: 0,
  islands: [],
});

/** A stack of 10 by 10 mm with empty layers of these names. */
export function madeStack({ version = 1, names }: { version?: number; names: readonly string[] }): PreviewStack {
  return {
    uri,
    version,
    documents: [{ uri, version }],
    stencil: true,
    elapsed: 1,
    width: 10,
    height: 10,
    sizeStated: true,
    slip: 0.5,
    sheet: { minX: 0, minY: 0, maxX: 10, maxY: 10 },
    layers: names.map(layer),
    findings: [],
  };
}
