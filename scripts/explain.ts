/** A sheet's numbers as text for a terminal: what each is, how it was worked out, from what, and by whom. */
import type { RegionSheet } from './pipeline.ts';
import type { Explanation } from './sheets/printer.ts';

const width = 100;

export function explain({ composed: { document, explanations } }: RegionSheet): string {
  const head = `${document.title}\n${document.datesFor}\n${explanations.length} figures\n`;
  return `${head}\n${explanations.map(entry).join('\n\n')}\n`;
}

function entry({ id, name, value, method, inputs, sources }: Explanation): string {
  return [
    `${name}: ${value}`,
    ...wrapped(`(${id})`),
    ...wrapped(method),
    ...inputs.flatMap((input) => wrapped(`- ${input}`)),
    ...sources.flatMap((source) => wrapped(`Source: ${source}`)),
  ]
    .join('\n')
    .replaceAll('\u00A0', ' ');
}

/** Lines of at most 100 characters, set in by two spaces. */
function wrapped(text: string): string[] {
  const lines: string[] = [];
  for (const word of text.replaceAll('\u00A0', ' ').split(' ')) {
    const line = lines.at(-1);
    if (line !== undefined && line.length + word.length + 1 <= width)
      lines[lines.length - 1] = `${line} ${word}`;
    else lines.push(`  ${word}`);
  }
  return lines;
}
