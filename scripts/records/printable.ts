/**
 * Characters that have no place in words for people: controls other than the tab and the line feed, halves of surrogate
 * pairs, non-characters, and marks that turn the direction of what follows, by which a line can read otherwise than
 * it is written.
 */
const unprintable =
  /[\u0000-\u0008\u000B-\u001F\u007F-\u009F\u2028\u2029\u202A-\u202E\u2066-\u2069\uFFFE\uFFFF]|\p{Cs}/u;

/** Whether the text has a character that cannot be printed. */
export function hasControlCharacter(text: string): boolean {
  return unprintable.test(text);
}

/** `U+0007` for the first character that cannot be printed; empty when there is none. */
export function controlCharacterName(text: string): string {
  const found = unprintable.exec(text)?.[0];
  return found === undefined ? '' : `U+${found.codePointAt(0)!.toString(16).toUpperCase().padStart(4, '0')}`;
}

/** Whether nothing of the text would be seen: it has only spaces, soft hyphens and characters without a width. */
export function isBlank(text: string): boolean {
  return /^[\s\u00AD\u200B-\u200F\u2060\uFEFF\u3164]*$/u.test(text);
}
