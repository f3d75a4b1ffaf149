/**
 * Reads the objects of a PDF file as ISO 32000-1 writes them, sharing no code with what wrote them and knowing nothing of
 * pages: dictionaries become maps, names get a slash in front, text strings are decoded.
 */
import { inflateSync } from 'node:zlib';

export type PdfValue = null | boolean | number | PdfName | PdfText | PdfReference | PdfArray | PdfDictionary;
export type PdfArray = readonly PdfValue[];
export type PdfDictionary = ReadonlyMap<string, PdfValue>;

export class PdfName {
  constructor(readonly name: string) {}
}
export class PdfText {
  constructor(readonly bytes: Buffer) {}

  get text(): string {
    if (this.bytes[0] !== 0xfe || this.bytes[1] !== 0xff) return this.bytes.toString('latin1');
    return Buffer.from(this.bytes.subarray(2)).swap16().toString('utf16le');
  }
}
export class PdfReference {
  constructor(readonly number: number) {}
}

export class PdfObjects {
  readonly trailer: PdfDictionary;
  readonly #bytes: Buffer;
  readonly #offsets: ReadonlyMap<number, number>;
  readonly #read = new Map<number, PdfValue>();

  constructor(bytes: Uint8Array) {
    this.#bytes = Buffer.from(bytes);
    const text = this.#bytes.toString('latin1');
    const start = Number(/startxref\s+(\d+)\s+%%EOF\s*$/.exec(text)?.[1]);
    this.#offsets = offsetsAt(text, start);
    this.trailer = new Tokens(this.#bytes, text.indexOf('trailer', start) + 7).value() as PdfDictionary;
  }

  /** A value with the object in place of a reference. */
  resolve(value: PdfValue | undefined): PdfValue {
    return value instanceof PdfReference ? this.object(value.number) : (value ?? null);
  }

  object(number: number): PdfValue {
    let value = this.#read.get(number);
    if (value === undefined) {
      const tokens = this.#tokensOf(number);
      value = tokens ? tokens.value() : null;
      this.#read.set(number, value);
    }
    return value;
  }

  dictionary(value: PdfValue | undefined): PdfDictionary {
    const resolved = this.resolve(value);
    return isDictionary(resolved) ? resolved : new Map();
  }

  array(value: PdfValue | undefined): PdfArray {
    const resolved = this.resolve(value);
    return isArray(resolved) ? resolved : resolved === null ? [] : [resolved];
  }

  text(value: PdfValue | undefined): string | undefined {
    const resolved = this.resolve(value);
    return resolved instanceof PdfText ? resolved.text : undefined;
  }

  name(value: PdfValue | undefined): string | undefined {
    const resolved = this.resolve(value);
    return resolved instanceof PdfName ? resolved.name : undefined;
  }

  /** The bytes of a stream, unpacked. */
  stream(reference: PdfValue | undefined): Buffer {
    if (!(reference instanceof PdfReference)) throw new TypeError('not a stream');
    const tokens = this.#tokensOf(reference.number);
    const dictionary = tokens?.value() as PdfDictionary;
    const start = tokens!.streamStart();
    const bytes = this.#bytes.subarray(start, start + (this.resolve(dictionary.get('Length')) as number));
    return this.name(dictionary.get('Filter')) === 'FlateDecode' ? inflateSync(bytes) : bytes;
  }

  #tokensOf(number: number): Tokens | undefined {
    const offset = this.#offsets.get(number);
    if (offset === undefined) return undefined;
    const tokens = new Tokens(this.#bytes, offset);
    for (const expected of [number, 0, 'obj'])
      if (tokens.next() !== expected) throw new TypeError(`object ${number} is not where the file says`);
    return tokens;
  }
}

const isArray = (value: PdfValue): value is PdfArray => Array.isArray(value);
export const isDictionary = (value: PdfValue): value is PdfDictionary => value instanceof Map;

function offsetsAt(text: string, start: number): ReadonlyMap<number, number> {
  const head = /xref\s+0 (\d+)\s+/y;
  head.lastIndex = start;
  const found = head.exec(text);
  if (!found) throw new TypeError('no table of objects');
  const offsets = new Map<number, number>();
  for (let number = 0; number < Number(found[1]); number += 1) {
    const entry = text.slice(head.lastIndex + number * 20, head.lastIndex + number * 20 + 18);
    if (entry.endsWith('n')) offsets.set(number, Number(entry.slice(0, 10)));
  }
  return offsets;
}

/** A value, or an operator or keyword as a plain string. */
export type Token = PdfValue | string;

const isSpace = (byte: number | undefined): boolean =>
  byte !== undefined && ' \t\r\n\f\0'.includes(String.fromCharCode(byte));
const isDelimiter = (byte: number | undefined): boolean =>
  byte !== undefined && '()<>[]{}/%'.includes(String.fromCharCode(byte));

/** Goes through bytes and reads one value or operator after the other. */
export class Tokens {
  constructor(
    private readonly bytes: Buffer,
    private at: number = 0,
  ) {}

  /** Undefined at the end. */
  next(): Token | undefined {
    while (isSpace(this.bytes[this.at])) this.at += 1;
    const byte = this.bytes[this.at];
    if (byte === undefined) return undefined;
    const character = String.fromCharCode(byte);
    if (character === '(') return this.literal();
    if (character === '[') return this.list();
    if (character === '/')
      return new PdfName(
        this.word(1).replace(/#([0-9A-F]{2})/gi, (_, code: string) =>
          String.fromCharCode(Number.parseInt(code, 16)),
        ),
      );
    if (character === '<') return this.bytes[this.at + 1] === byte ? this.map() : this.hex();
    if (isDelimiter(byte)) {
      this.at += 1;
      return character;
    }
    const word = this.word(0);
    if (/^[+-]?(?:\d+\.?\d*|\.\d+)$/.test(word)) return this.numberOrReference(word);
    return { true: true, false: false, null: null }[word] ?? (word === 'null' ? null : word);
  }

  value(): PdfValue {
    const token = this.next();
    if (typeof token === 'string' || token === undefined) throw new TypeError(`no value but ${token}`);
    return token;
  }

  streamStart(): number {
    const from = this.bytes.indexOf('stream', this.at) + 'stream'.length;
    return this.bytes[from] === 0x0d ? from + 2 : from + 1;
  }

  private word(skip: number): string {
    const start = (this.at += skip);
    while (this.at < this.bytes.length && !isSpace(this.bytes[this.at]) && !isDelimiter(this.bytes[this.at]))
      this.at += 1;
    return this.bytes.toString('latin1', start, this.at);
  }

  private numberOrReference(word: string): PdfValue {
    const reference = /^ (\d+) R\b/.exec(this.bytes.toString('latin1', this.at, this.at + 12));
    if (!reference) return Number(word);
    this.at += reference[0].length;
    return new PdfReference(Number(word));
  }

  private list(): PdfArray {
    this.at += 1;
    const items: PdfValue[] = [];
    for (let token = this.next(); token !== ']'; token = this.next()) items.push(valueOf(token));
    return items;
  }

  private map(): PdfDictionary {
    this.at += 2;
    const entries = new Map<string, PdfValue>();
    for (let key = this.next(); key !== '>'; key = this.next()) {
      if (!(key instanceof PdfName)) throw new TypeError('a key that is no name');
      entries.set(key.name, valueOf(this.next()));
    }
    this.at += 1;
    return entries;
  }

  private hex(): PdfText {
    const end = this.bytes.indexOf('>', this.at);
    const digits = this.bytes.toString('latin1', this.at + 1, end).replace(/\s/g, '');
    this.at = end + 1;
    return new PdfText(Buffer.from(digits, 'hex'));
  }

  private literal(): PdfText {
    const bytes: number[] = [];
    let depth = 0;
    for (this.at += 1; ; this.at += 1) {
      const byte = this.bytes[this.at];
      if (byte === undefined) throw new TypeError('a string without end');
      const character = String.fromCharCode(byte);
      if (character === ')' && depth === 0) break;
      if (character === '(') depth += 1;
      if (character === ')') depth -= 1;
      if (character === '\\') bytes.push(this.escaped());
      else bytes.push(byte);
    }
    this.at += 1;
    return new PdfText(Buffer.from(bytes));
  }

  private escaped(): number {
    this.at += 1;
    const octal = /^[0-7]{1,3}/.exec(this.bytes.toString('latin1', this.at, this.at + 3))?.[0];
    if (octal !== undefined) {
      this.at += octal.length - 1;
      return Number.parseInt(octal, 8);
    }
    const character = String.fromCharCode(this.bytes[this.at]!);
    return ({ n: '\n', r: '\r', t: '\t', b: '\b', f: '\f' }[character] ?? character).charCodeAt(0);
  }
}

function valueOf(token: Token | undefined): PdfValue {
  if (typeof token === 'string' || token === undefined) throw new TypeError(`no value but ${token}`);
  return token;
}
