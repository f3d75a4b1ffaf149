import { IntlMessageFormat } from 'intl-messageformat';

/** What a phrase may be given. */
export type PhraseArguments = Readonly<Record<string, string | number>>;
export type Say = (key: string, values?: PhraseArguments) => string;

/**
 * Says a phrase of one language by its key. A key that no language record has is a mistake of the program:
 * records are checked against the phrases that come with Groundsheet before anything is composed.
 */
export function phrasebook(phrases: ReadonlyMap<string, string>, language: string): Say {
  const formats = new Map<string, IntlMessageFormat>();
  return (key, values = {}) => {
    let format = formats.get(key);
    if (!format) {
      const words = phrases.get(key);
      if (words === undefined) throw new TypeError(`no phrase “${key}” in language ${language}`);
      format = new IntlMessageFormat(words, language, undefined, { ignoreTag: true });
      formats.set(key, format);
    }
    return String(format.format(values));
  };
}
