/** Rules, bars and boxes: the lines of the page, all of them artifacts. */
import type { ColourName, Design } from '../document/design.ts';
import type { PathCommand } from '../drawings/scene.ts';
import type { Ink, Mark, MarkPlace } from './items.ts';
import { colour, type Context } from './measure.ts';

export interface RuleOptions {
  readonly weight: Exclude<keyof Design['line'], 'hiddenDashPt'>;
  readonly hue?: ColourName;
  readonly dashed?: boolean;
  readonly place?: MarkPlace;
}

export const horizontalRule = (
  x: number,
  y: number,
  width: number,
  context: Context,
  options: RuleOptions,
): Mark =>
  stroked(
    [
      ['M', x, y],
      ['L', x + width, y],
    ],
    context,
    options,
  );

export const verticalRule = (
  x: number,
  y: number,
  height: number,
  context: Context,
  options: RuleOptions,
): Mark =>
  stroked(
    [
      ['M', x, y],
      ['L', x, y + height],
    ],
    context,
    options,
  );

export const filledBox = (x: number, y: number, width: number, height: number, fill: string): Mark => ({
  kind: 'path',
  place: 'layout',
  commands: rectangle(x, y, width, height),
  fill,
});

export const strokedBox = (
  x: number,
  y: number,
  width: number,
  height: number,
  context: Context,
  options: RuleOptions,
): Mark => stroked(rectangle(x, y, width, height), context, options);

function stroked(commands: readonly PathCommand[], context: Context, options: RuleOptions): Mark {
  const { line } = context.design;
  const stroke: Ink = {
    colour: colour(context, options.hue ?? 'rule'),
    widthPt: line[options.weight],
    ...(options.dashed ? { dashPt: line.hiddenDashPt } : {}),
  };
  return { kind: 'path', place: options.place ?? 'layout', commands, stroke };
}

function rectangle(x: number, y: number, width: number, height: number): PathCommand[] {
  return [['M', x, y], ['L', x + width, y], ['L', x + width, y + height], ['L', x, y + height], ['Z']];
}
