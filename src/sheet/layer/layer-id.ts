/** A name for each layer that no other layer of the stack has, whatever the artist calls it. */

declare const brand: unique symbol;

/**
 * `file#ordinal`: the file as the project names it, empty where it stands alone, and the layer's place in it from 0.
 */
export type LayerId = string & { readonly [brand]: 'layer' };

export function layerId(file: string, ordinal: number): LayerId {
  return `${file}#${ordinal}` as LayerId;
}

/** The file that a layer is cut from, as the project names it. */
export function fileOfLayer(id: LayerId): string {
  return id.slice(0, id.lastIndexOf('#'));
}
