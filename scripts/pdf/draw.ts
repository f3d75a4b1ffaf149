import { shifted, type Mark } from './items.ts';
import type { PdfWriter } from './writer.ts';

/** Draws marks on the current page, with their top at a height of the page and moved to the right by `left`. */
export function drawMarks(marks: readonly Mark[], top: number, writer: PdfWriter, left = 0): void {
  for (const mark of shifted(marks, top, left)) {
    switch (mark.kind) {
      case 'text':
        writer.text(mark);
        break;
      case 'path':
        writer.path(mark);
        break;
      case 'link':
        writer.link(mark);
        break;
      case 'bounds':
        writer.bounds(mark.tag, mark.area);
        break;
      case 'outline':
        writer.outline(mark.level, mark.title, top);
        break;
    }
  }
}
