/**
 * The frame cut through from south to north, seen toward the west, so north is on the right. What is cut is heavy: two
 * walls, a sash, the planting mix. The side wall beyond is thin.
 */
import type { FrameGeometry, PlacedBale, PlacedSash } from '../../structures/geometry.ts';
import { baselineFor, dimension, wordsSize, type LengthWords } from '../dimension.ts';
import { estimateTextWidthMm, overlaps, textBox, type TextItem } from '../charts/text-width.ts';
import { dotsInside, hatchLines } from '../hatch.ts';
import { circle, path, polygon, polyline, segment, text, type Point } from '../path.ts';
import type { PathCommand, Scene, SceneItem } from '../scene.ts';
import { balloon, callout, sun } from '../symbols.ts';
import { isAlongTallWall } from './hardware.ts';
import { railMm } from './panes.ts';
import { shoot } from './shoot.ts';
import { strawStrokes } from './straw.ts';
import type { FrameWords, PartLetters, SownRow } from './words.ts';

export interface SectionOptions {
  readonly id: string;
  readonly alternative: string;
  readonly words: FrameWords;
  readonly letters: PartLetters;
  readonly rows: readonly SownRow[];
  /** 120 to 175. Default 150. */
  readonly widthMm?: number;
}

/** Room beside the frame, above the higher wall and below the deepest stake. */
const margin = { side: 24, top: 23, bottom: 3 } as const;

export function frameSection(geometry: FrameGeometry, options: SectionOptions): Scene {
  const { widthMm = 150 } = options;
  const page = placeOnPage(geometry, widthMm);
  const stage = { ...options, geometry, page, sash: longest(geometry) };
  return {
    id: options.id,
    widthMm,
    heightMm: page.heightMm,
    alternative: options.alternative,
    items: [
      ...earth(stage),
      ...sideWallBeyond(stage),
      ...plantingMix(stage),
      ...cutWalls(stage),
      ...ridge(stage),
      ...stakesInWalls(stage),
      ...cutScreen(stage),
      ...cutSash(stage),
      ...angle(stage),
      ...sizes(stage),
      ...signs(stage),
    ],
  };
}

interface Page {
  readonly at: (y: number, z: number) => Point;
  readonly scale: number;
  readonly widthMm: number;
  readonly heightMm: number;
  /** Toward the pole on the page: 1 is right, -1 is left. */
  readonly poleward: 1 | -1;
}

interface Stage extends SectionOptions {
  readonly geometry: FrameGeometry;
  readonly page: Page;
  readonly sash: PlacedSash;
}

function placeOnPage(geometry: FrameGeometry, widthMm: number): Page {
  const lowestY = Math.min(-geometry.sideThicknessMm, ...geometry.sashes.map(({ lower }) => lower.y));
  const highestY = geometry.outsideDepthMm - geometry.sideThicknessMm;
  const scale = (widthMm - 2 * margin.side) / (highestY - lowestY);
  const deepest = Math.min(0, ...geometry.stakes.map(({ bottomMm }) => bottomMm));
  const groundY = margin.top + geometry.polewardHeightMm * scale;
  const north = geometry.hemisphere === 'north';
  return {
    scale,
    widthMm,
    heightMm: groundY - deepest * scale + margin.bottom,
    poleward: north ? 1 : -1,
    at: (y, z) => ({
      x: north ? margin.side + (y - lowestY) * scale : margin.side + (highestY - y) * scale,
      y: groundY - z * scale,
    }),
  };
}

/** The sash that reaches furthest: it shows best how the others lie too. */
function longest({ sashes }: FrameGeometry): PlacedSash {
  return sashes.reduce((a, b) => (b.lengthMm > a.lengthMm ? b : a));
}

function rectangleOf({ page }: Stage, from: Point, to: Point): readonly Point[] {
  return [page.at(from.x, from.y), page.at(to.x, from.y), page.at(to.x, to.y), page.at(from.x, to.y)];
}

/** The ground line, with the short strokes that say earth below it. */
function earth({ page }: Stage): readonly SceneItem[] {
  const y = page.at(0, 0).y;
  const [left, right] = [4, page.widthMm - 4];
  const band = [
    { x: left, y },
    { x: right, y },
    { x: right, y: y + 1.8 },
    { x: left, y: y + 1.8 },
  ];
  return [
    path(hatchLines(band, { angleDeg: 45, spacingMm: 1.5 }), { stroke: 'thin' }),
    path(segment({ x: left, y }, { x: right, y }), { stroke: 'cut' }),
  ];
}

function sideWallBeyond(stage: Stage): readonly SceneItem[] {
  const { geometry, page } = stage;
  const beyond = geometry.bales.filter(({ wall }) => wall === 'west');
  const wedge = geometry.wedges.find(({ wall }) => wall === 'west');
  const bales = beyond.map(({ box: { from, to } }) =>
    path(polygon(rectangleOf(stage, { x: from.y, y: from.z }, { x: to.y, y: to.z })), {
      stroke: 'thin',
      fill: 'paper',
    }),
  );
  if (!wedge) return bales;
  const corner = (share: number): Point =>
    page.at(wedge.depthMm * share, wedge.baseMm + wedge.riseMm * share);
  const straw = [
    page.at(wedge.depthMm * 0.3, wedge.baseMm),
    page.at(wedge.depthMm * 0.62, wedge.baseMm),
    corner(0.62),
    corner(0.3),
  ];
  const outline = [corner(0), page.at(wedge.depthMm, wedge.baseMm), corner(1)];
  return [
    ...bales,
    path(polygon(outline), { stroke: 'thin', fill: 'paper' }),
    path([...strawStrokes(straw, 2.2)], { stroke: 'thin' }),
  ];
}

function plantingMix(stage: Stage): readonly SceneItem[] {
  const { geometry, page, letters, rows, words } = stage;
  const { insideDepthMm, soilDepthMm } = geometry;
  const outline = rectangleOf(stage, { x: 0, y: 0 }, { x: insideDepthMm, y: soilDepthMm });
  const letterAt = page.at(insideDepthMm * 0.09, soilDepthMm / 2);
  const depthAt = soilDimensionAt(stage);
  const depthWords = wordsSize(soilWords(stage));
  const nameAt = page.at(insideDepthMm * 0.34, soilDepthMm / 2);
  const nameWidth = estimateTextWidthMm(words.plantingMix ?? '', 'label');
  const widthMm = insideDepthMm * page.scale;
  const named =
    words.plantingMix !== undefined &&
    nameWidth < widthMm * 0.36 &&
    widthMm * 0.34 + nameWidth / 2 + 1 < widthMm * soilDimensionShare(stage);
  const kept: readonly Taken[] = [
    { centre: letterAt, halfWidth: 3.2, halfHeight: 3.2 },
    {
      centre: { x: depthAt.x + page.poleward * (1.2 + depthWords.width / 2), y: depthAt.y },
      halfWidth: depthWords.width / 2 + 1.6,
      halfHeight: 5,
    },
    ...(named ? [{ centre: nameAt, halfWidth: nameWidth / 2 + 1, halfHeight: 2.2 }] : []),
  ];
  const letter = letters['soil-litres'];
  return [
    path(polygon(outline), { stroke: 'cut', fill: 'shade' }),
    ...dotsInside(outline, 2.2, 0.8)
      .filter((dot) => !kept.some((taken) => covers(taken, dot)))
      .map((dot) => circle(dot, 0.24, { fill: 'ink' })),
    ...(letter ? balloon(letterAt, letter) : []),
    ...(named
      ? [text({ x: nameAt.x, y: baselineFor(nameAt.y) }, words.plantingMix ?? '', { anchor: 'middle' })]
      : []),
    ...rows.flatMap(({ distanceFromPolewardMm, tall }) =>
      shoot(page.at(insideDepthMm - distanceFromPolewardMm, soilDepthMm), tall ? 7.5 : 3.2),
    ),
  ];
}

/** The depth of the mix in words, on one line where the mix is not deep enough for two. */
function soilWords({ geometry, page, words }: Stage): LengthWords {
  const said = words.length(geometry.soilDepthMm);
  const fits = wordsSize(said).height + 1.6 <= geometry.soilDepthMm * page.scale;
  return fits || said.second === undefined ? said : { first: `${said.first} (${said.second})` };
}

/** Room that words or a letter take, which dots stay out of. */
interface Taken {
  readonly centre: Point;
  readonly halfWidth: number;
  readonly halfHeight: number;
}

function covers({ centre, halfWidth, halfHeight }: Taken, dot: Point): boolean {
  return Math.abs(dot.x - centre.x) < halfWidth && Math.abs(dot.y - centre.y) < halfHeight;
}

/** Middle of the dimension line of the soil depth. */
function soilDimensionAt(stage: Stage): Point {
  const { geometry, page } = stage;
  return page.at(geometry.insideDepthMm * soilDimensionShare(stage), geometry.soilDepthMm / 2);
}

/** Nearer to the low wall where its words would run into the tall one. */
function soilDimensionShare(stage: Stage): number {
  const widthMm = stage.geometry.insideDepthMm * stage.page.scale;
  return Math.max(0.2, Math.min(0.58, 1 - (wordsSize(soilWords(stage)).width + 3) / widthMm));
}

function cutWalls(stage: Stage): readonly SceneItem[] {
  const { geometry, page, letters } = stage;
  const through = (wall: string): readonly PlacedBale[] =>
    geometry.bales
      .filter((bale) => bale.wall === wall)
      .filter(({ course }, index, list) => list.findIndex((other) => other.course === course) === index);
  return (['equator', 'poleward'] as const).flatMap((wall) =>
    through(wall).flatMap(({ box: { from, to }, lay, course }) => {
      const outline = rectangleOf(stage, { x: from.y, y: from.z }, { x: to.y, y: to.z });
      const strings = [0.25, 0.75].flatMap((share) =>
        lay === 'flat'
          ? [
              page.at(from.y + (to.y - from.y) * share, from.z),
              page.at(from.y + (to.y - from.y) * share, to.z),
            ]
          : [
              page.at(from.y, from.z + (to.z - from.z) * share),
              page.at(to.y, from.z + (to.z - from.z) * share),
            ],
      );
      const letterAt = page.at(
        from.y + (to.y - from.y) * (wall === 'equator' ? 0.22 : 0.76),
        from.z + (to.z - from.z) * 0.42,
      );
      const straw = strawStrokes(outline, 6.5, 2.1);
      return [
        path(polygon(outline), { stroke: 'cut', fill: 'tint' }),
        path(clearOf(straw, letterAt, 3.4), { stroke: 'thin' }),
        ...strings.map((spot) => circle(spot, 0.6, { fill: 'ink' })),
        ...(letters.bales && course === 0 ? balloon(letterAt, letters.bales) : []),
      ];
    }),
  );
}

/** Without the strokes that would touch a letter. */
function clearOf(strokes: readonly PathCommand[], spot: Point, radiusMm: number): readonly PathCommand[] {
  return strokes.filter((_, index) => {
    const [start, end] = [strokes[index - (index % 2)], strokes[index - (index % 2) + 1]];
    return [start, end].every((command) => {
      if (!command || command[0] === 'Z' || command[0] === 'C') return false;
      return Math.hypot(command[1] - spot.x, command[2] - spot.y) > radiusMm;
    });
  });
}

function stakesInWalls(stage: Stage): readonly SceneItem[] {
  const { geometry, page } = stage;
  return (['equator', 'poleward'] as const).flatMap((wall) => {
    const stake = geometry.stakes.find((other) => other.wall === wall);
    if (!stake) return [];
    const half = 19;
    const outline = [
      page.at(stake.y - half, stake.topMm),
      page.at(stake.y - half, stake.bottomMm + 90),
      page.at(stake.y, stake.bottomMm),
      page.at(stake.y + half, stake.bottomMm + 90),
      page.at(stake.y + half, stake.topMm),
    ];
    return [
      path(polyline(outline), { stroke: 'hidden' }),
      path(segment(outline[0]!, outline[4]!), { stroke: 'seen' }),
    ];
  });
}

/** A point of the sash in section: `down` from its upper end along the slope, `up` from its underside. */
function onSash({ sash, page, geometry }: Stage, down: number, up: number): Point {
  const slope = (geometry.slopeDeg * Math.PI) / 180;
  return page.at(
    sash.upper.y - down * Math.cos(slope) - up * Math.sin(slope),
    sash.upper.z - down * Math.sin(slope) + up * Math.cos(slope),
  );
}

/** Packed straw on the tall wall with its board, and the board that the sash is hinged to. */
function ridge(stage: Stage): readonly SceneItem[] {
  const { geometry, sash } = stage;
  const straw = geometry.ridge;
  const outline = straw
    ? rectangleOf(
        stage,
        { x: straw.fromY, y: straw.baseMm },
        { x: straw.toY, y: straw.baseMm + straw.heightMm },
      )
    : [];
  const strokes = strawStrokes(outline.length > 0 ? outline : noFace, 2.2);
  const boards = geometry.boards.filter(
    (board) => board.role !== 'filler-board' && isAlongTallWall(board) && board.sashes.includes(sash.id),
  );
  return [
    ...(straw && straw.heightMm > 1 ? [path(polygon(outline), { stroke: 'cut', fill: 'paper' })] : []),
    ...(strokes.length > 0 ? [path(strokes, { stroke: 'thin' })] : []),
    ...boards.map(({ under, up }) =>
      path(
        polygon(
          rectangleOf(stage, { x: under[0].y, y: under[0].z }, { x: under[2].y, y: under[0].z + up.z }),
        ),
        { stroke: 'cut', fill: 'shade' },
      ),
    ),
  ];
}

/** A face without any room, which no straw lies on. */
const noFace: readonly Point[] = [0, 1, 2, 3].map(() => ({ x: 0, y: 0 }));

/** The screen under the sash: its two rails, and the cloth between them. */
function cutScreen(stage: Stage): readonly SceneItem[] {
  const { sash } = stage;
  const { lengthMm, screenMm } = sash;
  if (screenMm === 0) return [];
  const rail = Math.min(40, lengthMm / 10);
  const piece = (from: number, to: number): SceneItem =>
    path(
      polygon([
        onSash(stage, from, -screenMm),
        onSash(stage, to, -screenMm),
        onSash(stage, to, 0),
        onSash(stage, from, 0),
      ]),
      { stroke: 'seen', fill: 'tint' },
    );
  return [
    piece(0, rail),
    piece(lengthMm - rail, lengthMm),
    path(segment(onSash(stage, rail, -screenMm / 2), onSash(stage, lengthMm - rail, -screenMm / 2)), {
      stroke: 'hidden',
    }),
  ];
}

function cutSash(stage: Stage): readonly SceneItem[] {
  const { sash } = stage;
  const { lengthMm, thicknessMm } = sash;
  const rail = railMm(sash);
  const wood = (from: number, to: number): SceneItem =>
    path(
      polygon([
        onSash(stage, from, 0),
        onSash(stage, to, 0),
        onSash(stage, to, thicknessMm),
        onSash(stage, from, thicknessMm),
      ]),
      { stroke: 'cut', fill: 'paper' },
    );
  const glass = (up: number): readonly PathCommand[] =>
    segment(onSash(stage, rail, up), onSash(stage, lengthMm - rail, up));
  return [
    path([...glass(thicknessMm * 0.35), ...glass(thicknessMm * 0.65)], { stroke: 'seen' }),
    wood(0, rail),
    wood(lengthMm / 2 - rail / 4, lengthMm / 2 + rail / 4),
    wood(lengthMm - rail, lengthMm),
  ];
}

/** The slope, as an arc from the level to the underside of the sash. */
function angle({ geometry, page, words }: Stage): readonly SceneItem[] {
  const { insideDepthMm, equatorHeightMm, slopeDeg } = geometry;
  const apex = page.at(0, equatorHeightMm);
  const radius = insideDepthMm * 0.76 * page.scale;
  const spots = Array.from({ length: 9 }, (_, index) => {
    const turn = (slopeDeg * Math.PI * index) / 8 / 180;
    return { x: apex.x + page.poleward * radius * Math.cos(turn), y: apex.y - radius * Math.sin(turn) };
  });
  const middle = spots[4]!;
  return [
    path(polyline(spots), { stroke: 'seen' }),
    text({ x: middle.x + page.poleward * 1.4, y: baselineFor(middle.y) }, words.angle(slopeDeg), {
      anchor: page.poleward === 1 ? 'start' : 'end',
      style: 'strong',
    }),
  ];
}

function sizes(stage: Stage): readonly SceneItem[] {
  return [...heights(stage), ...alongSash(stage), ...depths(stage)];
}

/** Beside each wall: its height, and how deep its stakes stand in the ground. */
function heights({ geometry, page, words }: Stage): readonly SceneItem[] {
  const { sideThicknessMm, outsideDepthMm, equatorHeightMm, polewardHeightMm } = geometry;
  const walls = [
    { wall: 'equator', outer: -sideThicknessMm, height: equatorHeightMm, side: -page.poleward },
    {
      wall: 'poleward',
      outer: outsideDepthMm - sideThicknessMm,
      height: polewardHeightMm,
      side: page.poleward,
    },
  ] as const;
  return walls.flatMap(({ wall, outer, height, side }) => {
    const x = page.at(outer, 0).x + side * 6;
    const at = (z: number): Point => ({ x, y: page.at(0, z).y });
    const stake = geometry.stakes.find((other) => other.wall === wall);
    const toward = { x: side, y: 0 };
    return [
      ...dimension({
        from: at(0),
        to: at(height),
        corners: [page.at(outer, 0), page.at(outer, height)],
        words: words.length(height),
        toward,
      }),
      ...(stake
        ? dimension({
            from: at(0),
            to: at(stake.bottomMm),
            corners: [page.at(outer, 0), page.at(stake.y, stake.bottomMm)],
            words: words.length(-stake.bottomMm),
            toward,
          })
        : []),
    ];
  });
}

/** How far the sash lies on either wall, and above that its whole length. */
function alongSash(stage: Stage): readonly SceneItem[] {
  const { sash, words } = stage;
  const { lengthMm, thicknessMm, bearingPolewardMm, bearingEquatorMm, overhangMm } = sash;
  const above = (down: number, offMm: number): Point =>
    onSash(stage, down, thicknessMm + offMm / stage.page.scale);
  const toward = { x: 0, y: -1 };
  const lower = lengthMm - overhangMm;
  const offMm = words.bearing === undefined ? 4.6 : 7;
  const bearing = (from: number, to: number): readonly SceneItem[] => {
    const items = dimension({
      from: above(from, offMm),
      to: above(to, offMm),
      corners: [above(from, 0), above(to, 0)],
      words: {
        ...(words.bearing === undefined ? {} : { name: words.bearing }),
        ...words.length(Math.abs(to - from)),
      },
      toward,
      share: 'past-end',
    });
    return to > from ? aboveWallLine(items, stage) : items;
  };
  return [
    ...bearing(bearingPolewardMm, 0),
    ...bearing(lower - bearingEquatorMm, lower),
    ...dimension({
      from: above(0, offMm + 5),
      to: above(lengthMm, offMm + 5),
      corners: [above(0, offMm + 0.4), above(lengthMm, overhangMm > 0 ? 0 : offMm + 0.4)],
      words: words.length(lengthMm),
      toward,
    }),
  ];
}

/** Moves the words at the low end up, along the lines beside them, where the line of the wall's height would run through them. */
function aboveWallLine(items: readonly SceneItem[], { geometry, page }: Stage): readonly SceneItem[] {
  const wallLine = page.at(0, geometry.equatorHeightMm).y - 0.9;
  const bottom = Math.max(...items.flatMap((item) => (item.kind === 'text' ? [item.y] : [])));
  const up = bottom - wallLine;
  if (up <= 0) return items;
  const aside = page.poleward * up * Math.tan((geometry.slopeDeg * Math.PI) / 180);
  return items.map((item) => (item.kind === 'text' ? { ...item, x: item.x - aside, y: item.y - up } : item));
}

/** The bed from wall to wall, below the ground, and the depth of the planting mix. */
function depths(stage: Stage): readonly SceneItem[] {
  const { geometry, page, words } = stage;
  const { insideDepthMm, soilDepthMm } = geometry;
  const [near, far] = [page.at(0, 0), page.at(insideDepthMm, 0)];
  const soil = soilDimensionAt(stage);
  return [
    ...dimension({
      from: { x: near.x, y: near.y + 8 },
      to: { x: far.x, y: far.y + 8 },
      corners: [
        { x: near.x, y: near.y + 1.8 },
        { x: far.x, y: far.y + 1.8 },
      ],
      words: words.length(insideDepthMm),
      toward: { x: 0, y: 1 },
    }),
    ...dimension({
      from: { x: soil.x, y: page.at(0, 0).y },
      to: { x: soil.x, y: page.at(0, soilDepthMm).y },
      words: soilWords(stage),
      toward: { x: page.poleward, y: 0 },
    }),
  ];
}

function signs(stage: Stage): readonly SceneItem[] {
  const { geometry, page, letters, words } = stage;
  const ground = page.at(0, 0).y;
  const ends = [
    text({ x: 4, y: ground - 1.4 }, words.south, { style: 'strong' }),
    ...(words.ground === undefined ? [] : [text({ x: 4, y: ground + 5.6 }, words.ground)]),
    text({ x: page.widthMm - 4, y: ground - 1.4 }, words.north, { anchor: 'end', style: 'strong' }),
  ];
  const sunX = page.poleward === 1 ? 9 : page.widthMm - 9;
  const stake = geometry.stakes.find(({ wall }) => wall === 'poleward');
  return [
    ...ends,
    ...sun({ x: sunX, y: 9 }),
    sunName(stage, sunX),
    ...insideLetters(stage),
    ...(stake && letters.stakes
      ? callout(page.at(stake.y, stake.bottomMm * 0.5), { x: -page.poleward * 8, y: 4 }, letters.stakes)
      : []),
  ];
}

/** Under the sun, or beside it where a sash reaches far over the low wall and its words are there. */
function sunName(stage: Stage, sunX: number): SceneItem {
  const under = text({ x: sunX, y: 9 + 8.2 }, stage.words.sun, { anchor: 'middle' });
  const beside = text({ x: sunX + stage.page.poleward * 6, y: baselineFor(9) }, stage.words.sun, {
    anchor: stage.page.poleward === 1 ? 'start' : 'end',
  });
  const taken = alongSash(stage).flatMap((item) => (item.kind === 'text' ? [textBox(item)] : []));
  const box = textBox(under as TextItem);
  return taken.some((other) => overlaps(box, other)) ? beside : under;
}

/** Letters of the sash and of the loose straw, in the air of the bed above what grows in front. */
function insideLetters(stage: Stage): readonly SceneItem[] {
  const { geometry, page, letters, sash } = stage;
  const centreY = page.at(0, geometry.equatorHeightMm).y + 3.9;
  const named = (spot: Point, letter: string | undefined): readonly SceneItem[] =>
    letter === undefined ? [] : callout(spot, { x: page.poleward * 3.5, y: centreY - spot.y }, letter);
  const rise = geometry.polewardHeightMm - geometry.equatorHeightMm;
  return [
    ...named(onSash(stage, sash.lengthMm * 0.8, sash.thicknessMm / 2), letters.sashes),
    ...named(
      page.at(geometry.insideDepthMm * 0.46, geometry.equatorHeightMm + rise * 0.2),
      letters['loose-straw-bales'],
    ),
  ];
}
