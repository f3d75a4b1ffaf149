/** Text of a record as a message quotes it: at most 80 characters, on one line, with what cannot be seen left out. */
export function shortened(text: string): string {
  const longest = 80;
  const line = text
    .slice(0, 4 * longest)
    .replace(/\s+/g, ' ')
    .replace(/[\p{Cc}\p{Cs}]/gu, '');
  return line.length <= longest && text.length <= 4 * longest
    ? line
    : `${line.slice(0, longest).replace(/[\uD800-\uDBFF]$/, '')}…`;
}
