/** Small drawings with titles, side by side, that together show how one thing is done. Sketches; not to one scale. */
import { estimateTextWidthMm, lineMm, wrapText } from '../../charts/text-width.ts';
import { placed, text, type Point } from '../../path.ts';
import type { Scene, SceneItem } from '../../scene.ts';

export interface Panel {
  /** Above it; broken into lines where it is long. */
  readonly title: string;
  readonly widthMm: number;
  readonly heightMm: number;
  /** With the origin at its top left corner, under the title. */
  readonly items: readonly SceneItem[];
}

export interface PanelsOptions {
  readonly id: string;
  readonly alternative: string;
  readonly panels: readonly Panel[];
  /** As many panels stand beside each other as go into this width, 80 to 175. */
  readonly widthMm: number;
}

const gapMm = 6;
const underTitleMm = 2;

export function panelScene({ id, alternative, panels, widthMm }: PanelsOptions): Scene {
  const rows = rowsOf(panels, widthMm);
  const items: SceneItem[] = [];
  let top = 0;
  for (const row of rows) {
    const titles = row.map(({ title, widthMm: width }) => linesOf(title, width));
    const titleMm = Math.max(...titles.map((lines) => lines.length)) * lineMm + underTitleMm;
    const used = row.reduce((sum, panel) => sum + panel.widthMm, 0);
    const between = row.length === 1 ? 0 : Math.min(14, (widthMm - used) / (row.length - 1));
    let left = 0;
    row.forEach((panel, index) => {
      titles[index]!.forEach((line, number) =>
        items.push(text({ x: left, y: top + 3.4 + number * lineMm }, line, { style: 'strong' })),
      );
      items.push(...panel.items.map((item) => moved(item, { x: left, y: top + titleMm })));
      left += panel.widthMm + between;
    });
    top += titleMm + Math.max(...row.map(({ heightMm }) => heightMm)) + gapMm;
  }
  return { id, alternative, widthMm, heightMm: top - gapMm, items };
}

function linesOf(title: string, widthMm: number): readonly string[] {
  return estimateTextWidthMm(title, 'strong') <= widthMm ? [title] : wrapText(title, 'strong', widthMm);
}

function rowsOf(panels: readonly Panel[], widthMm: number): readonly (readonly Panel[])[] {
  const rows: Panel[][] = [];
  let used = Infinity;
  for (const panel of panels) {
    if (used + gapMm + panel.widthMm > widthMm + 1e-6) {
      rows.push([panel]);
      used = panel.widthMm;
    } else {
      rows.at(-1)!.push(panel);
      used += gapMm + panel.widthMm;
    }
  }
  return rows;
}

/** The same item somewhere else. */
export function moved(item: SceneItem, by: Point): SceneItem {
  return item.kind === 'path'
    ? { ...item, commands: placed(item.commands, by) }
    : { ...item, x: item.x + by.x, y: item.y + by.y };
}
