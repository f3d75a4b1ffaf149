import {
  pointsPerMm,
  type Fill,
  type Hue,
  type PathCommand,
  type Scene,
  type SceneItem,
  type Stroke,
} from '../drawings/scene.ts';
import { byFace } from './inline.ts';
import { printable } from './fonts.ts';
import type { Ink, Mark, MarkPlace } from './items.ts';
import { colour, type Context } from './measure.ts';
import { plainWidth } from './text.ts';

export interface SceneFrame {
  /** Left edge on the page. */
  readonly x: number;
  readonly scale: number;
  readonly place: MarkPlace;
}

/** The items of a scene as marks, in order. Lines and words keep their size at any scale. */
export function sceneMarks(scene: Scene, frame: SceneFrame, context: Context): Mark[] {
  return scene.items.flatMap((item) => itemMarks(item, frame, context));
}

function itemMarks(item: SceneItem, frame: SceneFrame, context: Context): Mark[] {
  switch (item.kind) {
    case 'path':
      return [shape(item.commands, item, frame, context)];
    case 'circle':
      return [shape(circlePath(item.x, item.y, item.radius), item, frame, context)];
    case 'text':
      return textMarks(item, frame, context);
  }
}

function shape(
  commands: readonly PathCommand[],
  item: { readonly stroke?: Stroke; readonly fill?: Fill; readonly hue?: Hue },
  frame: SceneFrame,
  context: Context,
): Mark {
  const hue = colour(context, item.hue ?? 'ink');
  return {
    kind: 'path',
    place: frame.place,
    commands: commands.map((command) => onPage(command, frame)),
    ...(item.stroke ? { stroke: ink(item.stroke, hue, context) } : {}),
    ...(item.fill ? { fill: item.fill === 'ink' ? hue : colour(context, item.fill) } : {}),
  };
}

function ink(stroke: Stroke, hue: string, context: Context): Ink {
  const { line } = context.design;
  const widthPt = { cut: line.cutPt, seen: line.seenPt, thin: line.thinPt, hidden: line.thinPt }[stroke];
  return { colour: hue, widthPt, ...(stroke === 'hidden' ? { dashPt: line.hiddenDashPt } : {}) };
}

function textMarks(item: Extract<SceneItem, { kind: 'text' }>, frame: SceneFrame, context: Context): Mark[] {
  const { sizePt } = context.design.type[item.style === 'large' ? 'text' : 'small'];
  const face = item.style === 'label' ? 'regular' : 'semibold';
  const width = plainWidth(item.text, context, { sizePt, leadingPt: sizePt, face });
  let x =
    frame.x + item.x * pointsPerMm * frame.scale - { start: 0, middle: width / 2, end: width }[item.anchor];
  return byFace(printable(item.text), face, context.fonts).map((part): Mark => {
    const mark: Mark = {
      kind: 'text',
      place: frame.place,
      x,
      y: item.y * pointsPerMm * frame.scale,
      text: part.text,
      face: part.face,
      sizePt,
      colour: colour(context, item.hue ?? 'ink'),
    };
    x += context.fonts.width(part.face, part.text, sizePt);
    return mark;
  });
}

function onPage(command: PathCommand, { x, scale }: SceneFrame): PathCommand {
  const across = (value: number): number => x + value * pointsPerMm * scale;
  const down = (value: number): number => value * pointsPerMm * scale;
  switch (command[0]) {
    case 'M':
    case 'L':
      return [command[0], across(command[1]), down(command[2])];
    case 'C':
      return [
        'C',
        across(command[1]),
        down(command[2]),
        across(command[3]),
        down(command[4]),
        across(command[5]),
        down(command[6]),
      ];
    case 'Z':
      return command;
  }
}

/** Distance of the control points of a quarter circle, as a share of the radius (4/3 · (√2 − 1)). */
const quarter = (4 / 3) * (Math.SQRT2 - 1);

/** A circle as four cubic curves. */
export function circlePath(x: number, y: number, radius: number): PathCommand[] {
  const k = radius * quarter;
  return [
    ['M', x + radius, y],
    ['C', x + radius, y + k, x + k, y + radius, x, y + radius],
    ['C', x - k, y + radius, x - radius, y + k, x - radius, y],
    ['C', x - radius, y - k, x - k, y - radius, x, y - radius],
    ['C', x + k, y - radius, x + radius, y - k, x + radius, y],
    ['Z'],
  ];
}
