import { plainText } from '../document/build.ts';
import type { Block, Step } from '../document/document.ts';
import { measureDrawing } from './figure.ts';
import { columns, group, piece, withBefore, withMarksOnFirst, type Item, type Mark } from './items.ts';
import { colour, inside, isFullWidth, type Context, type Measured } from './measure.ts';
import { horizontalRule } from './rules.ts';
import { baseline, plainLine, setText, typeStyle } from './text.ts';
import { headingTag, leaf, list, tag, type Tag } from './tags.ts';

type Steps = Extract<Block, { kind: 'steps' }>;

/** Share of the whole width that drawings take. */
const drawingShare = 0.42;
const numberColumnPt = 34;
const ruleGapPt = 9;

/** Numbered acts over the whole free width, each kept on one page, its drawing beside its words. */
export function measureSteps(block: Steps, context: Context): Measured {
  const level = context.levels.get(block) ?? 3;
  const measured = block.items.map((step) => measureStep(step, level, context));
  const gap = context.design.grid.baselinePt;
  const items = measured.flatMap(({ item }, index) => withBefore([item], index === 0 ? 0 : gap));
  return {
    items,
    tags: [
      list(
        'Decimal',
        measured.map(({ li }) => li),
      ),
    ],
  };
}

function measureStep(step: Step, level: number, context: Context): { item: Item; li: Tag } {
  const { grid } = context.design;
  const whole = context.freeWidth;
  const hasRoom = isFullWidth(context, whole);
  const drawingWidth = whole * drawingShare;
  const drawingGap = grid.gutterPt * 1.5;
  const wordsWidth = step.drawing && hasRoom ? whole - drawingWidth - drawingGap : context.width;
  const words = measureWords(
    step,
    level,
    inside(context, context.x + numberColumnPt, wordsWidth - numberColumnPt),
  );

  const place = leaf('Lbl');
  const label = tag('Lbl', [place], { actualText: context.furniture.step(step.number) });
  const number = stepNumber(step.number, context, place);
  const rule = horizontalRule(context.x, 0, whole, context, { weight: 'thinPt' });
  const title = `${context.furniture.step(step.number)}: ${plainText(step.title)}`;
  const labelled = withMarksOnFirst(words.items, [{ kind: 'outline', level, title }, ...number]);

  const drawing =
    step.drawing && measureDrawing(step.drawing, drawingContext(context, hasRoom, drawingWidth));
  const body = tag('LBody', [...words.tags, ...(drawing ? [drawing.tag] : [])]);
  const flow = drawing ? withDrawing(labelled, drawing.item, hasRoom, grid.baselinePt) : labelled;
  const opening: Item = { ...piece(ruleGapPt, [rule]), keepWithNext: true };
  return { item: group([opening, ...flow], { together: true }), li: tag('LI', [label, body]) };
}

function drawingContext(context: Context, hasRoom: boolean, drawingWidth: number): Context {
  if (hasRoom) return inside(context, context.x + context.freeWidth - drawingWidth, drawingWidth);
  return inside(context, context.x + numberColumnPt, context.width - numberColumnPt);
}

function withDrawing(words: readonly Item[], drawing: Item, hasRoom: boolean, gap: number): readonly Item[] {
  return hasRoom ? [columns([words, [drawing]])] : [...words, ...withBefore([drawing], gap / 2)];
}

/** Title, cautions, then the act: a caution is read before what it is about. */
function measureWords(step: Step, level: number, context: Context): Measured {
  const type = headingTag(level);
  const title = setText(step.title, context, { style: 'heading3', owner: type });
  const half = context.design.grid.baselinePt / 2;
  const cautions = step.cautions.map((item) =>
    context.measure([{ kind: 'caution', caution: item }], context),
  );
  const body = context.measure(step.body, context);
  return {
    items: [
      ...title.pieces.map((line) => ({ ...line, keepWithNext: true })),
      ...cautions.flatMap(({ items }) => withBefore(items, half)),
      ...withBefore(body.items, cautions.length > 0 ? half : context.design.grid.baselinePt / 6),
    ],
    tags: [tag(type, title.kids), ...cautions.flatMap(({ tags }) => tags), ...body.tags],
  };
}

/** A large number on the baseline of the step's title. */
function stepNumber(number: number, context: Context, place: ReturnType<typeof leaf>): Mark[] {
  const large = typeStyle(context, { style: 'keyNumber' });
  const title = typeStyle(context, { style: 'heading3' });
  const top = baseline(context, title) - baseline(context, large);
  return plainLine(String(number), { x: context.x, top, width: numberColumnPt }, context, {
    style: 'keyNumber',
    place,
  }).map((mark): Mark => (mark.kind === 'text' ? { ...mark, colour: colour(context, 'green') } : mark));
}
