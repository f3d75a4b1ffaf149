import { posix } from 'node:path';
import type { FreezeData } from '../climate/freeze-data.ts';
import type { Diagnostic, Place } from '../diagnostics/diagnostic.ts';
import { parseInlineProse } from '../prose/parse.ts';
import { catalogueOf, mergeCatalogues, type HazardCatalogue } from '../safety/catalogue.ts';
import { missingCharacterFaults } from './characters.ts';
import {
  byId,
  collectLists,
  collectKinds,
  collectSingles,
  idsAreFileNames,
  type Collected,
  type Loaded,
} from './collect.ts';
import { readFontCoverage } from './font-files.ts';
import type { Guide, PlacedKind, ProjectRecord, RegionRecord, TemperatureData } from './guide.ts';
import { mostTold } from './most-told.ts';
import { readMonthlyNormalsCsv } from './monthly-normals-csv.ts';
import { readNormalsCsv } from './normals-csv.ts';
import { readPhrases } from './phrases.ts';
import { readDesign } from './read-design.ts';
import { readTree, type SourceText } from './read-tree.ts';
import { CropSchema } from './schemas/crop.ts';
import { CautionSchema, CombinationSchema, HazardProfileSchema, type Combination } from './schemas/hazard.ts';
import type { RecordKind } from './schemas/kit.ts';
import { projectSchemaOf, type Project } from './schemas/project.ts';
import { PublisherSchema, type Publisher } from './schemas/publisher.ts';
import { RegionSchema, type Region } from './schemas/region.ts';
import { SourceSchema } from './schemas/source.ts';
import { readSheets } from './sheets.ts';
import { readStationCsv } from './station-csv.ts';
import { suggestion } from './suggest.ts';

export interface GuideReading {
  /** The records that are right; a publisher at fault is stood in for. Not to be built when there are errors. */
  readonly guide: Guide;
  readonly diagnostics: readonly Diagnostic[];
}

/**
 * Reads a guide folder: every record, every fault of every record in one run. The phrases, cautions and
 * sources that come with Groundsheet (in `builtInRoot`) stand under the guide's own.
 */
export async function readGuide(options: { root: string; builtInRoot: string }): Promise<GuideReading> {
  const { root, builtInRoot } = options;
  const own = await readTree(root, ['content', 'crops']);
  const builtIn =
    root === builtInRoot ? { files: [], diagnostics: [] } : await readTree(builtInRoot, ['content']);
  const diagnostics: Diagnostic[] = [...own.diagnostics, ...builtIn.diagnostics];
  // One by one: as arguments of one call, a hundred thousand faults would overrun the stack.
  const tell = (more: readonly Diagnostic[]): void => {
    for (const diagnostic of more) diagnostics.push(diagnostic);
  };
  const keep = <T>(reading: { diagnostics: readonly Diagnostic[] } & T): T => {
    tell(reading.diagnostics);
    return reading;
  };
  const { design } = keep(await readDesign(root, builtInRoot));
  tell(missingCharacterFaults(own.files, await readFontCoverage()));

  const files = new GuideFiles(own.files);
  const base = new GuideFiles(builtIn.files);
  const publishers = keep(collectSingles(PublisherSchema, files.take(/^content\/publisher\.ya?ml$/)));
  const sources = keep(collectLists(SourceSchema, files.take(/^content\/sources[^/]*\.ya?ml$/)));
  const baseSources = collectLists(SourceSchema, base.take(/^content\/sources[^/]*\.ya?ml$/));
  const crops = keep(collectSingles(CropSchema, files.take(/^crops\/.+\.ya?ml$/)));
  const regions = keep(collectSingles(RegionSchema, files.take(/^content\/regions\/.+\.ya?ml$/)));
  const projects = keep(collectKinds<Project>(projectSchemaOf, files.take(/^content\/projects\/.+\.ya?ml$/)));
  const hazards = keep(collectHazards(files));
  const phrases = keep(
    readPhrases(base.take(languageFile), files.take(languageFile), {
      language: publishers.records[0]?.value.language ?? 'en',
    }),
  );
  const sheets = keep(readSheets(files.take(/^content\/sheets\/.+\.md$/)));
  const tables = new Map(files.take(/\.csv$/i).map((file) => [file.path, file]));
  tell(files.unread(own.others));

  for (const [name, records] of [
    ['crop', crops],
    ['region', regions],
    ['project', projects],
  ] as const) {
    tell(idsAreFileNames(records.records));
    const folder = name === 'crop' ? 'crops' : 'content/regions';
    const toldAlready = diagnostics.some(({ place }) => place?.file.startsWith(folder));
    if (records.records.length === 0 && !toldAlready && name !== 'project')
      diagnostics.push(missingRecords(name, folder));
  }
  if (publishers.records.length === 0 && publishers.spoilt.size === 0) {
    diagnostics.push(missingRecords('publisher', 'content/publisher.yaml'));
  }
  if (sheets.records.length === 0 && sheets.spoilt.size === 0)
    diagnostics.push(missingRecords('sheet', 'content/sheets'));

  const known = {
    source: keep(byId('source', sources.records)).map,
    crop: keep(byId('crop', crops.records)).map,
    region: keep(byId('region', regions.records)).map,
    project: keep(byId('project', projects.records)).map,
    caution: keep(byId('caution', hazards.cautions.records)).map,
    tool: keep(byId('tool', hazards.tools.records)).map,
    material: keep(byId('material', hazards.materials.records)).map,
    action: keep(byId('action', hazards.actions.records)).map,
    condition: keep(byId('condition', hazards.conditions.records)).map,
    combination: keep(byId('combination', hazards.combinations.records)).map,
  };
  for (const record of baseSources.records)
    if (!known.source.has(record.value.id)) known.source.set(record.value.id, record);
  const baseHazards = collectHazards(base);
  const catalogue = mergeCatalogues(plainCatalogue(baseHazards), plainCatalogue(hazards));

  const ids: Readonly<Record<RecordKind, ReadonlySet<string>>> = {
    source: new Set(known.source.keys()),
    crop: new Set([...known.crop.keys(), ...crops.spoilt]),
    region: new Set([...known.region.keys(), ...regions.spoilt]),
    project: new Set([...known.project.keys(), ...projects.spoilt]),
    caution: new Set([...catalogue.cautions.keys(), ...hazards.cautions.spoilt]),
    tool: new Set([...catalogue.tools.keys(), ...hazards.tools.spoilt]),
    material: new Set([...catalogue.materials.keys(), ...hazards.materials.spoilt]),
    action: new Set([...catalogue.actions.keys(), ...hazards.actions.spoilt]),
    condition: new Set([...catalogue.conditions.keys(), ...hazards.conditions.spoilt]),
    combination: new Set([...catalogue.combinations.keys(), ...hazards.combinations.spoilt]),
  };
  for (const source of sources.spoilt) (ids.source as Set<string>).add(source);
  const everyRecord: readonly Loaded<unknown>[] = [
    ...publishers.records,
    ...sources.records,
    ...crops.records,
    ...regions.records,
    ...projects.records,
    ...hazards.cautions.records,
    ...hazards.tools.records,
    ...hazards.materials.records,
    ...hazards.actions.records,
    ...hazards.conditions.records,
    ...hazards.combinations.records,
    ...sheets.records,
  ];
  // Of a file that could not be read nobody knows which records it holds, so no reference to that kind is judged.
  const unknowable = new Set<RecordKind>([
    ...(sources.unreadable ? (['source'] as const) : []),
    ...(hazards.cautions.unreadable ? (['caution'] as const) : []),
    ...(hazards.tools.unreadable ? (['tool'] as const) : []),
    ...(hazards.materials.unreadable ? (['material'] as const) : []),
    ...(hazards.actions.unreadable ? (['action'] as const) : []),
    ...(hazards.conditions.unreadable ? (['condition'] as const) : []),
  ]);
  tell(everyRecord.flatMap((record) => referenceFaults(record, ids, unknowable)));
  const sound = soundIds(known, catalogue);

  const regionRecords = regions.records.map((record) => keep(readRegion(record, tables)).region);
  const projectRecords = projects.records.map((record) => keep(readSteps(record)).project);
  const publisher = publishers.records[0]?.value ?? unknownPublisher;
  const valid = <T extends { readonly id: string }>(records: readonly Loaded<T>[]): readonly T[] =>
    sortedById([
      ...new Map(
        records
          .filter((record) => referenceFaults(record, sound).length === 0)
          .map(({ value }) => [value.id, value]),
      ).values(),
    ]);
  const plain = <T>(map: ReadonlyMap<string, Loaded<T>>): ReadonlyMap<string, T> =>
    new Map([...map].map(([id, record]) => [id, record.value]));
  const sheetsById = keep(byId('sheet', sheets.records)).map;
  const placed: Readonly<Record<PlacedKind, ReadonlyMap<string, Loaded<unknown>>>> = {
    ...known,
    sheet: sheetsById,
    publisher: new Map(publishers.records.map((record) => ['publisher', record])),
  };
  const rightRegions = new Set(valid(regions.records).map(({ id }) => id));
  const rightProjects = new Set(valid(projects.records).map(({ id }) => id));
  const crop = valid(crops.records);
  return {
    diagnostics: mostTold(diagnostics),
    guide: {
      publisher,
      regions: sortedById(
        regionRecords.filter(
          (region) => region !== undefined && rightRegions.has(region.id),
        ) as RegionRecord[],
      ),
      crops: crop,
      projects: sortedById(projectRecords.filter((project) => rightProjects.has(project.id))),
      sheets: valid(sheets.records),
      sources: plain(known.source),
      hazards: catalogue,
      ownHazards: plainCatalogue(hazards),
      builtInHazards: plainCatalogue(baseHazards),
      phrases: phrases.phrases,
      design,
      placeOf: (kind, id, pointer) => placeIn(placed[kind], id, pointer),
      placeOfText: (kind, id, { pointer, piece, occurrence }) => {
        const record = placed[kind].get(id);
        return record
          ? record.file.placeOfText(record.pointer + pointer, piece, occurrence)
          : placeIn(placed[kind], id, pointer);
      },
      spoilt: new Set([
        ...[crops, regions, projects].flatMap((collected) => [...collected.spoilt]),
        ...crops.records.map(({ value }) => value.id).filter((id) => !crop.some((right) => right.id === id)),
      ]),
    },
  };
}

/** Pictures, and what file managers leave behind. */
const pictureOrTrace = /\.(png|jpe?g|svg|webp|gif|db|ini)$/i;

/** Stands in for a publisher's record that is at fault, so that what computing would show is told in the same run. */
const unknownPublisher: Publisher = {
  office: '–',
  year: 2000,
  issued: '2000-01-01',
  review: '2000-01-01',
  language: 'en',
  paper: 'letter',
  units: 'customary-first',
};

const languageFile = /^content\/languages\/.+\.ya?ml$/;

/** Hands out the files of a guide by pattern, and knows in the end which nobody asked for. */
class GuideFiles {
  readonly #files: readonly SourceText[];
  readonly #taken = new Set<string>();

  constructor(files: readonly SourceText[]) {
    this.#files = files;
  }

  take(pattern: RegExp): SourceText[] {
    const found = this.#files.filter((file) => pattern.test(file.path));
    found.forEach((file) => this.#taken.add(file.path));
    return found;
  }

  unread(others: readonly string[]): Diagnostic[] {
    const left = this.#files.filter((file) => !this.#taken.has(file.path)).map((file) => file.path);
    const strange = others.filter(
      (path) => !path.startsWith('content/pictures/') && !pictureOrTrace.test(path),
    );
    return [...left, ...strange].sort().map((path) => ({
      code: 'unread-file',
      severity: 'warning',
      message: `${path} is read by nothing.`,
      hint: 'Records go to crops/, content/regions/, content/projects/, content/sheets/, content/cautions/, content/languages/ and content/sources.yaml; they end in .yaml, .md or .csv.',
      place: { file: path, line: 1, column: 1 },
    }));
  }
}

interface CollectedHazards {
  readonly cautions: Collected<HazardCatalogue['cautions'] extends ReadonlyMap<string, infer T> ? T : never>;
  readonly tools: Collected<HazardCatalogue['tools'] extends ReadonlyMap<string, infer T> ? T : never>;
  readonly materials: CollectedHazards['tools'];
  readonly actions: CollectedHazards['tools'];
  readonly conditions: CollectedHazards['tools'];
  readonly combinations: Collected<Combination>;
  readonly diagnostics: readonly Diagnostic[];
}

function collectHazards(files: GuideFiles): CollectedHazards {
  const cautions = collectLists(CautionSchema, files.take(/^content\/cautions\/cautions[^/]*\.ya?ml$/));
  const profiles = (kind: string): CollectedHazards['tools'] =>
    collectLists(HazardProfileSchema, files.take(new RegExp(`^content/cautions/${kind}[^/]*\\.ya?ml$`)));
  const [tools, materials, actions] = [profiles('tools'), profiles('materials'), profiles('actions')];
  const conditions = profiles('conditions');
  const combinations = collectLists(
    CombinationSchema,
    files.take(/^content\/cautions\/combinations[^/]*\.ya?ml$/),
  );
  return {
    cautions,
    tools,
    materials,
    actions,
    conditions,
    combinations,
    diagnostics: [cautions, tools, materials, actions, conditions, combinations].flatMap(
      (part) => part.diagnostics,
    ),
  };
}

function plainCatalogue(hazards: CollectedHazards): HazardCatalogue {
  const values = <T>(collected: Collected<T>): T[] => collected.records.map((record) => record.value);
  return catalogueOf({
    cautions: values(hazards.cautions),
    tools: values(hazards.tools),
    materials: values(hazards.materials),
    actions: values(hazards.actions),
    conditions: values(hazards.conditions),
    combinations: values(hazards.combinations),
  });
}

type Ids = Readonly<Record<RecordKind, ReadonlySet<string>>>;

/** The ids of records that are right themselves, profiles whose every caution is right among them. */
function soundIds(
  known: Readonly<Record<RecordKind, ReadonlyMap<string, unknown>>>,
  catalogue: HazardCatalogue,
): Ids {
  const whole = (profiles: HazardCatalogue['tools']): ReadonlySet<string> =>
    new Set(
      [...profiles.values()]
        .filter(({ cautions }) => cautions.every((id) => catalogue.cautions.has(id)))
        .map(({ id }) => id),
    );
  const ids = (kind: RecordKind): ReadonlySet<string> => new Set(known[kind].keys());
  return {
    source: ids('source'),
    crop: ids('crop'),
    region: ids('region'),
    project: ids('project'),
    caution: new Set(catalogue.cautions.keys()),
    tool: whole(catalogue.tools),
    material: whole(catalogue.materials),
    action: whole(catalogue.actions),
    condition: whole(catalogue.conditions),
    combination: ids('combination'),
  };
}

function referenceFaults(
  record: Loaded<unknown>,
  ids: Ids,
  unknowable: ReadonlySet<RecordKind> = new Set(),
): Diagnostic[] {
  return record.references.records.flatMap(({ kind, id, pointer }): Diagnostic[] => {
    const known = ids[kind as RecordKind];
    if (known.has(id) || unknowable.has(kind as RecordKind)) return [];
    const hazard = kind === 'tool' || kind === 'material' || kind === 'action';
    return [
      {
        code: hazard ? 'no-hazard-profile' : 'unknown-reference',
        severity: 'error',
        message: hazard
          ? `The ${kind} “${id}” has no hazard profile, so its cautions are unknown.`
          : `There is no ${kind} with the id “${id}”.`,
        hint: suggestion(
          id,
          known,
          hazard
            ? `Add a profile for it to content/cautions/${kind}s.yaml, even if it is harmless.`
            : homes[kind as RecordKind],
        ),
        place: record.file.placeOf(record.pointer + pointer),
      },
    ];
  });
}

const homes: Readonly<Record<RecordKind, string>> = {
  source: 'Add it to content/sources.yaml.',
  crop: 'Add it as a file in crops/.',
  region: 'Add it as a file in content/regions/.',
  project: 'Add it as a file in content/projects/.',
  caution: 'Add it to content/cautions/cautions.yaml.',
  tool: 'Add it to content/cautions/tools.yaml.',
  material: 'Add it to content/cautions/materials.yaml.',
  action: 'Add it to content/cautions/actions.yaml.',
  condition: 'Add it to content/cautions/conditions.yaml.',
  combination: 'Add it to content/cautions/combinations.yaml.',
};

/** Reads the data files that a region names, or takes its typed tables. */
function readRegion(
  record: Loaded<Region>,
  tables: ReadonlyMap<string, SourceText>,
): { region: RegionRecord | undefined; diagnostics: readonly Diagnostic[] } {
  const { freeze, ...rest } = record.value;
  const dates = readFreeze(record, freeze, tables);
  const temperatures = readTemperatures(record, tables);
  const diagnostics = [...dates.diagnostics, ...temperatures.diagnostics];
  if (!dates.data || (rest.temperatures && !temperatures.data)) return { region: undefined, diagnostics };
  const { data: temperatureData } = temperatures;
  return {
    region: { ...rest, freeze: dates.data, ...(temperatureData ? { temperatureData } : {}) },
    diagnostics,
  };
}

interface DataReading<D> {
  readonly data: D | undefined;
  readonly diagnostics: readonly Diagnostic[];
}

function readFreeze(
  record: Loaded<Region>,
  freeze: Region['freeze'],
  tables: ReadonlyMap<string, SourceText>,
): DataReading<FreezeData> {
  if ('table' in freeze) {
    const rows = freeze.table.map((row) => ({
      thresholdC: row.threshold.low,
      last: numbered(row.last),
      first: numbered(row.first),
    }));
    return { data: { kind: 'table', source: freeze.source, rows }, diagnostics: [] };
  }
  const { source } = freeze;
  if ('daily' in freeze) {
    const found = findTable(record, '/freeze/daily', freeze.daily, tables);
    if (!found.data) return { data: undefined, diagnostics: found.diagnostics };
    const { station, diagnostics } = readStationCsv(found.data.path, found.data.text);
    return { data: station && { kind: 'daily', station, source }, diagnostics };
  }
  const found = findTable(record, '/freeze/normals', freeze.normals, tables);
  if (!found.data) return { data: undefined, diagnostics: found.diagnostics };
  const { normals, diagnostics } = readNormalsCsv(found.data.path, found.data.text);
  return { data: normals && { kind: 'normals', normals, source }, diagnostics };
}

function readTemperatures(
  record: Loaded<Region>,
  tables: ReadonlyMap<string, SourceText>,
): DataReading<TemperatureData> {
  const { temperatures } = record.value;
  if (!temperatures) return { data: undefined, diagnostics: [] };
  const { source } = temperatures;
  if ('monthlyNormals' in temperatures) {
    const pointer = '/temperatures/monthlyNormals';
    const found = findTable(record, pointer, temperatures.monthlyNormals, tables);
    if (!found.data) return { data: undefined, diagnostics: found.diagnostics };
    const { normals, diagnostics } = readMonthlyNormalsCsv(found.data.path, found.data.text);
    if (!normals) return { data: undefined, diagnostics };
    const { name, minimumC, maximumC, rainMm } = normals;
    const rain = rainMm ? { rainMm } : {};
    return { data: { minimumC, maximumC, ...rain, source, station: name }, diagnostics };
  }
  const values = (months: readonly { readonly low: number }[]): number[] => months.map(({ low }) => low);
  const [minimumC, maximumC] = [values(temperatures.minimum), values(temperatures.maximum)];
  const crossed = minimumC.findIndex((minimum, month) => minimum > maximumC[month]!);
  if (crossed >= 0) {
    const fault: Diagnostic = {
      code: 'out-of-range',
      severity: 'error',
      message: `The mean maximum of month ${crossed + 1} is below its mean minimum.`,
      hint: 'Compare both lists with their source; January stands first in each.',
      place: record.file.placeOf(`${record.pointer}/temperatures/maximum/${crossed}`),
    };
    return { data: undefined, diagnostics: [fault] };
  }
  const rain = temperatures.rain ? { rainMm: values(temperatures.rain) } : {};
  return { data: { minimumC, maximumC, ...rain, source }, diagnostics: [] };
}

/** The CSV file that a record names, which lies in content/regions/. */
function findTable(
  record: Loaded<Region>,
  pointer: string,
  name: string,
  tables: ReadonlyMap<string, SourceText>,
): DataReading<SourceText> {
  const place = record.file.placeOf(pointer);
  const fault = (code: Diagnostic['code'], message: string, hint: string): DataReading<SourceText> => ({
    data: undefined,
    diagnostics: [fileFault(code, message, hint, place)],
  });
  const path = posix.normalize(posix.join('content/regions', name));
  if (!path.startsWith('content/') || posix.isAbsolute(name)) {
    return fault(
      'link-leaves-guide',
      `“${name}” leads out of content/regions/.`,
      'Put the file into content/regions/ and give its name only.',
    );
  }
  const table = tables.get(path);
  if (table) return { data: table, diagnostics: [] };
  const names = [...tables.keys()]
    .filter((at) => at.startsWith('content/regions/'))
    .map((at) => at.slice('content/regions/'.length));
  return fault(
    'unknown-reference',
    `There is no file ${path}.`,
    suggestion(name, names, 'Put the CSV file into content/regions/.'),
  );
}

function numbered(table: Readonly<Record<string, number | undefined>>): Partial<Record<number, number>> {
  return Object.fromEntries(
    Object.entries(table).filter((entry): entry is [string, number] => entry[1] !== undefined),
  );
}

/** Reads the Markdown in the steps of a project. */
function readSteps(record: Loaded<Project>): { project: ProjectRecord; diagnostics: readonly Diagnostic[] } {
  const readings = record.value.steps.map((step, index) =>
    parseInlineProse(step.text, (piece, _, occurrence) =>
      record.file.placeOfText(`/steps/${index}/text`, piece, occurrence),
    ),
  );
  const ofClass = record.value.steps.map((step, index) => ({
    text: readForClass(record, `/steps/${index}/class`, step.class),
    meanwhile: readForClass(record, `/steps/${index}/meanwhile`, step.meanwhile),
  }));
  return {
    project: {
      ...record.value,
      stepProse: readings.map((reading) => reading.content),
      classProse: ofClass.map(({ text, meanwhile }) => ({
        ...(text ? { text: text.content } : {}),
        ...(meanwhile ? { meanwhile: meanwhile.content } : {}),
      })),
    },
    diagnostics: [
      ...readings,
      ...ofClass.flatMap(({ text, meanwhile }) => [text, meanwhile].filter((each) => each !== undefined)),
    ].flatMap((reading) => reading.diagnostics),
  };
}

/** Reads what a step says for a class; undefined where it says nothing. */
function readForClass(
  { file }: Loaded<Project>,
  pointer: string,
  words: string | undefined,
): ReturnType<typeof parseInlineProse> | undefined {
  if (words === undefined) return undefined;
  return parseInlineProse(words, (piece, _, occurrence) => file.placeOfText(pointer, piece, occurrence));
}

function missingRecords(what: string, where: string): Diagnostic {
  return fileFault(
    'folder-missing',
    `The guide has no ${what} (${where}).`,
    `Add one; the demonstration guide shows how it looks.`,
    { file: where, line: 1, column: 1 },
  );
}

function fileFault(code: Diagnostic['code'], message: string, hint: string, place: Place): Diagnostic {
  return { code, severity: 'error', message, hint, place };
}

function sortedById<T extends { readonly id: string }>(records: readonly T[]): readonly T[] {
  return [...records].sort((a, b) => (a.id < b.id ? -1 : a.id > b.id ? 1 : 0));
}

function placeIn(map: ReadonlyMap<string, Loaded<unknown>>, id: string, pointer: string): Place {
  const record = map.get(id);
  if (!record) return { file: id, line: 1, column: 1 };
  return record.file.placeOf(record.pointer + pointer);
}
