/** The edges of bodies that a view shows, and which of them are only joints of something round. */
import type { Spot } from '../../structures/geometry.ts';
import { project, type Camera } from '../axonometric.ts';
import type { Point } from '../path.ts';
import { middleOf } from './clearances.ts';
import { turn } from '../outline.ts';
import type { Body } from './painted.ts';
import { dot, facesOf, isSheet, type Face } from './solids.ts';
import { axesOf } from './view.ts';

export interface EdgeOnPage {
  /** Between two faces that are seen, or at the edge of what is seen. */
  readonly kind: 'inner' | 'outer';
  readonly ends: readonly [Point, Point];
}

/** Faces that turn less than this from one to the next (65 degrees) belong to one round surface. */
const roundCosine = Math.cos((65 * Math.PI) / 180);

/**
 * The edges to draw of each body. Of a body with flat faces these are the inner ones, since its outline is drawn as a whole;
 * of a smooth one inner edges only where it is sharp, and of its outer ones those that are not joints with the next.
 */
export function seamsOf(bodies: readonly Body[], camera: Camera): (body: Body) => readonly EdgeOnPage[] {
  const meshes = new Map(bodies.map((body) => [body, meshOf(body, camera)]));
  const smooth = bodies.filter(({ member }) => member.smooth);
  const keys = new Map(smooth.map((body) => [body, facesOf(body.solid).map(faceKey)]));
  return (body) => {
    const mesh = meshes.get(body)!;
    if (!body.member.smooth) return mesh.filter(({ faces }) => faces.length === 2).map(onPage);
    const near = smooth.filter(
      (other) => other !== body && other.member.role === body.member.role && other.weight === body.weight,
    );
    const others = near.flatMap((other) => meshes.get(other)!);
    const inside = new Set(near.flatMap((other) => keys.get(other)!));
    return mesh
      .map((edge) => ({ ...edge, faces: edge.faces.filter(({ key }) => !inside.has(key)) }))
      .filter((edge) => edge.faces.length > 0 && !isRound(edge) && !isJoint(edge, others))
      .map(onPage);
  };
}

interface MeshFace {
  readonly normal: Spot;
  readonly middle: Point;
  readonly key: string;
}

interface MeshEdge {
  readonly key: string;
  readonly ends: readonly [Point, Point];
  /** The faces on both sides of it that are seen: one or two. */
  readonly faces: readonly MeshFace[];
}

function meshOf({ solid }: Body, camera: Camera): readonly MeshEdge[] {
  const { toward } = axesOf(camera);
  const edges = new Map<string, { ends: readonly [Point, Point]; faces: MeshFace[] }>();
  const seen = facesOf(solid).filter(({ normal }) => isSheet(solid) || dot(normal, toward) > 1e-6);
  for (const face of seen) {
    const flat = face.corners.map((spot) => project(camera, spot));
    const meshFace = { normal: face.normal, middle: middleOf(flat), key: faceKey(face) };
    face.corners.forEach((corner, index) => {
      const next = (index + 1) % face.corners.length;
      const key = [spotKey(corner), spotKey(face.corners[next]!)].sort().join(' ');
      const edge = edges.get(key) ?? { ends: [flat[index]!, flat[next]!] as const, faces: [] };
      edge.faces.push(meshFace);
      edges.set(key, edge);
    });
  }
  return [...edges].map(([key, edge]) => ({ key, ...edge }));
}

function onPage({ ends, faces }: MeshEdge): EdgeOnPage {
  return { kind: faces.length > 1 ? 'inner' : 'outer', ends };
}

function isRound({ faces: [one, other] }: MeshEdge): boolean {
  return one !== undefined && other !== undefined && dot(one.normal, other.normal) > roundCosine;
}

/** An edge that the next body has too, with what is seen of the two on opposite sides of it. */
function isJoint({ key, ends, faces }: MeshEdge, others: readonly MeshEdge[]): boolean {
  const side = ({ middle }: MeshFace): number => turn(ends[0], ends[1], middle);
  return others.some(
    (other) =>
      other.key === key && faces.every((own) => other.faces.some((face) => side(own) * side(face) < 0)),
  );
}

function faceKey({ corners }: Face): string {
  return corners.map(spotKey).sort().join(' ');
}

function spotKey({ x, y, z }: Spot): string {
  return [x, y, z].map((value) => Math.round(value) + 0).join(',');
}
