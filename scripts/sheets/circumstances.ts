/** What is known of the place, the season and the bed of a sheet, as far as cautions follow from it. */
import { heatOfMonths } from '../climate/heat-of-months.ts';
import type { Guide, RegionRecord } from '../records/guide.ts';
import { traitsOfAll, worstHeat, type Circumstances } from '../safety/circumstances.ts';
import type { SheetContext } from './sheet-context.ts';

/**
 * What holds for a sheet without anyone saying so: what it sows, and for something that is built, the heat of the
 * region's hottest month and a bed whose crop is eaten. A composer that knows more adds it:
 * `{ ...circumstancesOf(context), conditions: [...] }`.
 */
export function circumstancesOf({ guide, sheet, facts }: SheetContext): Circumstances {
  if (sheet.project !== undefined) return circumstancesOfProject(guide, sheet.project, [facts.region]);
  if (sheet.crop === undefined) return {};
  return { crops: traitsOfAll(guide.crops.filter(({ id }) => id === sheet.crop)) };
}

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
    ...(heat === undefined ? [] : [heat]),
    ...(sown && sown.length > 0 ? ['food-bed'] : []),
  ];
  const crops = sown && guide.crops.filter(({ id }) => sown.some(({ crop }) => crop === id));
  return { conditions, ...(crops ? { crops: traitsOfAll(crops) } : {}) };
}

/** The band of the heat index of each month; none where the region gives no temperatures. */
function heatBandsOf({ temperatureData, humidity }: RegionRecord): readonly string[] {
  const climate = temperatureData && { ...temperatureData, ...(humidity ? { humidity } : {}) };
  return heatOfMonths(climate).flatMap(({ band: { value } }) =>
    value.kind === 'choice' ? [value.value] : [],
  );
}
