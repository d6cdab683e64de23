/** What the benchmark uses of jsts, which comes without types. */
declare module 'jsts/org/locationtech/jts/geom/Coordinate.js' {
  export default class Coordinate {
    constructor(x: number | undefined, y: number | undefined);
  }
}
declare module 'jsts/org/locationtech/jts/geom/GeometryFactory.js' {
  export default class GeometryFactory {
    createLinearRing(places: readonly unknown[]): object;
    createPolygon(shell: object, holes: readonly object[]): object;
    createMultiPolygon(polygons: readonly object[]): object;
  }
}
declare module 'jsts/org/locationtech/jts/operation/buffer/BufferOp.js' {
  const BufferOp: { bufferOp(shape: object, distance: number, quadrantSegments: number): object };
  export default BufferOp;
}
declare module 'jsts/org/locationtech/jts/operation/overlay/OverlayOp.js' {
  const OverlayOp: { readonly DIFFERENCE: number; overlayOp(one: object, other: object, operation: number): object };
  export default OverlayOp;
}
declare module 'jsts/org/locationtech/jts/operation/distance/DistanceOp.js' {
  const DistanceOp: { distance(one: object, other: object): number };
  export default DistanceOp;
}
