/** Phrases with printed findings in them. */
import { inline } from '../document/build.ts';
import type { Inline } from '../document/document.ts';
import type { Say } from '../wording/phrases.ts';

/** Says a phrase in which some of the values are words that are ready-made, such as a printed finding. */
export function sayWith(
  say: Say,
  key: string,
  values: Readonly<Record<string, string | number | Inline>>,
): readonly Inline[] {
  const ready = Object.entries(values).filter(
    (entry): entry is [string, Inline] => typeof entry[1] === 'object',
  );
  const marks = ready.map(([name], index): [string, string] => [name, `\uE000${index}\uE001`]);
  const plain = Object.entries(values).filter(
    (entry): entry is [string, string | number] => typeof entry[1] !== 'object',
  );
  const said = say(key, Object.fromEntries([...plain, ...marks]));
  return inline(
    said
      .split(/\uE000(\d+)\uE001/)
      .map((piece, index): string | Inline => (index % 2 === 0 ? piece : ready[Number(piece)]![1])),
  );
}
