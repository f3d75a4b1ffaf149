/** Looks at a drawing as it comes out, to see whether any line runs through its words. */
import sharp from 'sharp';
import { estimateTextWidthMm } from '../../../scripts/drawings/charts/text-width.ts';
import { textSizeMm } from '../../../scripts/drawings/path.ts';
import type { Scene, SceneItem } from '../../../scripts/drawings/scene.ts';
import { textsOf, type TextItem } from './scenes.ts';

const pixelsPerMm = 10;
const widthsMm = { cut: 0.494, seen: 0.318, thin: 0.176, hidden: 0.176 } as const;
const fills = { paper: '#fff', tint: '#eef0e8', shade: '#d5d9ca', ink: '#000' } as const;

/** The texts that a line or a solid runs through. A letter in a ring stands clear by its ring. */
export async function crossedTexts(scene: Scene): Promise<readonly string[]> {
  const { data, info } = await sharp(Buffer.from(withoutText(scene)))
    .flatten({ background: '#fff' })
    .greyscale()
    .raw()
    .toBuffer({ resolveWithObject: true });
  const dark = (x: number, y: number): boolean => (data[y * info.width + x] ?? 255) < 150;
  return textsOf(scene)
    .filter((text) => {
      const box = inkBox(text);
      for (let y = Math.round(box.top * pixelsPerMm); y <= Math.round(box.bottom * pixelsPerMm); y += 1) {
        for (let x = Math.round(box.left * pixelsPerMm); x <= Math.round(box.right * pixelsPerMm); x += 1) {
          if (dark(x, y)) return true;
        }
      }
      return false;
    })
    .map(({ text }) => text);
}

/** Where the letters themselves are: capitals and figures stand on the baseline, two thirds of the size high. */
export function inkBox({ x, y, text, anchor, style }: TextItem): {
  left: number;
  right: number;
  top: number;
  bottom: number;
} {
  const width = estimateTextWidthMm(text, style) * 0.94;
  const left = anchor === 'start' ? x : anchor === 'end' ? x - width : x - width / 2;
  return { left, right: left + width, top: y - textSizeMm[style] * 0.66, bottom: y };
}

function withoutText({ widthMm, heightMm, items }: Scene): string {
  const size = `width="${widthMm * pixelsPerMm}" height="${heightMm * pixelsPerMm}" viewBox="0 0 ${widthMm} ${heightMm}"`;
  return `<svg xmlns="http://www.w3.org/2000/svg" ${size}>${items.map(shape).join('')}</svg>`;
}

function shape(item: SceneItem): string {
  if (item.kind === 'text') return '';
  const stroke = item.stroke ? `stroke="#000" stroke-width="${widthsMm[item.stroke]}"` : '';
  const fill = `fill="${item.fill ? fills[item.fill] : 'none'}"`;
  if (item.kind === 'circle')
    return `<circle cx="${item.x}" cy="${item.y}" r="${item.radius}" ${fill} ${stroke}/>`;
  return `<path d="${item.commands.map((command) => command.join(' ')).join('')}" ${fill} ${stroke}/>`;
}
