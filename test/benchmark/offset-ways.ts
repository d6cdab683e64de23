/**
 * The textbook reference: what offset in by half the least width and out again does not bring back is thin. To find
 * what the check finds, it takes that for the material at its limit and for the openings at theirs, and the difference
 * to have the thin parts themselves. Round joins, for others make thin parts of corners; their arcs as true as the
 * engine's curves, though here it is the many vertices, and not the arcs, that cost. Left out in the reference's
 * favour: reading the drawing, its union, measuring and sorting the parts it gives, and what else the check looks for.
 * One run each, as it may take long; loading aside.
 */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import Coordinate from 'jsts/org/locationtech/jts/geom/Coordinate.js';
import GeometryFactory from 'jsts/org/locationtech/jts/geom/GeometryFactory.js';
import BufferOp from 'jsts/org/locationtech/jts/operation/buffer/BufferOp.js';
import OverlayOp from 'jsts/org/locationtech/jts/operation/overlay/OverlayOp.js';
import type { Region, Ring } from '../../src/geometry/base/polygon-types';
import { ringsOf } from '../../src/geometry/base/ring';
import { FLATTENING } from '../../src/geometry/base/tolerances';

/** A region, and the least width of its parts in mm. */
export interface Limited {
  readonly region: Region;
  readonly least: number;
}

/** ms */
export interface OffsetTimes {
  readonly offsets: number;
  /** Of what was given and what offset in and out brought back; without it nobody knows where the thin parts are. */
  readonly difference: number;
  /** Why there is no difference: the library threw after that time. */
  readonly failure: string | undefined;
}

/** Quarter circles of the radius in so many chords are as true as the engine's curves. */
const chordsFor = (radius: number): number => Math.ceil(Math.PI / 4 / Math.acos(1 - FLATTENING / radius));

const UNITS_PER_MM = 10_000;

/** With jsts, its overlay without snapping: with it, it takes minutes. */
export function openWithJsts(parts: readonly Limited[]): OffsetTimes {
  const clock = new OffsetClock();
  const factory = new GeometryFactory();
  const linear = (ring: Ring) => {
    const places = Array.from({ length: ring.length / 2 }, (_, i) => new Coordinate(ring[2 * i], ring[2 * i + 1]));
    return factory.createLinearRing([...places, places[0]]);
  };
  for (const { region, least } of parts) {
    const shape = factory.createMultiPolygon(
      region.map(({ outer, holes }) => factory.createPolygon(linear(outer), holes.map(linear))),
    );
    const chords = chordsFor(least / 2);
    const open = BufferOp.bufferOp(BufferOp.bufferOp(shape, -least / 2, chords), least / 2, chords);
    clock.offsetsDone();
    clock.difference(() => OverlayOp.overlayOp(shape, open, OverlayOp.DIFFERENCE));
  }
  return clock.times();
}

/** Adds up the time of all regions. */
class OffsetClock {
  private since = performance.now();
  private offsets = 0;
  private differences = 0;
  private failure: string | undefined;

  offsetsDone(): void {
    this.offsets += performance.now() - this.since;
    this.since = performance.now();
  }

  difference(run: () => void): void {
    try {
      run();
    } catch (error) {
      this.failure = (error instanceof Error ? error.message : String(error)).replace(/ between[\s\S]*/, '');
    }
    this.differences += performance.now() - this.since;
    this.since = performance.now();
  }

  times(): OffsetTimes {
    return { offsets: this.offsets, difference: this.differences, failure: this.failure };
  }
}

/** What is used of the library's module. */
interface Clipper2 {
  readonly Paths64: new () => Paths;
  readonly Path64: new () => { push_back(point: unknown): void };
  readonly Point64: new (x: bigint, y: bigint, z: bigint) => unknown;
  readonly JoinType: { readonly Round: unknown };
  readonly EndType: { readonly Polygon: unknown };
  readonly FillRule: { readonly NonZero: unknown };
  InflatePaths64(paths: Paths, by: number, join: unknown, end: unknown, mitre: number, arcTolerance: number): Paths;
  SimplifyPaths64(paths: Paths, tolerance: number, open: boolean): Paths;
  Difference64(paths: Paths, less: Paths, rule: unknown): Paths;
}

interface Paths {
  push_back(path: unknown): void;
}

/**
 * With clipper2-wasm.
 * @param simplify whether what was offset in is simplified, as true as the curves, before it is offset out: no part of
 * the textbook's way, but what someone would do who had to wait for it
 */
export async function openWithClipper2(parts: readonly Limited[], simplify: boolean): Promise<OffsetTimes> {
  const load = createRequire(import.meta.url);
  const file = load.resolve('clipper2-wasm');
  const make = load('clipper2-wasm') as (options: object) => Promise<Clipper2>;
  const library = await make({ wasmBinary: readFileSync(file.replace(/\.js$/, '.wasm')) });
  const clock = new OffsetClock();
  const {
    JoinType: { Round },
    EndType: { Polygon },
    FillRule: { NonZero },
  } = library;
  const tolerance = FLATTENING * UNITS_PER_MM;
  const move = (what: Paths, by: number) =>
    library.InflatePaths64(what, by * UNITS_PER_MM, Round, Polygon, 2, tolerance);
  for (const { region, least } of parts) {
    const paths = pathsOf(library, region);
    const inner = move(paths, -least / 2);
    const open = move(simplify ? library.SimplifyPaths64(inner, tolerance, false) : inner, least / 2);
    clock.offsetsDone();
    clock.difference(() => library.Difference64(paths, open, NonZero));
  }
  return clock.times();
}

function pathsOf(library: Clipper2, region: Region): Paths {
  const units = (value: number | undefined) => BigInt(Math.round((value ?? 0) * UNITS_PER_MM));
  const paths = new library.Paths64();
  for (const ring of region.flatMap(ringsOf)) {
    const path = new library.Path64();
    for (let i = 0; i < ring.length; i += 2)
      path.push_back(new library.Point64(units(ring[i]), units(ring[i + 1]), 0n));
    paths.push_back(path);
  }
  return paths;
}
