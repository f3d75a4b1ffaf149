import type { Block } from '../document/document.ts';
import { pointsPerMm, type Scene } from '../drawings/scene.ts';
import { group, keptWithNext, piece, withBefore, type Item } from './items.ts';
import type { Context, Measured } from './measure.ts';
import { sceneMarks } from './scene-marks.ts';
import { setText } from './text.ts';
import { leaf, tag, type Leaf, type Tag } from './tags.ts';

type Figure = Extract<Block, { kind: 'figure' }>;

/** Of a scene, in points. */
export const naturalSize = ({ widthMm, heightMm }: Scene): { width: number; height: number } => ({
  width: widthMm * pointsPerMm,
  height: heightMm * pointsPerMm,
});

/** A drawing smaller than this share of its natural size has labels that may run into each other. */
export const leastScale = 0.85;

/** A drawing at its natural size with its caption under it; both stay on one page, which may be the next one. */
export function measureFigure(block: Figure, context: Context): Measured {
  const caption =
    block.caption && block.caption.length > 0
      ? setText(block.caption, context, { style: 'small', owner: 'Caption' })
      : undefined;
  const captionItems = caption ? withBefore(caption.pieces, context.design.grid.baselinePt / 3) : [];
  const captionHeight = captionItems.reduce(
    (sum, item) => sum + (item.kind === 'piece' ? item.height + item.before : 0),
    0,
  );
  const drawing = measureDrawing(block.scene, { ...context, pageHeight: context.pageHeight - captionHeight });
  const floating = (items: readonly Item[]): Item => group(items, { together: true, floats: true });
  if (!caption) return { items: [floating([drawing.item])], tags: [drawing.tag] };
  const kept = captionItems.map((item, index): Item =>
    item.kind === 'piece' && index < captionItems.length - 1 ? { ...item, keepWithNext: true } : item,
  );
  return {
    items: [floating([...keptWithNext([drawing.item]), ...kept])],
    tags: [tag('Div', [drawing.tag, tag('Caption', caption.kids)])],
  };
}

/**
 * Draws a scene at its natural size, or smaller where the column or the page is too small; its text keeps its
 * size. In the text columns a wide drawing may run into the free outer columns. `largest`, 1 or more, is how many times
 * its natural size it is drawn where there is room for that.
 */
export function measureDrawing(scene: Scene, context: Context, largest = 1): { item: Item; tag: Tag } {
  const natural = naturalSize(scene);
  const room = natural.width > context.width ? context.freeWidth : context.width;
  const scale = Math.min(largest, room / natural.width, context.pageHeight / natural.height);
  if (scale < leastScale) {
    context.report({
      what: 'drawing',
      id: scene.id,
      detail: `it is drawn at ${Math.round(scale * 100)} percent of its size, so that its words may touch`,
    });
  }
  const content: Leaf = leaf('Figure');
  const figure = tag('Figure', [content], { alternative: scene.alternative });
  const area = { x: context.x, y: 0, width: natural.width * scale, height: natural.height * scale };
  const marks = sceneMarks(scene, { x: context.x, scale, place: content }, context);
  return { item: piece(area.height, [{ kind: 'bounds', tag: figure, area }, ...marks]), tag: figure };
}
