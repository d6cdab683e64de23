/**
 * Cut files as programs of others read them: SVG by svgson and svgpath, DXF by dxf-parser and dxf, PDF's paths by poppler.
 * What they give are rings of straight edges, by the formulas of curves that stand in this folder's tests alone.
 */
import { createRequire } from 'node:module';
import type { DxfParser as Parser } from 'dxf-parser';
import { type INode, parseSync } from 'svgson';
import type { Point, Rings } from '../clipper';
import { ringsOfPath } from '../flat-path';

/** What a reader found: chords for each curve are chosen by whoever compares. */
export type Reader = (chords: number) => Rings;

/** The paths of a cut file as SVG, those of a colour; the file's size in mm as well. */
export function readSvg(
  text: string,
  colour = '#ff0000',
): { readonly rings: Reader; readonly size: Point; readonly root: INode } {
  const root = parseSync(text);
  const [, , width, height] = root.attributes.viewBox!.split(' ').map(Number);
  const data = root.children
    .filter(({ attributes }) => attributes.stroke === colour)
    .map(({ attributes }) => attributes.d!);
  return { rings: (chords) => data.flatMap((each) => ringsOfPath(each, 1, chords)), size: [width!, height!], root };
}

/**
 * Every path of what pdftocairo makes of a PDF, in mm: it keeps PDF's points, y down. After each outline that closes it moves
 * back to the beginning, which is no outline of its own.
 */
export function readPopplerSvg(text: string): Reader {
  const paths: { readonly d: string; readonly matrix: readonly number[] }[] = [];
  const visit = ({ name, attributes, children }: INode): void => {
    if (name === 'defs') return;
    if (attributes.d !== undefined && attributes.stroke !== 'none') {
      const matrix = /matrix\(([^)]*)\)/
        .exec(attributes.transform ?? '')?.[1]
        ?.split(/[\s,]+/)
        .map(Number) ?? [1, 0, 0, 1, 0, 0];
      paths.push({ d: attributes.d, matrix });
    }
    children.forEach(visit);
  };
  visit(parseSync(text));
  return (chords) =>
    paths
      .flatMap(({ d, matrix: [a, b, c, e, x0, y0] }) =>
        ringsOfPath(d, 1, chords).map((ring) =>
          ring.map(([x, y]): Point => [((a! * x + c! * y + x0!) * 25.4) / 72, ((b! * x + e! * y + y0!) * 25.4) / 72]),
        ),
      )
      .filter((ring) => ring.length > 1);
}

export interface Vertex {
  readonly x: number;
  readonly y: number;
  readonly bulge?: number;
}

export interface Polyline {
  readonly layer: string;
  readonly closed: boolean;
  readonly vertices: readonly Vertex[];
}

const load = createRequire(import.meta.url);
const DxfParser = load('dxf-parser') as new () => Parser;

export function readWithDxfParser(text: string): { readonly units: unknown; readonly polylines: Polyline[] } {
  const file = new DxfParser().parseSync(text)!;
  const entities = file.entities as unknown as { layer: string; shape: boolean; vertices: Vertex[] }[];
  return {
    units: file.header?.$INSUNITS,
    polylines: entities.map(({ layer, shape, vertices }) => ({ layer, closed: shape, vertices })),
  };
}

interface DxfHelper {
  readonly parsed: { readonly entities: readonly { layer: string; closed: boolean; vertices: Vertex[] }[] };
}

const { Helper } = load('dxf') as { Helper: new (text: string) => DxfHelper };

export function readWithDxf(text: string): Polyline[] {
  return new Helper(text).parsed.entities.map(({ layer, closed, vertices }) => ({ layer, closed, vertices }));
}

/** y down, as it was drawn; arcs by their centre: a bulge is the tangent of a quarter of the angle. */
export function ringsOfPolylines(polylines: readonly Polyline[], height: number): Reader {
  return (chords) =>
    polylines.map(({ vertices, closed }) =>
      vertices.flatMap((vertex, i): Point[] => {
        const next = vertices[i + 1] ?? (closed ? vertices[0]! : vertex);
        return bowPoints(vertex, next, chords).map(([x, y]): Point => [x, height - y]);
      }),
    );
}

/** From the first point on, without the last. */
function bowPoints(from: Vertex, to: Vertex, chords: number): Point[] {
  const bulge = from.bulge ?? 0;
  if (bulge === 0) return [[from.x, from.y]];
  const turn = 4 * Math.atan(bulge);
  const rise = (1 - bulge * bulge) / (4 * bulge);
  const centre = [(from.x + to.x) / 2 - (to.y - from.y) * rise, (from.y + to.y) / 2 + (to.x - from.x) * rise] as const;
  const radius = Math.hypot(from.x - centre[0], from.y - centre[1]);
  const start = Math.atan2(from.y - centre[1], from.x - centre[0]);
  return Array.from({ length: chords }, (_, i): Point => {
    const angle = start + (turn * i) / chords;
    return [centre[0] + radius * Math.cos(angle), centre[1] + radius * Math.sin(angle)];
  });
}

export interface Measured {
  /** mm², of either sign. */
  readonly area: number;
  readonly box: readonly [number, number, number, number];
}

/** Of each ring; areas by Richardson's way: what chords lose falls with their number squared. */
export function measure(read: Reader): Measured[] {
  const [coarse, fine] = [read(160), read(320)];
  return fine.map((ring, i) => {
    const [xs, ys] = [ring.map(([x]) => x), ring.map(([, y]) => y)];
    return {
      area: (4 * shoelace(ring) - shoelace(coarse[i]!)) / 3,
      box: [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)],
    };
  });
}

function shoelace(ring: readonly Point[]): number {
  const [ox, oy] = ring[0] ?? [0, 0];
  return ring.reduce((sum, [x, y], i) => {
    const [nextX, nextY] = ring[(i + 1) % ring.length]!;
    return sum + ((x - ox) * (nextY - oy) - (nextX - ox) * (y - oy)) / 2;
  }, 0);
}
