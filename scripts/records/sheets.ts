import type { Diagnostic, Place } from '../diagnostics/diagnostic.ts';
import { parseInlineProse, parseProse, type Locate } from '../prose/parse.ts';
import { stem, type Collected, type Loaded } from './collect.ts';
import { decode, referencesIn } from './decode.ts';
import type { SheetRecord } from './guide.ts';
import type { SourceText } from './read-tree.ts';
import { readClassProse, needsOfClass } from './class-prose.ts';
import { needsOfCompanion, readCompanionProse } from './companion-prose.ts';
import { SheetSchema, type SheetHeader } from './schemas/sheet.ts';
import { validate } from './validate.ts';
import { parseYaml, type YamlFile } from './yaml-file.ts';

/** Reads the Markdown files of a guide: a header in YAML between two lines of three hyphens, then prose. */
export function readSheets(files: readonly SourceText[]): Collected<SheetRecord> {
  const records: Loaded<SheetRecord>[] = [];
  const spoilt = new Set<string>();
  const diagnostics: Diagnostic[] = [];
  for (const source of files) {
    const reading = readSheet(source);
    diagnostics.push(...reading.diagnostics);
    if (reading.record) records.push(reading.record);
    else spoilt.add(stem(source.path));
  }
  return { records, spoilt, unreadable: false, diagnostics };
}

function readSheet(source: SourceText): { record?: Loaded<SheetRecord>; diagnostics: readonly Diagnostic[] } {
  const match = /^---\n([\s\S]*?\n)---[ \t]*(?:\n|$)/.exec(source.text);
  if (!match) {
    return {
      diagnostics: [
        {
          code: 'missing-key',
          severity: 'error',
          message: `${source.path} does not start with a header.`,
          hint: 'Start it with a line of ---, the keys kind, number, title and description, and another line of ---.',
          place: { file: source.path, line: 1, column: 1 },
        },
      ],
    };
  }
  const header = match[1]!;
  const body = source.text.slice(match[0].length);
  const bodyLine = match[0].split('\n').length - 1;
  const parsed = parseYaml(source.path, header, 1);
  const prose = parseProse(body, locateIn(source.path, body, bodyLine));
  if (!parsed.file) return { diagnostics: [...parsed.diagnostics, ...prose.diagnostics] };
  const { file } = parsed;
  const id = stem(source.path);
  const faults = [...validate(SheetSchema, file.value, file), ...idFaults(id, source.path)];
  if (faults.length > 0) return { diagnostics: [...faults, ...prose.diagnostics] };
  const value = decode(SheetSchema, file.value);
  const lacking = needs(value, file);
  if (lacking.length > 0) return { diagnostics: [...lacking, ...prose.diagnostics] };
  const title = parseInlineProse(value.title, locateKey(file, '/title'));
  const description = parseInlineProse(value.description, locateKey(file, '/description'));
  const ofClass = readClassProse(value, file);
  const ofSegment = readCompanionProse(value, file);
  return {
    diagnostics: [
      ...prose.diagnostics,
      ...title.diagnostics,
      ...description.diagnostics,
      ...ofClass.diagnostics,
      ...ofSegment.diagnostics,
    ],
    record: {
      value: {
        ...value,
        id,
        titleProse: title.content,
        descriptionProse: description.content,
        prose: prose.blocks,
        ...ofClass.prose,
        ...ofSegment.prose,
      },
      file,
      pointer: '',
      references: referencesIn(SheetSchema, file.value),
    },
  };
}

/** A build card needs its project, a fact sheet its crop; a class handout and a companion sheet need more. */
function needs(value: SheetHeader, file: YamlFile): Diagnostic[] {
  if (value.kind === 'class-handout') return needsOfClass(value, file);
  if (value.kind === 'companion-sheet') return needsOfCompanion(value, file);
  const key = value.kind === 'build-card' ? 'project' : value.kind === 'fact-sheet' ? 'crop' : undefined;
  if (!key || value[key] !== undefined) return [];
  return [
    {
      code: 'missing-key',
      severity: 'error',
      message: `A ${value.kind.replace('-', ' ')} has no “${key}”.`,
      hint: `Add “${key}:” with the id of the ${key} it is about.`,
      place: file.placeOf('/kind'),
    },
  ];
}

function idFaults(id: string, path: string): Diagnostic[] {
  if (/^[a-z0-9]+(-[a-z0-9]+)*$/.test(id)) return [];
  return [
    {
      code: 'bad-id',
      severity: 'error',
      message: `The file name “${id}” cannot be used in an address.`,
      hint: 'Use lower-case letters, digits and single hyphens, such as onions-from-sets.md.',
      place: { file: path, line: 1, column: 1 },
    },
  ];
}

const locateKey =
  (file: YamlFile, pointer: string): Locate =>
  (piece, _line, occurrence) =>
    file.placeOfText(pointer, piece, occurrence);

/** Finds pieces of a Markdown body; lines of the file start `bodyLine` lines further up. */
function locateIn(path: string, body: string, bodyLine: number): Locate {
  const lines = body.split('\n');
  return (piece, fromLine, occurrence): Place => {
    let left = occurrence;
    for (let line = fromLine; line < lines.length && piece !== ''; line += 1) {
      let column = lines[line]!.indexOf(piece);
      while (column >= 0) {
        if (left === 0) return { file: path, line: bodyLine + line + 1, column: column + 1 };
        left -= 1;
        column = lines[line]!.indexOf(piece, column + 1);
      }
    }
    return { file: path, line: bodyLine + fromLine + 1, column: 1 };
  };
}
