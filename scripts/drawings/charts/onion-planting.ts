/**
 * How deep and how far apart onions go into the soil, seen from the side with the soil cut open: transplants and sets
 * at one scale. Depth is measured from the surface to the base of the plant.
 */
import { dotsInside } from '../hatch.ts';
import { arrowHead, circle, path, placed, rectanglePoints, text, type Point } from '../path.ts';
import type { PathCommand, Scene, SceneItem } from '../scene.ts';
import { box, level, lines, textLines, upright, type Rectangle } from './shapes.ts';
import { estimateTextWidthMm, lineMm, wrapText, type Box } from './text-width.ts';

export interface PlantedOnion {
  /** "Transplants" or "Sets". */
  readonly caption: string;
  /** From the surface to the base of the plant, 5 to 100 mm. */
  readonly depthMm: number;
  readonly depthLabel: string;
  /** From plant to plant along the row, 25 to 300 mm. */
  readonly spacingMm: number;
  readonly spacingLabel: string;
  /** Of the stem of a transplant, or of the bulb of a set. */
  readonly thicknessMm: number;
}

export interface OnionPlantingOptions {
  readonly id: string;
  /** From 90 mm the two stand side by side, below that one over the other; at least 50 mm. */
  readonly widthMm: number;
  readonly transplant: PlantedOnion;
  readonly set: PlantedOnion;
  readonly alternative: string;
}

export function onionPlanting({ id, widthMm, transplant, set, alternative }: OnionPlantingOptions): Scene {
  const isWide = widthMm >= 90;
  const panelMm = isWide ? (widthMm - panelGapMm) / 2 : widthMm;
  const plants = [
    { plant: transplant, draw: drawTransplant, aboveMm: leafMm, bulge: bulbBulge },
    { plant: set, draw: drawSet, aboveMm: isWide ? leafMm : 3, bulge: 1 },
  ];
  const scale = Math.min(...plants.map(({ plant, bulge }) => scaleFor(plant, bulge, panelMm)));
  const items: SceneItem[] = [];
  const deepestMm = Math.max(...plants.map(({ plant }) => plant.depthMm)) * scale;
  let footMm = 0;
  plants.forEach(({ plant, draw, aboveMm }, index) => {
    const left = isWide ? index * (panelMm + panelGapMm) : 0;
    const topMm = isWide || index === 0 ? 0 : footMm + 5;
    const panel = drawPanel({ plant, draw, aboveMm, scale, left, topMm, widthMm: panelMm, deepestMm });
    items.push(...panel.items);
    footMm = Math.max(footMm, panel.footMm);
  });
  return { id, widthMm, heightMm: footMm, alternative, items };
}

type DrawPlant = (base: Point, plant: PlantedOnion, scale: number) => readonly SceneItem[];

interface PanelOptions {
  readonly plant: PlantedOnion;
  readonly draw: DrawPlant;
  readonly aboveMm: number;
  /** Millimetres on paper for one millimetre in the bed. */
  readonly scale: number;
  readonly left: number;
  readonly topMm: number;
  readonly widthMm: number;
  readonly deepestMm: number;
}

interface Part {
  readonly items: readonly SceneItem[];
  readonly footMm: number;
}

/** So that two plants fit beside the words of their depth, and neither is broader than its place. */
function scaleFor(plant: PlantedOnion, bulge: number, panelMm: number): number {
  const broadest = (2 * plantReachMm - 0.6) / (plant.thicknessMm * bulge);
  return Math.min(0.42, broadest, (panelMm - depthColumnMm(plant) - 2 * plantReachMm) / plant.spacingMm);
}

const depthWords = ({ depthLabel }: PlantedOnion): readonly string[] => wrapText(depthLabel, 'label', 23);
const depthWordsMm = (plant: PlantedOnion): number =>
  Math.max(10, ...depthWords(plant).map((part) => estimateTextWidthMm(part, 'label')));
const depthColumnMm = (plant: PlantedOnion): number => depthWordsMm(plant) + 4.5;

function drawPanel(options: PanelOptions): Part {
  const { plant, draw, aboveMm, scale, left, topMm, widthMm, deepestMm } = options;
  const caption = wrapText(plant.caption, 'strong', widthMm);
  const captionMm = caption.length * lineMm;
  const surface = topMm + captionMm + 1 + aboveMm;
  const soilFoot = surface + Math.max(deepestMm + rootMm, depthWords(plant).length * lineMm) + 1.5;
  const base = surface + plant.depthMm * scale;
  const first = left + depthColumnMm(plant) + plantReachMm;
  const places = [first, first + plant.spacingMm * scale];
  const spacing = spacingDimension(plant, places as [number, number], base, soilFoot, { left, widthMm });
  const depth = depthDimension(plant, first, surface, base, left);
  return {
    items: [
      ...textLines(left, topMm + captionMm / 2, caption, { style: 'strong', hue: 'green' }),
      ...soil({ x: left, y: surface, width: widthMm, height: soilFoot - surface }, [
        depth.clear,
        ...places.map((x) => around(x, surface, base + rootMm, plant.thicknessMm * scale)),
      ]),
      ...places.flatMap((x) => draw({ x, y: base }, plant, scale)),
      ...depth.items,
      ...spacing.items,
    ],
    footMm: spacing.footMm,
  };
}

/** A cut through soil: a heavy surface, a tint, and grains that keep clear of what stands in it. */
function soil(area: Rectangle, clear: readonly Box[]): readonly SceneItem[] {
  const { x, y, width, height } = area;
  const grains = dotsInside(rectanglePoints(x, y, width, height), 4.2, 1).filter(
    (grain) =>
      !clear.some(
        ({ left, right, top, bottom }) =>
          grain.x > left - 1 && grain.x < right + 1 && grain.y > top - 1 && grain.y < bottom + 1,
      ),
  );
  return [
    box(area, { fill: 'tint' }),
    ...grains.map((grain) => circle(grain, 0.2, { fill: 'ink' })),
    ...lines([level(y, x, x + width)], 'cut'),
  ];
}

function around(x: number, top: number, bottom: number, widthMm: number): Box {
  const reach = Math.max(2, widthMm / 2 + 0.6);
  return { left: x - reach, right: x + reach, top, bottom };
}

/** The measure stands at the left of the first plant, its words left of its line. */
function depthDimension(
  plant: PlantedOnion,
  plantX: number,
  surface: number,
  base: number,
  left: number,
): { readonly items: readonly SceneItem[]; readonly clear: Box } {
  const words = depthWords(plant);
  const wordsMm = words.length * lineMm;
  const x = Math.max(left + depthWordsMm(plant) + 2.4, plantX - plantReachMm - 2);
  const middle = Math.max((surface + base) / 2, surface + wordsMm / 2 + 0.6);
  return {
    items: [
      ...lines([level(base, x - 1.2, plantX - 1)], 'thin'),
      ...measure({ x, y: surface }, { x, y: base }),
      ...textLines(x - 1.6, middle, words, { anchor: 'end' }),
    ],
    clear: {
      left: x - 1.6 - depthWordsMm(plant),
      right: plantX,
      top: surface,
      bottom: Math.max(base, middle + wordsMm / 2),
    },
  };
}

/** The measure stands under the soil, its words under its line. */
function spacingDimension(
  { spacingLabel }: PlantedOnion,
  [from, to]: readonly [number, number],
  base: number,
  soilFoot: number,
  panel: { readonly left: number; readonly widthMm: number },
): Part {
  const y = soilFoot + 2.6;
  const halfMm = estimateTextWidthMm(spacingLabel, 'label') / 2;
  const middle = Math.min(
    Math.max((from + to) / 2, panel.left + halfMm),
    panel.left + panel.widthMm - halfMm,
  );
  const baseline = y + 4.2;
  return {
    items: [
      ...lines(
        [from, to].map((x) => upright(x, base + rootMm + 0.8, y + 1.2)),
        'thin',
      ),
      ...measure({ x: from, y }, { x: to, y }),
      text({ x: middle, y: baseline }, spacingLabel, { anchor: 'middle' }),
    ],
    footMm: baseline + 1.2,
  };
}

/** A dimension line with a head at each end; the heads turn outward where there is no room between them. */
function measure(from: Point, to: Point): readonly SceneItem[] {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const along = { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
  const back = { x: -along.x, y: -along.y };
  const head = Math.min(1.8, length / 2.2);
  return [...lines([[from, to]], 'thin'), arrowHead(from, back, head), arrowHead(to, along, head)];
}

/** A stem with a slight bulb, three leaves and short roots; the leaves are cut off at the height of the drawing. */
function drawTransplant(
  base: Point,
  { thicknessMm, depthMm }: PlantedOnion,
  scale: number,
): readonly SceneItem[] {
  const half = Math.max(0.7, (thicknessMm * scale) / 2);
  const depth = depthMm * scale;
  const neck = depth + 4;
  const bulb = half * bulbBulge;
  const stem: readonly PathCommand[] = [
    ['M', -half, -neck],
    ['C', -half, -depth * 0.6, -bulb, -half * 2.4, -bulb, -half * 1.2],
    ['C', -bulb, -0.3, -half * 0.5, 0, 0, 0],
    ['C', half * 0.5, 0, bulb, -0.3, bulb, -half * 1.2],
    ['C', bulb, -half * 2.4, half, -depth * 0.6, half, -neck],
  ];
  const tip = depth + leafMm - 1;
  const leaves: readonly (readonly PathCommand[])[] = [
    leaf(-half, half * 0.1, -neck, -plantReachMm + 0.4, -tip + 5),
    leaf(-half * 0.1, half, -neck, plantReachMm - 0.8, -tip + 3),
    leaf(-half * 0.7, half * 0.7, -neck, 0.6, -tip),
  ];
  return [
    ...roots(base),
    ...leaves.map((commands) =>
      path(placed(commands, base), { fill: 'paper', stroke: 'seen', hue: 'green' }),
    ),
    path(placed([...stem, ['Z']], base), { fill: 'paper' }),
    path(placed(stem, base), { stroke: 'seen', hue: 'green' }),
  ];
}

/** A slender blade from a foot on the stem to its tip. */
function leaf(
  footLeft: number,
  footRight: number,
  foot: number,
  tipX: number,
  tipY: number,
): readonly PathCommand[] {
  const rise = foot - tipY;
  return [
    ['M', footLeft, foot],
    ['C', footLeft, foot - rise * 0.45, tipX * 0.7 - 0.5, foot - rise * 0.7, tipX, tipY],
    ['C', tipX * 0.7 + 0.7, foot - rise * 0.6, footRight, foot - rise * 0.4, footRight, foot],
  ];
}

/** A small dry bulb with its tip up. */
function drawSet(base: Point, { thicknessMm }: PlantedOnion, scale: number): readonly SceneItem[] {
  const half = Math.max(1, (thicknessMm * scale) / 2);
  const outline: readonly PathCommand[] = [
    ['M', -half * 0.12, -half * 2.75],
    ['C', -half * 0.2, -half * 2.1, -half, -half * 1.8, -half, -half],
    ['C', -half, -half * 0.35, -half * 0.45, 0, 0, 0],
    ['C', half * 0.45, 0, half, -half * 0.35, half, -half],
    ['C', half, -half * 1.8, half * 0.2, -half * 2.1, half * 0.12, -half * 2.75],
    ['Z'],
  ];
  const skin: readonly PathCommand[] = [
    ['M', -half * 0.05, -half * 2.3],
    ['C', -half * 0.35, -half * 1.7, -half * 0.55, -half * 1, -half * 0.18, -half * 0.15],
    ['M', half * 0.05, -half * 2.3],
    ['C', half * 0.35, -half * 1.7, half * 0.55, -half * 1, half * 0.18, -half * 0.15],
  ];
  return [
    path(placed(outline, base), { fill: 'paper', stroke: 'seen', hue: 'green' }),
    path(placed(skin, base), { stroke: 'thin', hue: 'green' }),
  ];
}

function roots(base: Point): readonly SceneItem[] {
  const strands = [-1.6, -0.8, 0.1, 0.9, 1.7].flatMap((reach): readonly PathCommand[] => [
    ['M', reach * 0.2, 0],
    ['C', reach * 0.6, rootMm * 0.3, reach * 0.7, rootMm * 0.6, reach, rootMm * (1 - Math.abs(reach) * 0.12)],
  ]);
  return [path(placed(strands, base), { stroke: 'thin', hue: 'green' })];
}

const panelGapMm = 6;

/** How much thicker than its stem a transplant is at its foot. */
const bulbBulge = 1.5;

/** Height of the leaves over the soil on paper. */
const leafMm = 21;
const rootMm = 4;

/** How far a plant reaches to each side on paper. */
const plantReachMm = 5;
