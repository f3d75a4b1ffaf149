/** Plan, elevation and section: what they have in common is a page that grows round the thing until its words have room. */
import type { Assembly, ShownMeasure } from '../../structures/assembly.ts';
import type { Spot } from '../../structures/geometry.ts';
import { project, type Camera } from '../axonometric.ts';
import { overlaps, type Box } from '../charts/text-width.ts';
import type { Point } from '../path.ts';
import type { Scene, SceneItem } from '../scene.ts';
import { placeCallouts, type Scenery } from './callouts.ts';
import { grown, outlineMeetsBox, segmentMeetsBox } from './clearances.ts';
import { boundsOf } from '../outline.ts';
import { linesOf, placeMeasures, wordBoxes } from './measures.ts';
import { targetsOf, type Lettered } from './targets.ts';
import { directionOf } from './view.ts';
import type { BuildWords, RoleLetters } from './words.ts';

export interface FlatOptions {
  readonly id: string;
  readonly alternative: string;
  readonly words: BuildWords;
  readonly letters: RoleLetters;
  readonly widthMm: number;
}

/** The thing as it lies on one trial page. */
export interface FlatPage {
  readonly camera: Camera;
  readonly widthMm: number;
  /** Where the thing itself is. */
  readonly box: Box;
  readonly at: (spot: Spot) => Point;
}

export interface Sign {
  readonly items: readonly SceneItem[];
  /** Where nothing else may be; without it, where its words are. */
  readonly room?: Box;
}

/** What one kind of drawing puts on its page. */
export interface FlatContent {
  /** The thing itself, under everything else; asked for once the page has its final size. */
  readonly painted: () => { readonly items: readonly SceneItem[]; readonly lettered: readonly Lettered[] };
  /** Figures that dimension lines stand clear of, and that words and balloons stay off. */
  readonly shapes: readonly (readonly Point[])[];
  /** Figures that words and balloons stay off, though lines may cross them. */
  readonly ground?: readonly (readonly Point[])[];
  /** Signs that have their place, and the room that each keeps free. */
  readonly signs: readonly Sign[];
  /** Signs that stand in the first of several places that is free; one that finds none is left out. */
  readonly loose: readonly (readonly Sign[])[];
  /** Roles in the order in which their letters are placed. */
  readonly roles: readonly string[];
}

export interface FlatKind {
  readonly kind: ShownMeasure['in'];
  /** All that has to fit on the page, in the space of the assembly as it is seen. */
  readonly spots: readonly Spot[];
  readonly content: (page: FlatPage) => FlatContent;
  /** Least room round the thing. */
  readonly margin: Margin;
}

interface Margin {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** What is built is drawn no taller than this, so that its plan and its elevation, with their measures, share a page. */
const tallestMm = { plan: 70, elevation: 55, section: 55 } as const;
const edgeMm = 1;

export function flatDrawing(assembly: Assembly, kind: FlatKind, options: FlatOptions): Scene {
  let margin = kind.margin;
  let draft = draftOf(assembly, kind, options, margin);
  for (let round = 0; round < 8; round += 1) {
    const { left, right, top } = extentOf(draft.items);
    const short = {
      left: Math.max(0, edgeMm - left),
      right: Math.max(0, right + edgeMm - options.widthMm),
      top: Math.max(0, edgeMm - top),
    };
    if (short.left + short.right + short.top < 0.01) break;
    margin = {
      ...margin,
      left: margin.left + short.left,
      right: margin.right + short.right,
      top: margin.top + short.top,
    };
    draft = draftOf(assembly, kind, options, margin);
  }
  const { items: thing, lettered } = draft.content.painted();
  const items = [...thing, ...draft.items, ...balloonsOn(draft, lettered, kind, options)];
  return {
    id: options.id,
    widthMm: options.widthMm,
    heightMm: Math.ceil((extentOf(items).bottom + edgeMm) * 10) / 10,
    alternative: options.alternative,
    items,
  };
}

interface Draft {
  readonly page: FlatPage;
  readonly content: FlatContent;
  /** Signs and measures. */
  readonly items: readonly SceneItem[];
  readonly scenery: Scenery;
}

/** The thing, its signs and its measures on a page with given margins; the measures may reach past its edges. */
function draftOf(assembly: Assembly, kind: FlatKind, options: FlatOptions, margin: Margin): Draft {
  const page = pageOf(assembly, kind, options.widthMm, margin);
  const content = kind.content(page);
  const fixed = content.signs.reduce<Scenery>(withSign, {
    boxes: [],
    lines: [],
    shapes: [...content.shapes, ...(content.ground ?? [])],
  });
  const measures = placeMeasures(
    assembly.measures.filter((measure) => measure.in === kind.kind),
    {
      hemisphere: assembly.hemisphere,
      camera: page.camera,
      words: options.words.measure,
      scenery: fixed,
      reach: content.shapes,
    },
  );
  let scenery = measures.scenery;
  const loose = content.loose.flatMap((places): readonly Sign[] => {
    const free = places.find((sign) => isFree(sign, scenery, options.widthMm));
    if (!free) return [];
    scenery = withSign(scenery, free);
    return [free];
  });
  const signs = [...content.signs, ...loose].flatMap(({ items }) => items);
  return { page, content, scenery, items: [...signs, ...measures.items] };
}

function roomsOf({ items, room }: Sign): readonly Box[] {
  return room ? [room] : wordBoxes(items);
}

function withSign(scenery: Scenery, sign: Sign): Scenery {
  return {
    ...scenery,
    boxes: [...scenery.boxes, ...roomsOf(sign)],
    lines: [...scenery.lines, ...linesOf(sign.items)],
  };
}

function isFree(sign: Sign, { boxes, lines, shapes }: Scenery, widthMm: number): boolean {
  return roomsOf(sign).every(
    (room) =>
      room.left >= 0 &&
      room.right <= widthMm &&
      boxes.every((box) => !overlaps(box, grown(room, 0.5))) &&
      lines.every((line) => !segmentMeetsBox(line, grown(room, 0.4))) &&
      shapes.every((shape) => !outlineMeetsBox(shape, room)),
  );
}

function balloonsOn(
  { page, content, scenery }: Draft,
  lettered: readonly Lettered[],
  { margin }: FlatKind,
  { letters, widthMm }: FlatOptions,
): readonly SceneItem[] {
  const targets = targetsOf(lettered, { letters, roles: content.roles, balloons: 'on-parts' });
  return placeCallouts(
    targets,
    { left: 0, right: widthMm, top: 0, bottom: page.box.bottom + margin.bottom },
    scenery,
  );
}

function pageOf(assembly: Assembly, { kind, spots }: FlatKind, widthMm: number, margin: Margin): FlatPage {
  const measured = assembly.measures.filter((measure) => measure.in === kind);
  const direction = directionOf(kind, assembly.hemisphere);
  const flat = boundsOf(
    [...spots, ...measured.flatMap(({ from, to }) => [from, to])].map((spot) =>
      project({ ...direction, scale: 1, origin: { x: 0, y: 0 } }, spot),
    ),
  );
  const roomMm = Math.max(10, widthMm - margin.left - margin.right);
  const scale = Math.min(roomMm / (flat.right - flat.left), tallestMm[kind] / (flat.bottom - flat.top));
  const spareMm = roomMm - scale * (flat.right - flat.left);
  const origin = {
    x: margin.left + spareMm / 2 - scale * flat.left,
    y: margin.top - scale * flat.top,
  };
  const camera = { ...direction, scale, origin };
  return {
    camera,
    widthMm,
    box: {
      left: origin.x + scale * flat.left,
      right: origin.x + scale * flat.right,
      top: margin.top,
      bottom: origin.y + scale * flat.bottom,
    },
    at: (spot) => project(camera, spot),
  };
}

/** All that ink takes up, words as wide as they may come out. */
export function extentOf(items: readonly SceneItem[]): Box {
  const corners = items.flatMap((item): readonly Point[] => {
    switch (item.kind) {
      case 'circle':
        return [
          { x: item.x - item.radius, y: item.y - item.radius },
          { x: item.x + item.radius, y: item.y + item.radius },
        ];
      case 'text': {
        const [{ left, right, top, bottom }] = wordBoxes([item]) as [Box];
        return [
          { x: left, y: top },
          { x: right, y: bottom },
        ];
      }
      case 'path':
        return item.commands.flatMap((command): readonly Point[] => {
          if (command[0] === 'Z') return [];
          const [x, y] = command.slice(-2) as [number, number];
          return [{ x, y }];
        });
    }
  });
  return boundsOf(corners);
}
