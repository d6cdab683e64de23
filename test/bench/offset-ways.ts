/**
 * The textbook reference: what offset in by half the least width and out again does not bring back is thin. Round joins,
 * their arcs as true as the engine's curves. One run each, as it may take long.
 */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import Coordinate from 'jsts/org/locationtech/jts/geom/Coordinate.js';
import GeometryFactory from 'jsts/org/locationtech/jts/geom/GeometryFactory.js';
import BufferOp from 'jsts/org/locationtech/jts/operation/buffer/BufferOp.js';
import type { Region, Ring } from '../../src/geometry/region';
import { ringsOf } from '../../src/geometry/rings';

/** mm: half of the least bridge of the default material. */
const HALF_WIDTH = 0.4;

/** mm */
const ARC_TOLERANCE = 0.00125;

/** Quarter circles of `HALF_WIDTH` in so many chords stay within `ARC_TOLERANCE`. */
const CHORDS = Math.ceil(Math.PI / 4 / Math.acos(1 - ARC_TOLERANCE / HALF_WIDTH));

const UNITS_PER_MM = 10_000;

/** ms, loading aside, with jsts. */
export function openWithJsts(region: Region): number {
  const start = performance.now();
  const factory = new GeometryFactory();
  const linear = (ring: Ring) => {
    const places = Array.from({ length: ring.length / 2 }, (_, i) => new Coordinate(ring[2 * i], ring[2 * i + 1]));
    return factory.createLinearRing([...places, places[0]]);
  };
  const shape = factory.createMultiPolygon(
    region.map(({ outer, holes }) => factory.createPolygon(linear(outer), holes.map(linear))),
  );
  BufferOp.bufferOp(BufferOp.bufferOp(shape, -HALF_WIDTH, CHORDS), HALF_WIDTH, CHORDS);
  return performance.now() - start;
}

/** What is used of the library's module. */
interface Clipper2 {
  readonly Paths64: new () => Paths;
  readonly Path64: new () => { push_back(point: unknown): void };
  readonly Point64: new (x: bigint, y: bigint, z: bigint) => unknown;
  readonly JoinType: { readonly Round: unknown };
  readonly EndType: { readonly Polygon: unknown };
  InflatePaths64(paths: Paths, by: number, join: unknown, end: unknown, mitre: number, arcTolerance: number): Paths;
}

interface Paths {
  push_back(path: unknown): void;
}

/** ms, loading aside, with clipper2-wasm. */
export async function openWithClipper2(region: Region): Promise<number> {
  const load = createRequire(import.meta.url);
  const file = load.resolve('clipper2-wasm');
  const make = load('clipper2-wasm') as (options: object) => Promise<Clipper2>;
  const library = await make({ wasmBinary: readFileSync(file.replace(/\.js$/, '.wasm')) });
  const start = performance.now();
  const units = (value: number | undefined) => BigInt(Math.round((value ?? 0) * UNITS_PER_MM));
  const paths = new library.Paths64();
  for (const ring of region.flatMap(ringsOf)) {
    const path = new library.Path64();
    for (let i = 0; i < ring.length; i += 2) path.push_back(new library.Point64(units(ring[i]), units(ring[i + 1]), 0n));
    paths.push_back(path);
  }
  const move = (what: Paths, by: number) => library.InflatePaths64(
    what, by * UNITS_PER_MM, library.JoinType.Round, library.EndType.Polygon, 2, ARC_TOLERANCE * UNITS_PER_MM);
  move(move(paths, -HALF_WIDTH), HALF_WIDTH);
  return performance.now() - start;
}
