// Code for WebAssembly as a part of a bundle for Node.js: packed, for it would be a third larger as text than it is.
import { readFileSync } from 'node:fs';
import { constants, deflateRawSync } from 'node:zlib';

/** A plugin of esbuild: what is imported from a `.wasm` file are its bytes. */
export const packedWasm = {
  name: 'packed-wasm',
  setup({ onLoad }) {
    onLoad({ filter: /\.wasm$/ }, ({ path }) => {
      const packed = deflateRawSync(readFileSync(path), { level: constants.Z_BEST_COMPRESSION }).toString('base64');
      const contents = `import { inflateRawSync } from 'node:zlib';\nexport default Uint8Array.from(inflateRawSync(Buffer.from('${packed}', 'base64')));`;
      return { contents };
    });
  },
};
