/**
 * The records of a guide that have been read and found right, one by one. Where some records are at fault the
 * others are here all the same, so that what only shows itself in computing is reported in the same run.
 */
import type { FreezeData } from '../climate/freeze-data.ts';
import type { Place } from '../diagnostics/diagnostic.ts';
import type { Design } from '../document/design.ts';
import type { ProseBlock, ProseInline } from '../prose/prose.ts';
import type { HazardCatalogue } from '../safety/catalogue.ts';
import type { Crop } from './schemas/crop.ts';
import type { RecordKind } from './schemas/kit.ts';
import type { Project } from './schemas/project.ts';
import type { Publisher } from './schemas/publisher.ts';
import type { Region } from './schemas/region.ts';
import type { SheetHeader } from './schemas/sheet.ts';
import type { Source } from './schemas/source.ts';

export interface RegionRecord extends Omit<Region, 'freeze'> {
  readonly freeze: FreezeData;
  /** What `temperatures` says or names a file for, in held units. */
  readonly temperatureData?: TemperatureData;
}

/** Monthly means of the daily minimum and maximum, January first, and the rain of each month where it is known. */
export interface TemperatureData {
  readonly minimumC: readonly number[];
  readonly maximumC: readonly number[];
  readonly rainMm?: readonly number[];
  readonly source: string;
  /** Where the record does not type the figures, the station they are of. */
  readonly station?: string;
}

export interface SheetRecord extends SheetHeader {
  readonly id: string;
  readonly titleProse: readonly ProseInline[];
  readonly descriptionProse: readonly ProseInline[];
  readonly prose: readonly ProseBlock[];
  /** What each of `questions` asks and its answer, and that of `graph`; only for a class handout. */
  readonly askProse?: readonly AskProse[];
  readonly graphProse?: AskProse;
  /** The meanings of `words`. */
  readonly meaningProse?: readonly (readonly ProseInline[])[];
  /** What is said and shown in each of `beats`; only for a segment companion sheet. */
  readonly beatProse?: readonly BeatProse[];
}

export type ProjectRecord = Project & {
  /** The text of each step, in the order of the steps. */
  readonly stepProse: readonly (readonly ProseInline[])[];
  /** For a class: what each step says, where it has words of its own for that, and what children do meanwhile. */
  readonly classProse: readonly ClassStepProse[];
};

export interface BeatProse {
  readonly say: readonly ProseInline[];
  readonly caption?: readonly ProseInline[];
}

export interface AskProse {
  readonly ask: readonly ProseInline[];
  readonly answer: readonly ProseInline[];
}

export interface ClassStepProse {
  readonly text?: readonly ProseInline[];
  readonly meanwhile?: readonly ProseInline[];
}

export type PlacedKind = RecordKind | 'sheet' | 'publisher';

export interface Guide {
  readonly publisher: Publisher;
  /** Each list in the order of ids. */
  readonly regions: readonly RegionRecord[];
  readonly crops: readonly Crop[];
  readonly projects: readonly ProjectRecord[];
  readonly sheets: readonly SheetRecord[];
  readonly sources: ReadonlyMap<string, Source>;
  readonly hazards: HazardCatalogue;
  /** Phrases of the publisher's language in ICU message format. */
  readonly phrases: ReadonlyMap<string, string>;
  readonly design: Design;
  /** Where a value of a record stands, for faults that only show themselves later. */
  readonly placeOf: (kind: PlacedKind, id: string, pointer: string) => Place;
  /** Where a piece of text stands within a value of a record; `occurrence` counts from 0. */
  readonly placeOfText: (
    kind: PlacedKind,
    id: string,
    at: { readonly pointer: string; readonly piece: string; readonly occurrence: number },
  ) => Place;
  /** Cautions and profiles of the guide itself, before they were merged with those of Groundsheet. */
  readonly ownHazards: HazardCatalogue;
  readonly builtInHazards: HazardCatalogue;
  /** Ids of crops, regions and projects that were met but found wrong: what refers to them is no second fault. */
  readonly spoilt: ReadonlySet<string>;
}
