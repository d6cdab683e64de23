/**
 * Safe slip against brute force: each sheet is shifted by small steps in 360 directions, and an independent library
 * (clipper-lib 6.4.2, Vatti's algorithm) says whether bare ground shows. The ground that counts, where bare ground is
 * nowhere nearer than twice the slip, is made by that library too.
 */
import { createRequire } from 'node:module';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Region } from '../../src/geometry/base/polygon-types';
import { ringsOf } from '../../src/geometry/base/ring';
import { measureTiles } from '../../src/stack/tiles';
import { cases } from '../thorough';
import { FRAME, randomStack } from './random-stack';

interface IntPoint {
  readonly X: number;
  readonly Y: number;
}
type Paths = IntPoint[][];

const { Clipper, ClipperOffset, ClipType, EndType, JoinType, Paths, PolyFillType, PolyType } = createRequire(
  import.meta.url,
)('clipper-lib') as {
  Clipper: { new (): Engine; Area(path: IntPoint[]): number };
  ClipperOffset: new (mitre: number, arc: number) => OffsetEngine;
  ClipType: Record<'ctUnion' | 'ctDifference', number>;
  EndType: Record<'etClosedPolygon', number>;
  JoinType: Record<'jtRound', number>;
  Paths: new () => Paths;
  PolyFillType: Record<'pftNonZero', number>;
  PolyType: Record<'ptSubject' | 'ptClip', number>;
};

interface Engine {
  AddPaths(paths: Paths, type: number, closed: boolean): void;
  Execute(operation: number, solution: Paths, subject: number, clip: number): boolean;
}

interface OffsetEngine {
  AddPaths(paths: Paths, join: number, end: number): void;
  Execute(solution: Paths, delta: number): void;
}

const UNITS = 1e5;
const SLIP = 0.5;

const pathsOf = (region: Region): Paths =>
  region.flatMap(ringsOf).map((ring) =>
    Array.from({ length: ring.length / 2 }, (_, i) => ({
      X: Math.round((ring[2 * i] ?? 0) * UNITS),
      Y: Math.round((ring[2 * i + 1] ?? 0) * UNITS),
    })),
  );

function combine(operation: number, subject: Paths, clip: Paths): Paths {
  const engine = new Clipper();
  engine.AddPaths(subject, PolyType.ptSubject, true);
  engine.AddPaths(clip, PolyType.ptClip, true);
  const solution = new Paths();
  engine.Execute(operation, solution, PolyFillType.pftNonZero, PolyFillType.pftNonZero);
  return solution;
}

function grow(paths: Paths, by: number): Paths {
  const engine = new ClipperOffset(2, 0.0005 * UNITS);
  engine.AddPaths(paths, JoinType.jtRound, EndType.etClosedPolygon);
  const solution = new Paths();
  engine.Execute(solution, by * UNITS);
  return solution;
}

const union = (paths: Paths): Paths => combine(ClipType.ctUnion, paths, []);
const minus = (paths: Paths, other: Paths): Paths => combine(ClipType.ctDifference, paths, other);
const areaOf = (paths: Paths): number => paths.reduce((sum, path) => sum + Clipper.Area(path), 0) / UNITS / UNITS;

const DIRECTIONS = 360;

/** mm²: less is noise of rounding. */
const SEEN = 1e-5;

/** The least of the shifts k·step at which ground that only `own` covers shows bare; undefined if there is none. */
function firstBare(layers: readonly Paths[], own: number, step: number): number | undefined {
  const all = union(layers.flat());
  const deep = grow(grow(all, 0.005), -2 * SLIP - 0.005);
  const others = layers.filter((_, i) => i !== own).flat();
  const sole = minus(deep, others.length > 0 ? union(others) : []);
  const sheet = layers[own] as Paths;
  const near = minus(sole, grow(sheet, -SLIP - 0.05));
  if (areaOf(near) < SEEN) return undefined;
  for (let far = 0; far <= SLIP; far += step) {
    for (let direction = 0; direction < (far === 0 ? 1 : DIRECTIONS); direction += 1) {
      const angle = (2 * Math.PI * direction) / DIRECTIONS;
      const [dx, dy] = [Math.round(far * Math.cos(angle) * UNITS), Math.round(far * Math.sin(angle) * UNITS)];
      const shifted = sheet.map((path) => path.map(({ X, Y }) => ({ X: X + dx, Y: Y + dy })));
      if (areaOf(minus(near, shifted)) > SEEN) return far;
    }
  }
  return undefined;
}

describe('the safe slip of each sheet of a stack', () => {
  it('is where brute force first sees bare ground, on 100 random stacks', () => {
    const step = 0.01;
    let opened = 0;
    fc.assert(
      fc.property(randomStack, (layers) => {
        const { seams } = measureTiles(layers, FRAME, SLIP);
        const paths = layers.map(pathsOf);
        layers.forEach((_, own) => {
          const widths = seams
            .flatMap(({ pieces }) => pieces)
            .filter(({ slipping }) => slipping === own)
            .map(({ width }) => width);
          const ours = Math.min(SLIP, ...widths);
          const brute = firstBare(paths, own, step) ?? SLIP;
          if (brute < SLIP) opened += 1;
          expect(Math.abs(ours - brute)).toBeLessThan(0.02);
        });
      }),
      { numRuns: cases(100, 30), seed: 7 },
    );
    expect(opened).toBeGreaterThan(cases(60, 18));
  }, 120_000);
});
