/** What is known of the place, the season and the bed of a sheet, as far as cautions follow from it. */
import { heatOfMonths } from '../climate/heat-of-months.ts';
import type { Guide, RegionRecord } from '../records/guide.ts';
import type { Audience } from '../records/schemas/hazard.ts';
import { traitsOfAll, worstHeat, type Circumstances } from '../safety/circumstances.ts';
import type { SheetContext } from './sheet-context.ts';

/**
 * What holds for a sheet without anyone saying so: who it is for, what it sows, and for something that is built, the
 * open air, the heat of the region's hottest month and a bed whose crop is eaten. `conditions` are what a composer knows
 * beyond that, as that a build stands in the wind.
 */
export function circumstancesOf(
  { guide, sheet, facts }: SheetContext,
  conditions: readonly string[] = [],
): Circumstances {
  const audience = audienceOf(sheet.kind);
  const known = {
    ...(sheet.project === undefined ? {} : circumstancesOfProject(guide, sheet.project, [facts.region])),
    ...(audience === 'adults' ? {} : { audience }),
  };
  const all = [...(known.conditions ?? []), ...conditions];
  const more = all.length === 0 ? {} : { conditions: all };
  if (sheet.project !== undefined || sheet.crop === undefined) return { ...known, ...more };
  return { ...known, ...more, crops: traitsOfAll(guide.crops.filter(({ id }) => id === sheet.crop)) };
}

/** Who a kind of sheet is for: adults, unless it is made for a class or for the viewers of a segment. */
export function audienceOf(kind: string): Audience {
  return audienceOfKind.get(kind) ?? 'adults';
}

const audienceOfKind: ReadonlyMap<string, Audience> = new Map([
  ['class-handout', 'class'],
  ['companion-sheet', 'viewers'],
]);

/** What holds for a project in some regions: the heat is that of the hottest. */
export function circumstancesOfProject(
  guide: Guide,
  projectId: string,
  regions: readonly RegionRecord[],
): Circumstances {
  const project = guide.projects.find(({ id }) => id === projectId);
  const sown = project && 'sow' in project ? project.sow : undefined;
  const heat = worstHeat(regions.flatMap(heatBandsOf));
  const conditions = [
    ...(project ? ['outdoors'] : []),
    ...(heat === undefined ? [] : [heat]),
    ...(sown && sown.length > 0 ? ['food-bed'] : []),
  ];
  const crops = sown && guide.crops.filter(({ id }) => sown.some(({ crop }) => crop === id));
  return { conditions, ...(crops ? { crops: traitsOfAll(crops) } : {}) };
}

/** The band of the heat index of each month; none where the region gives no temperatures. */
export function heatBandsOf({ temperatureData, humidity }: RegionRecord): readonly string[] {
  const climate = temperatureData && { ...temperatureData, ...(humidity ? { humidity } : {}) };
  return heatOfMonths(climate).flatMap(({ band: { value } }) =>
    value.kind === 'choice' ? [value.value] : [],
  );
}
