/** Parts of packages, and of the platform, that come without types. */

declare module '*.wasm' {
  /** The build puts the bytes in. */
  const bytes: Uint8Array<ArrayBuffer>;
  export default bytes;
}

declare module 'exifr/dist/mini.umd.js' {
  export function orientation(bytes: Uint8Array): Promise<number | undefined>;
}

declare namespace WebAssembly {
  interface Module {
    readonly [Symbol.toStringTag]: 'WebAssembly.Module';
  }
  function compile(bytes: Uint8Array): Promise<Module>;
}
