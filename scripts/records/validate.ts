import { Ajv2020, type ErrorObject, type ValidateFunction } from 'ajv/dist/2020.js';
import type { TSchema } from 'typebox';
import type { Diagnostic, Place } from '../diagnostics/diagnostic.ts';
import { parseQuantity, type QuantityFault } from '../quantities/quantity.ts';
import { units, type Dimension } from '../quantities/units.ts';
import { controlCharacterName, hasControlCharacter, isBlank } from './printable.ts';
import { airtimePattern } from './schemas/companion-sheet.ts';
import { idPattern } from './schemas/kit.ts';
import { shortened } from './shortened.ts';
import { calendarDayNumber, isIsoDate } from './dates.ts';
import { nearest, suggestion } from './suggest.ts';

/** Where a value or a key at a JSON pointer stands in its file. */
export interface Places {
  placeOf(pointer: string): Place;
  placeOfKey(pointer: string): Place;
}

/** Where shapes must be told apart, errors are compared with each other: so many of one record are, and no more. */
const mostCompared = 1000;

/** Errors of one place lie next to each other, so the first ones make whole faults. */
function judged(errors: readonly ErrorObject[]): readonly ErrorObject[] {
  return errors.some(({ keyword }) => keyword === 'anyOf') ? errors.slice(0, mostCompared) : errors;
}

/** Checks a parsed value against a schema and reports every fault at its place. */
export function validate(schema: TSchema, value: unknown, places: Places): readonly Diagnostic[] {
  const check = compiled(schema);
  if (check(value)) return [];
  const errors = withoutMistypedKeys(keepNearestBranch(judged(check.errors ?? []), value));
  const seen = new Set<string>();
  return errors
    .map((error) => diagnosticOf(error, value, places))
    .filter((diagnostic) => {
      const key = `${diagnostic.place?.line}:${diagnostic.place?.column}:${diagnostic.message}`;
      return !seen.has(key) && seen.add(key);
    });
}

/** A schema as it is written, for the few keys that the walk and the reports look at. */
export interface LooseSchema {
  readonly type?: string | readonly string[];
  readonly enum?: readonly string[];
  readonly properties?: Readonly<Record<string, LooseSchema>>;
  readonly required?: readonly string[];
  readonly items?: LooseSchema;
  readonly anyOf?: readonly LooseSchema[];
  readonly quantity?: Dimension;
  readonly example?: string;
  readonly single?: true;
  readonly atLeast?: number;
  readonly atMost?: number;
  readonly calendarDay?: true;
  readonly isoDate?: true;
  readonly printed?: true;
  readonly refersTo?: string;
  readonly guideFile?: string;
}

const validators = new WeakMap<TSchema, ValidateFunction>();
const ajv = makeAjv();

function compiled(schema: TSchema): ValidateFunction {
  let check = validators.get(schema);
  if (!check) {
    check = ajv.compile(schema);
    validators.set(schema, check);
  }
  return check;
}

function makeAjv(): Ajv2020 {
  const made = new Ajv2020({ allErrors: true, verbose: true, strict: true, allowUnionTypes: true });
  made.addKeyword({ keyword: 'refersTo', schemaType: 'string' });
  made.addKeyword({ keyword: 'guideFile', schemaType: 'string' });
  for (const keyword of ['single', 'atLeast', 'atMost', 'example']) made.addKeyword({ keyword });
  made.addKeyword({
    keyword: 'quantity',
    schemaType: 'string',
    errors: false,
    validate: (_: Dimension, data: unknown, parent?: LooseSchema) =>
      quantityFault(data, parent!) === undefined,
  });
  made.addKeyword({
    keyword: 'calendarDay',
    schemaType: 'boolean',
    errors: false,
    validate: (_: boolean, data: unknown) =>
      typeof data !== 'string' || calendarDayNumber(data) !== undefined,
  });
  made.addKeyword({
    keyword: 'isoDate',
    schemaType: 'boolean',
    errors: false,
    validate: (_: boolean, data: unknown) => typeof data !== 'string' || isIsoDate(data),
  });
  made.addKeyword({
    keyword: 'printed',
    schemaType: 'boolean',
    errors: false,
    validate: (_: boolean, data: unknown) =>
      typeof data !== 'string' || data === '' || (!isBlank(data) && !hasControlCharacter(data)),
  });
  return made;
}

/**
 * Where a value may take one of several shapes, ajv reports the faults of every shape. Only those of the
 * shape that the writer plainly meant (the fewest faults of structure) are kept: one report per cause.
 */
function keepNearestBranch(errors: readonly ErrorObject[], value: unknown): readonly ErrorObject[] {
  const union = errors
    .filter((error) => error.keyword === 'anyOf')
    .sort((a, b) => a.instancePath.length - b.instancePath.length)[0];
  if (!union) return errors;
  const branches = union.schema as readonly LooseSchema[];
  const own = errors.filter(
    (error) => error !== union && error.instancePath.startsWith(union.instancePath) && isUnder(error, union),
  );
  const rest = errors.filter((error) => error !== union && !own.includes(error));
  const branchOf = (error: ErrorObject): number =>
    branches.findIndex((branch) => holdsSchema(branch, error.parentSchema as LooseSchema));
  const target = valueAt(value, union.instancePath);
  const tellsApart = (key: string): boolean =>
    branches.filter((branch) => Object.hasOwn(branch.properties ?? {}, key)).length === 1;
  const keys = typeof target === 'object' && target !== null ? Object.keys(target).filter(tellsApart) : [];
  const costs = branches.map((branch, index) => {
    const known = Object.keys(branch.properties ?? {});
    const matching = keys.filter((key) => known.includes(key)).length;
    return { index, matching, faults: own.filter((error) => branchOf(error) === index).length };
  });
  costs.sort((a, b) => b.matching - a.matching || a.faults - b.faults || a.index - b.index);
  const best = costs[0]!;
  if (best.matching === 0) {
    const names = branches.flatMap((branch) => (branch.required ?? []).slice(0, 1));
    const whole: ErrorObject = { ...union, keyword: 'oneOfShapes', params: { names } };
    return keepNearestBranch([...rest, whole], value);
  }
  return keepNearestBranch([...rest, ...own.filter((error) => branchOf(error) === best.index)], value);
}

/** A mistyped key is missing under its right name, too: that is one cause, told once. */
function withoutMistypedKeys(errors: readonly ErrorObject[]): readonly ErrorObject[] {
  const meant = new Set(
    errors
      .filter((error) => error.keyword === 'additionalProperties')
      .map((error) => {
        const { additionalProperty } = error.params as { additionalProperty: string };
        const known = Object.keys((error.parentSchema as LooseSchema).properties ?? {});
        return `${error.instancePath}/${nearest(additionalProperty, known) ?? ''}`;
      }),
  );
  return errors.filter(
    (error) =>
      error.keyword !== 'required' ||
      !meant.has(`${error.instancePath}/${(error.params as { missingProperty: string }).missingProperty}`),
  );
}

function isUnder(error: ErrorObject, union: ErrorObject): boolean {
  return (union.schema as readonly LooseSchema[]).some((branch) =>
    holdsSchema(branch, error.parentSchema as LooseSchema),
  );
}

function holdsSchema(branch: LooseSchema, wanted: LooseSchema): boolean {
  if (branch === wanted) return true;
  const inner = [
    ...Object.values(branch.properties ?? {}),
    ...(branch.items ? [branch.items] : []),
    ...(branch.anyOf ?? []),
  ];
  return inner.some((schema) => holdsSchema(schema, wanted));
}

function valueAt(value: unknown, pointer: string): unknown {
  return pointer
    .split('/')
    .slice(1)
    .reduce<unknown>(
      (at, part) =>
        (at as Record<string, unknown> | undefined)?.[part.replaceAll('~1', '/').replaceAll('~0', '~')],
      value,
    );
}

function diagnosticOf(error: ErrorObject, value: unknown, places: Places): Diagnostic {
  const pointer = error.instancePath;
  const place = places.placeOf(pointer);
  const name = nameOf(pointer);
  const schema = error.parentSchema as LooseSchema;
  const data = error.data;
  const written = shortened(String(data));
  const make = (code: Diagnostic['code'], message: string, hint: string, at: Place = place): Diagnostic => ({
    code,
    severity: 'error',
    message,
    hint,
    place: at,
  });
  switch (error.keyword) {
    case 'required': {
      const key = (error.params as { missingProperty: string }).missingProperty;
      return make(
        'missing-key',
        `${name} has no “${key}”.`,
        `Add “${key}: ${exampleOf(schema.properties?.[key])}”.`,
      );
    }
    case 'additionalProperties':
    case 'unevaluatedProperties': {
      const key = (error.params as { additionalProperty: string }).additionalProperty;
      return make(
        'unknown-key',
        `${name} has a key “${shortened(key)}” that is not known here.`,
        suggestion(
          key,
          Object.keys(schema.properties ?? {}),
          `Known keys: ${Object.keys(schema.properties ?? {}).join(', ')}.`,
        ),
        places.placeOfKey(`${pointer}/${key.replaceAll('~', '~0').replaceAll('/', '~1')}`),
      );
    }
    case 'quantity':
      return quantityDiagnostic(data, schema, name, make);
    case 'calendarDay':
      return make(
        'impossible-date',
        `${name} is “${written}”, which is no day of the calendar.`,
        'Write the month and the day, such as “Apr 14”.',
      );
    case 'isoDate':
      return make(
        'impossible-date',
        `${name} is “${written}”, which is no date of the calendar.`,
        'Write year, month and day, such as “2026-11-02”.',
      );
    case 'oneOfShapes':
      return make(
        'missing-key',
        `${name} says nothing that is known here.`,
        `Give one of: ${(error.params as { names: string[] }).names.join(', ')}.`,
      );
    case 'enum':
      return make(
        'wrong-value',
        `${name} is “${written}”, which is not one of the values it may have.`,
        suggestion(
          String(data),
          (error.schema as unknown[]).map(String),
          `Use one of: ${(error.schema as unknown[]).join(', ')}.`,
        ),
      );
    case 'const':
      return make(
        'wrong-value',
        `${name} may only be “${String(error.schema)}”.`,
        'Write that, or leave the key out.',
      );
    case 'type':
      return schema.quantity === undefined
        ? make(
            'wrong-type',
            `${name} is ${kindOf(data)} where ${kindWanted(error.schema)} belongs.`,
            typeHint(error.schema, data),
          )
        : quantityDiagnostic(data, schema, name, make);
    case 'pattern':
      return schema.refersTo !== undefined || String(error.schema) === idPattern
        ? make(
            'bad-id',
            `${name} is “${written}”; an id has lower-case letters, digits and single hyphens.`,
            'Write it like “snap-pea”.',
          )
        : make(
            'wrong-value',
            `${name} is “${written}”, which does not have the form it needs.`,
            patternHint(String(error.schema)),
          );
    case 'minimum':
    case 'maximum':
    case 'exclusiveMinimum':
    case 'exclusiveMaximum':
      return make(
        'out-of-range',
        `${name} is ${written}; it ${error.message ?? 'is out of range'}.`,
        'Check the number and the place of its decimal point.',
      );
    case 'printed':
      return hasControlCharacter(String(data))
        ? make(
            'wrong-value',
            `${name} has a character that cannot be printed (${controlCharacterName(String(data))}).`,
            'Write the words anew instead of pasting them.',
          )
        : make(
            'out-of-range',
            `${name} has nothing that could be seen.`,
            'Write something there, or leave the key out.',
          );
    case 'minItems':
      return make(
        'out-of-range',
        `${name} has ${(data as unknown[]).length} entries; it needs at least ${String(error.schema)}.`,
        'Add what is missing.',
      );
    case 'maxItems':
      return make(
        'out-of-range',
        `${name} has ${(data as unknown[]).length} entries; it may have ${String(error.schema)}.`,
        'Leave some out.',
      );
    case 'minLength':
      return make('out-of-range', `${name} is empty.`, 'Write something there, or leave the key out.');
    case 'maxLength':
      return make(
        'out-of-range',
        `${name} has ${(data as string).length} characters; it may have ${String(error.schema)}.`,
        'Shorten it.',
      );
    default:
      return make(
        'out-of-range',
        `${name} ${error.message ?? 'is not as it should be'}.`,
        `Mend ${lastPart(pointer) || 'the record'}.`,
      );
  }

  function nameOf(at: string): string {
    if (at === '') return 'The record';
    const parts = at.split('/').slice(1);
    const words = parts.map((part, index) =>
      Array.isArray(valueAt(value, `/${parts.slice(0, index).join('/')}`)) ? `${Number(part) + 1}` : part,
    );
    return `“${words.join(' › ')}”`;
  }

  function kindOf(data: unknown): string {
    if (data === null || data === undefined) return valueAt(value, pointer) === null ? 'empty' : 'missing';
    if (Array.isArray(data)) return 'a list';
    return typeof data === 'object'
      ? 'a group of keys'
      : typeof data === 'string'
        ? 'text'
        : typeof data === 'number'
          ? numberKind(data)
          : 'yes or no';
  }
}

/** YAML writes a number without end `.inf`, and what is no number at all `.nan`. */
function numberKind(data: number): string {
  if (Number.isNaN(data)) return 'no number (.nan)';
  return Number.isFinite(data) ? 'a number' : 'a number without end';
}

type Make = (code: Diagnostic['code'], message: string, hint: string) => Diagnostic;

/** What is wrong with a quantity, by its dimension and its limits; undefined when nothing is. */
function quantityFault(
  data: unknown,
  schema: LooseSchema,
): QuantityFault | { fault: 'not-text' | 'not-single' | 'too-small' | 'too-large' } | undefined {
  if (typeof data !== 'string') return { fault: 'not-text' };
  const quantity = parseQuantity(data, schema.quantity!);
  if ('fault' in quantity) return quantity;
  if (schema.single && quantity.low !== quantity.high) return { fault: 'not-single' };
  if (schema.atLeast !== undefined && quantity.low < schema.atLeast) return { fault: 'too-small' };
  if (schema.atMost !== undefined && quantity.high > schema.atMost) return { fault: 'too-large' };
  return undefined;
}

function quantityDiagnostic(data: unknown, schema: LooseSchema, name: string, make: Make): Diagnostic {
  const dimension = schema.quantity!;
  const wanted = withExample(dimensionWords[dimension], schema);
  if (typeof data === 'number' && Number.isFinite(data)) {
    return make(
      'quantity-without-unit',
      `${name} is ${data} without a unit; ${wanted.what} needs one.`,
      askUnit(String(data), wanted),
    );
  }
  if (typeof data !== 'string') {
    return make(
      'bad-quantity',
      `${name} is not ${wanted.what}.`,
      `Write a number and its unit, such as “${wanted.example}”.`,
    );
  }
  const written = shortened(data);
  const fault = quantityFault(data, schema)!;
  switch (fault.fault) {
    case 'no-unit':
      return make(
        'quantity-without-unit',
        `${name} is “${shortened(fault.number)}” without a unit; ${wanted.what} needs one.`,
        askUnit(shortened(fault.number), wanted),
      );
    case 'unknown-unit':
      return make(
        'bad-quantity',
        `${name} is “${written}”; “${shortened(fault.unit)}” is not a unit that is known.`,
        suggestion(fault.unit, unitsOf(dimension), `Use one of: ${unitsOf(dimension).join(', ')}.`),
      );
    case 'other-dimension':
      return make(
        'bad-quantity',
        `${name} is “${written}”; “${shortened(fault.unit)}” measures ${dimensionWords[fault.dimension].measures}, and ${wanted.what} is needed.`,
        `Use one of: ${unitsOf(dimension).join(', ')}.`,
      );
    case 'backwards':
      return make(
        'bad-quantity',
        `${name} is “${written}”; the first end is larger than the second.`,
        'Write the smaller end first.',
      );
    case 'not-single':
      return make(
        'bad-quantity',
        `${name} is “${written}”, a range, where one value is needed.`,
        'Write one number and its unit.',
      );
    case 'too-small':
    case 'too-large':
      return make(
        'out-of-range',
        `${name} is “${written}”, which is ${fault.fault === 'too-small' ? 'less' : 'more'} than it can be.`,
        'Check the number, its sign and its unit.',
      );
    case 'not-text':
    case 'unreadable':
      return make(
        'bad-quantity',
        `${name} is “${written}”, which cannot be read as ${wanted.what}.`,
        `Write a number and its unit, such as “${wanted.example}”, or a range such as “${wanted.range}”.`,
      );
  }
}

/** The words of a dimension, with the example and the likely units of one key where its schema gives them. */
function withExample(words: DimensionWords, { example }: LooseSchema): DimensionWords {
  const unit = /[A-Za-z][A-Za-z0-9]*$/.exec(example ?? '')?.[0];
  if (example === undefined || unit === undefined) return words;
  return { ...words, example, likely: [unit, metricOf[unit]].filter((name) => name !== undefined) };
}

const metricOf: Readonly<Record<string, string>> = {
  in: 'cm',
  ft: 'm',
  F: 'C',
  lb: 'kg',
  oz: 'g',
  mph: 'kmh',
};

/** `Was “30 in” meant, or “30 cm”?` */
function askUnit(number: string, { likely }: DimensionWords): string {
  return `Was ${likely.map((unit, index) => `“${number} ${unit}”${index === 0 ? ' meant' : ''}`).join(', or ')}?`;
}

function unitsOf(dimension: Dimension): string[] {
  return Object.entries(units)
    .filter(([, unit]) => unit.dimension === dimension)
    .map(([name]) => name);
}

interface DimensionWords {
  readonly what: string;
  readonly measures: string;
  readonly likely: readonly string[];
  readonly example: string;
  readonly range: string;
}

const dimensionWords: Readonly<Record<Dimension, DimensionWords>> = {
  length: {
    what: 'a length',
    measures: 'length',
    likely: ['in', 'cm'],
    example: '4 in',
    range: '1/4 to 1/2 in',
  },
  area: {
    what: 'an area',
    measures: 'area',
    likely: ['ft2', 'm2'],
    example: '32 ft2',
    range: '10 to 12 ft2',
  },
  volume: {
    what: 'a volume',
    measures: 'volume',
    likely: ['gal', 'L'],
    example: '5 gal',
    range: '5 to 6 gal',
  },
  mass: { what: 'a weight', measures: 'weight', likely: ['oz', 'g'], example: '40 lb', range: '40 to 60 lb' },
  temperature: {
    what: 'a temperature',
    measures: 'temperature',
    likely: ['F', 'C'],
    example: '65 F',
    range: '60 to 65 F',
  },
  duration: {
    what: 'a length of time',
    measures: 'time',
    likely: ['days', 'weeks'],
    example: '60 days',
    range: '50 to 70 days',
  },
  'day-length': {
    what: 'a number of hours',
    measures: 'hours',
    likely: ['hours'],
    example: '14 hours',
    range: '12 to 14 hours',
  },
  speed: {
    what: 'a speed',
    measures: 'speed',
    likely: ['mph', 'kmh'],
    example: '40 mph',
    range: '30 to 40 mph',
  },
  force: {
    what: 'a force',
    measures: 'force',
    likely: ['lbf', 'N'],
    example: '20 lbf',
    range: '20 to 30 lbf',
  },
  pressure: {
    what: 'a pressure',
    measures: 'pressure',
    likely: ['psf', 'Pa'],
    example: '4 psf',
    range: '4 to 6 psf',
  },
  angle: {
    what: 'an angle',
    measures: 'angles',
    likely: ['deg'],
    example: '45.2 deg',
    range: '37 to 47 deg',
  },
  money: {
    what: 'a price',
    measures: 'money',
    likely: ['USD'],
    example: '6.50 USD',
    range: '5 to 7 USD',
  },
};

function exampleOf(schema: LooseSchema | undefined): string {
  if (!schema) return '…';
  if (schema.example) return schema.example;
  if (schema.quantity) return dimensionWords[schema.quantity].example;
  if (schema.items?.refersTo) return `[id-of-a-${schema.items.refersTo}]`;
  if (schema.enum) return schema.enum.join('” or “');
  if (schema.calendarDay) return 'Apr 14';
  if (schema.isoDate) return '2026-11-02';
  if (schema.type === 'boolean') return 'true” or “false';
  return '…';
}

function kindWanted(type: unknown): string {
  const names: Record<string, string> = {
    string: 'text',
    number: 'a number',
    integer: 'a whole number',
    boolean: 'true or false',
    array: 'a list',
    object: 'a group of keys',
  };
  return (Array.isArray(type) ? type : [type])
    .map((name) => names[String(name)] ?? String(name))
    .join(' or ');
}

/** How a text of a certain form is written. */
function patternHint(pattern: string): string {
  if (pattern.includes('#')) return 'Write a colour as # and six digits, such as #1f4a2c.';
  if (pattern.includes('http')) return 'Write the whole address, with https:// at its start.';
  return patternHints[pattern] ?? 'Look at the same key in another record.';
}

const patternHints: Readonly<Record<string, string>> = {
  '^[A-Z]$': 'Write one capital letter, such as A.',
  '^[A-Za-z0-9][A-Za-z0-9./-]{0,19}$':
    'Write up to 20 letters, digits, dots, slashes and hyphens, such as GS-104/2027.',
  '^[a-z]{2}(-[A-Z]{2})?$': 'Write the two letters of the language, such as en.',
  '^[^\\s]+$': 'Write the address without spaces.',
  [airtimePattern]: 'Write minutes and seconds between quotes, such as "0:45" or "12:30".',
};

function typeHint(type: unknown, data: unknown): string {
  if (type === 'array') return 'Put each item on a line of its own, with a hyphen before it.';
  if (type === 'object') return 'Put its keys on the lines below, indented by two spaces.';
  if (type === 'boolean') return 'Write true or false.';
  if (type === 'integer') return 'Write it in figures and without a unit, such as 8.';
  if (type === 'string' && (typeof data === 'number' || typeof data === 'boolean'))
    return 'Put it between "quotes" if it is meant as words.';
  return 'Look at the same key in another record.';
}

function lastPart(pointer: string): string {
  return pointer.split('/').at(-1) ?? '';
}
