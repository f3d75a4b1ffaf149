import { readFileSync, readdirSync } from 'node:fs';
import { collectLists } from '../../scripts/records/collect.ts';
import {
  CautionSchema,
  CombinationSchema,
  HazardProfileSchema,
} from '../../scripts/records/schemas/hazard.ts';
import { SourceSchema } from '../../scripts/records/schemas/source.ts';
import { catalogueOf } from '../../scripts/safety/catalogue.ts';

const content = new URL('../../content/', import.meta.url);

function fileAt(name: string): { path: string; text: string } {
  return { path: `content/${name}`, text: readFileSync(new URL(name, content), 'utf8') };
}

/** The cautions and profiles that come with Groundsheet, read and validated as the program does. */
export const shippedRecords = {
  cautions: collectLists(CautionSchema, [fileAt('cautions/cautions.yaml')]),
  tools: collectLists(HazardProfileSchema, [fileAt('cautions/tools.yaml')]),
  materials: collectLists(HazardProfileSchema, [fileAt('cautions/materials.yaml')]),
  actions: collectLists(HazardProfileSchema, [fileAt('cautions/actions.yaml')]),
  conditions: collectLists(HazardProfileSchema, [fileAt('cautions/conditions.yaml')]),
  combinations: collectLists(CombinationSchema, [fileAt('cautions/combinations.yaml')]),
};

export const shippedLists = {
  cautions: shippedRecords.cautions.records.map(({ value }) => value),
  tools: shippedRecords.tools.records.map(({ value }) => value),
  materials: shippedRecords.materials.records.map(({ value }) => value),
  actions: shippedRecords.actions.records.map(({ value }) => value),
  conditions: shippedRecords.conditions.records.map(({ value }) => value),
  combinations: shippedRecords.combinations.records.map(({ value }) => value),
};

/** Every profile with its kind. */
export const shippedProfiles = (['tools', 'materials', 'actions', 'conditions'] as const).flatMap((kind) =>
  shippedLists[kind].map((profile) => ({ kind, profile })),
);

export const shippedCatalogue = catalogueOf(shippedLists);

export const safetySources = collectLists(SourceSchema, [fileAt('sources-hazards.yaml')]);

/** Ids of the sources of every file, in the order of the files. */
export function everySourceId(): string[] {
  const names = readdirSync(content).filter((name) => /^sources[^/]*\.yaml$/.test(name));
  return names
    .sort()
    .flatMap((name) => collectLists(SourceSchema, [fileAt(name)]).records.map(({ value }) => value.id));
}
