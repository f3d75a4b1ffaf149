import { pointsPerMm, type PathCommand, type Scene, type SceneItem } from '../drawings/scene.ts';
import { classes, element, inRow, text, type Markup } from './markup.ts';

/**
 * A scene as inline SVG, one element for each item, in order. Units inside are millimetres of the printed page.
 *
 * The width is in em of running text, so a drawing is true to size on paper and keeps its proportion to the text
 * on a screen. Lines, fills and hues are classes: the style sheet gives them weight and colour, on dark screens
 * too. What is told aloud is the alternative alone; the words inside can be selected but are not told again.
 */
export function renderDrawing(scene: Scene, { textSizePt }: { readonly textSizePt: number }): Markup {
  const em = (mm: number): string => `${round((mm * pointsPerMm) / textSizePt)}em`;
  return element(
    'svg',
    {
      class: `drawing ${sizeOf(scene)}`,
      role: 'img',
      'aria-label': scene.alternative,
      viewBox: `0 0 ${round(scene.widthMm)} ${round(scene.heightMm)}`,
      width: em(scene.widthMm),
      height: em(scene.heightMm),
    },
    element('g', { 'aria-hidden': 'true' }, inRow(scene.items.map(renderItem))),
  );
}

/** Whether a drawing is broader than a phone can show with its words large enough to read. */
export function isBroad(scene: Scene): boolean {
  return sizeOf(scene) !== 'drawing-small';
}

/** The style sheet keeps each size from shrinking below about three quarters of itself. */
function sizeOf({ widthMm }: Scene): 'drawing-small' | 'drawing-middle' | 'drawing-broad' {
  return widthMm <= 90 ? 'drawing-small' : widthMm <= 130 ? 'drawing-middle' : 'drawing-broad';
}

function renderItem(item: SceneItem): Markup {
  switch (item.kind) {
    case 'path':
      return element('path', { class: shapeClasses(item), d: pathData(item.commands) });
    case 'circle':
      return element('circle', {
        class: shapeClasses(item),
        cx: round(item.x),
        cy: round(item.y),
        r: round(item.radius),
      });
    case 'text':
      return element(
        'text',
        {
          class: classes(`words-${item.style}`, `anchor-${item.anchor}`, hueClass(item)),
          x: round(item.x),
          y: round(item.y),
        },
        text(item.text),
      );
  }
}

function shapeClasses(item: Extract<SceneItem, { kind: 'path' | 'circle' }>): string | undefined {
  return classes(
    item.stroke && `line-${item.stroke}`,
    item.fill ? `fill-${item.fill}` : 'fill-none',
    hueClass(item),
  );
}

function hueClass({ hue }: SceneItem): string | undefined {
  return hue === undefined || hue === 'ink' ? undefined : `hue-${hue}`;
}

function pathData(commands: readonly PathCommand[]): string {
  return commands.map(([letter, ...numbers]) => letter + numbers.map(round).join(' ')).join('');
}

/** To a hundredth of a millimetre, finer than any printer; never "-0". */
function round(value: number): number {
  return Math.round(value * 100) / 100 + 0;
}
