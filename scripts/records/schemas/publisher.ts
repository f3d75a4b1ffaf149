import Type, { type Static } from 'typebox';
import { IsoDate, Words, oneOf, record } from './kit.ts';

export const PublisherSchema = record({
  office: Words,
  /** Short web address for the foot, without https://. */
  address: Type.Optional(Type.String({ pattern: '^[^\\s]+$', maxLength: 60 })),
  /** The season the dates are for. */
  year: Type.Integer({ minimum: 1900, maximum: 2200 }),
  issued: IsoDate,
  /** When the sheets should be looked at again. */
  review: IsoDate,
  language: oneOf(['en']),
  paper: oneOf(['letter', 'a4']),
  /** Which system is printed first; the other follows it. */
  units: oneOf(['customary-first', 'metric-first']),
  /** A line for every sheet, such as that the data is for demonstration. */
  notice: Type.Optional(Words),
});

export type Publisher = Static<typeof PublisherSchema>;
