/**
 * What only shows itself when records are taken together or computed with: a freeze record that is out of order
 * or too thin, a build that does not add up, a hazard that no step carries. Each fault is told at its place.
 */
import { growingSeason, placeInSeason } from '../climate/calendar.ts';
import type { ChanceDates, DailyStation } from '../climate/freeze-data.ts';
import { freezesAllYear, shortestSeasonDays } from '../climate/freeze-seasons.ts';
import { freezeDataFault } from '../climate/freeze.ts';
import { hasErrors, type Diagnostic } from '../diagnostics/diagnostic.ts';
import { fromHeld } from '../quantities/units.ts';
import type { Guide, ProjectRecord, RegionRecord } from '../records/guide.ts';
import { mostTold } from '../records/most-told.ts';
import { sowingFault } from './bed.ts';
import { impossibleFreeze, winterOfOtherHemisphere } from './check-freeze.ts';
import { checkHazards } from './check-hazards.ts';
import { namesOfEveryCrop } from './check-names.ts';
import { structureOf } from '../structures/structures.ts';

export function checkGuide(guide: Guide): readonly Diagnostic[] {
  return mostTold([
    ...publisherFaults(guide),
    ...guide.crops.flatMap((crop) => cropFaults(guide, crop)),
    ...guide.regions.flatMap((region) => regionFaults(guide, region)),
    ...guide.projects.flatMap((project) => projectFaults(guide, project)),
    ...checkHazards(guide),
  ]);
}

function publisherFaults({ publisher, placeOf }: Guide): Diagnostic[] {
  if (publisher.review >= publisher.issued) return [];
  return [
    {
      code: 'impossible-date',
      severity: 'error',
      message: `The sheets are to be reviewed (${publisher.review}) before they are issued (${publisher.issued}).`,
      hint: 'Check the years of the two dates.',
      place: placeOf('publisher', 'publisher', '/review'),
    },
  ];
}

/** Figures of one crop that contradict each other. */
function cropFaults(guide: Guide, crop: Guide['crops'][number]): Diagnostic[] {
  const fault = (pointer: string, message: string, hint: string): Diagnostic => ({
    code: 'crop-figures',
    severity: 'error',
    message,
    hint,
    place: guide.placeOf('crop', crop.id, pointer),
  });
  const faults: Diagnostic[] = [];
  crop.plantings.forEach((planting, index) => {
    const at = `/plantings/${index}`;
    if (planting.method === 'transplant' && !planting.age) {
      faults.push(
        fault(
          at,
          'Transplants have no age, so the time to start them indoors is unknown.',
          'Add “age:” with its value and sources.',
        ),
      );
    }
    if (planting.method !== 'transplant' && planting.age) {
      faults.push(
        fault(
          `${at}/age`,
          `An age is given, but “${planting.method}” needs none.`,
          'Leave it out, or change the method to “transplant”.',
        ),
      );
    }
    if (planting.spring && planting.spring.closes.low < planting.spring.opens.low) {
      faults.push(
        fault(
          `${at}/spring/closes`,
          'The spring window closes before it opens.',
          'Times before the last freeze are negative: “-4 weeks”.',
        ),
      );
    }
  });
  const soil = crop.soilTemperature;
  if (soil && !(soil.minimum.low < soil.optimum.high && soil.optimum.low <= soil.maximum.high)) {
    faults.push(
      fault(
        '/soilTemperature',
        'The soil temperatures are not in order: minimum, optimum, maximum.',
        'Check the three figures and their units.',
      ),
    );
  }
  if (crop.seedsPerOunce && crop.seedsPerOunce.high < crop.seedsPerOunce.low) {
    faults.push(
      fault('/seedsPerOunce', 'The higher count of seeds is smaller than the lower one.', 'Swap the two.'),
    );
  }
  faults.push(...figureFaults(crop, fault));
  for (const [pointer, range] of [
    ['/yieldPer100Ft', crop.yieldPer100Ft],
    ['/soil/ph', crop.soil?.ph],
  ] as const) {
    if (range && range.high < range.low)
      faults.push(fault(`${pointer}/high`, 'The high end is smaller than the low one.', 'Swap the two.'));
  }
  crop.dayLength?.forEach(({ class: name }, index, all) => {
    if (all.findIndex((other) => other.class === name) < index)
      faults.push(
        fault(`/dayLength/${index}/class`, `The class “${name}” is listed twice.`, 'Keep one of the two.'),
      );
  });
  if (crop.spacing.inRow.value.low <= 0 || crop.spacing.betweenRows.value.low <= 0) {
    faults.push(
      fault(
        '/spacing',
        'A spacing of nothing leaves no room for a plant.',
        'Write the spacing as it is measured.',
      ),
    );
  }
  return faults;
}

/** Figures of this crop alone that carry a name of every crop, a name twice, or their ends the wrong way round. */
function figureFaults(
  crop: Guide['crops'][number],
  fault: (pointer: string, message: string, hint: string) => Diagnostic,
): Diagnostic[] {
  const figures = crop.figures ?? [];
  return figures.flatMap((figure, index) => {
    const at = `/figures/${index}`;
    if (namesOfEveryCrop.has(figure.id))
      return [
        fault(
          `${at}/id`,
          `“${crop.id}.${figure.id}” is the name of something that is known of crops already.`,
          'Give the figure another id.',
        ),
      ];
    if (figures.findIndex(({ id }) => id === figure.id) < index)
      return [
        fault(
          `${at}/id`,
          `Another figure has the id “${figure.id}” already.`,
          'Give one of the two another id.',
        ),
      ];
    if ('low' in figure && figure.high < figure.low)
      return [fault(`${at}/high`, 'The high end is smaller than the low one.', 'Swap the two.')];
    return [];
  });
}

function regionFaults(guide: Guide, region: RegionRecord): Diagnostic[] {
  const latitudeDeg = region.latitude.low;
  if (region.freeze.kind === 'table') {
    const disorder = region.freeze.rows.flatMap((row, index) =>
      (['last', 'first'] as const).flatMap((edge): Diagnostic[] => {
        const chance = chanceOutOfOrder(row[edge], edge, { latitudeDeg });
        if (chance === undefined) return [];
        return [
          {
            code: 'freeze-table',
            severity: 'error',
            message: `The ${chance} % date of this row is out of order with the one before it.`,
            hint:
              edge === 'last'
                ? 'In spring a higher chance of a later freeze means an earlier date: the 10 % date is the latest.'
                : 'In fall a higher chance of an earlier freeze means a later date: the 10 % date is the earliest.',
            place: guide.placeOf('region', region.id, `/freeze/table/${index}/${edge}/${chance}`),
          },
        ];
      }),
    );
    const thresholds = thresholdFaults(guide, region);
    // Where rows are at fault themselves, their seasons are not judged.
    const rowsAreRight = disorder.length === 0 && !hasErrors(thresholds);
    return [...thresholds, ...disorder, ...(rowsAreRight ? seasonFaults(guide, region) : [])];
  }
  if (region.freeze.kind === 'normals') return seasonFaults(guide, region);
  const fault = freezeDataFault(region.freeze, { latitudeDeg });
  if (!fault) return stationFaults(guide, region, region.freeze.station);
  return [
    {
      code: 'station-csv',
      severity: 'error',
      message: `Only ${fault.usable} ${fault.edge === 'last' ? 'spring' : 'fall'} seasons of the station file are complete enough; freeze dates need ${fault.needed}.`,
      hint: 'Use a longer record, a station with fewer gaps, or a typed freeze table.',
      place: guide.placeOf('region', region.id, '/freeze/daily'),
    },
  ];
}

/** Dates of a table or of normals that no place can have. */
function seasonFaults(guide: Guide, region: RegionRecord): Diagnostic[] {
  const { freeze } = region;
  if (freeze.kind === 'daily') return [];
  const rows = freeze.kind === 'table' ? freeze.rows : freeze.normals.rows;
  const found = impossibleFreeze(rows, { latitudeDeg: region.latitude.low });
  if (!found) return [];
  const typed = freeze.kind === 'table';
  const thresholdF = Math.round(fromHeld(rows[found.row]!.thresholdC, 'F'));
  return [
    {
      code: typed ? 'freeze-table' : 'normals-csv',
      severity: 'error',
      message: typed ? found.message : found.message.replace('this row', `${thresholdF} F in the normals`),
      hint: found.hint,
      place: guide.placeOf(
        'region',
        region.id,
        typed ? `/freeze/table/${found.row}/${found.edge}/50` : '/freeze/normals',
      ),
    },
  ];
}

/** A daily record whose winter does not belong to the latitude, or that freezes all year round. */
function stationFaults(guide: Guide, region: RegionRecord, station: DailyStation): Diagnostic[] {
  const latitudeDeg = region.latitude.low;
  if (winterOfOtherHemisphere(station, { latitudeDeg })) {
    return [
      {
        code: 'station-csv',
        severity: 'error',
        message: `The winters of the station file are those of the ${latitudeDeg < 0 ? 'northern' : 'southern'} hemisphere, and the region lies in the other one.`,
        hint: 'Is the sign of the latitude right (south is negative), and is the file of this region?',
        place: guide.placeOf('region', region.id, '/latitude'),
      },
    ];
  }
  if (!freezesAllYear(station, { latitudeDeg, thresholdC: 0 })) return [];
  return [
    {
      code: 'station-csv',
      severity: 'warning',
      message: `In half of the years or more of the station file fewer than ${shortestSeasonDays} days lie between the last and the first freeze (32 F), so that there are no dates to count planting from.`,
      hint: 'Is the file in another unit than it says, or of a station high above the gardens?',
      place: guide.placeOf('region', region.id, '/freeze/daily'),
    },
  ];
}

/** The thresholds that freeze tables are published for, in degrees Fahrenheit. */
const publishedThresholdsF = [36, 32, 28, 24, 20, 16];

/** Rows of a typed table for a temperature that nothing asks for, twice the same row, or none for 32 F. */
function thresholdFaults(guide: Guide, region: RegionRecord): Diagnostic[] {
  if (region.freeze.kind !== 'table') return [];
  const fault = (
    pointer: string,
    message: string,
    hint: string,
    severity: Diagnostic['severity'] = 'error',
  ): Diagnostic => ({
    code: 'freeze-table',
    severity,
    message,
    hint,
    place: guide.placeOf('region', region.id, pointer),
  });
  const rowsF = region.freeze.rows.map(({ thresholdC }) => thresholdC * 1.8 + 32);
  const has = (wantedF: number): boolean => rowsF.some((rowF) => Math.abs(rowF - wantedF) < 0.3);
  const rows = rowsF.flatMap((rowF, index) => {
    const at = `/freeze/table/${index}/threshold`;
    const nearest = publishedThresholdsF.reduce((best, next) =>
      Math.abs(next - rowF) < Math.abs(best - rowF) ? next : best,
    );
    if (Math.abs(nearest - rowF) >= 0.3) {
      return [
        fault(
          at,
          `Freeze dates are not used at this temperature (${rowF.toFixed(1)} F).`,
          `Use ${publishedThresholdsF.join(', ')} F; the nearest is ${nearest} F (${((nearest - 32) / 1.8).toFixed(1)} C).`,
        ),
      ];
    }
    const earlier = rowsF.slice(0, index).some((before) => Math.abs(before - rowF) < 0.3);
    return earlier
      ? [
          fault(
            at,
            `The table has a row for ${nearest} F already.`,
            'Change the temperature of one of the two rows.',
          ),
        ]
      : [];
  });
  if (!has(32))
    return [
      ...rows,
      fault(
        '/freeze/table',
        'The table has no row for 32 F, from which planting dates are counted.',
        'Add a row with “threshold: 32 F”.',
      ),
    ];
  const missing = [28, 24].filter((wantedF) => !has(wantedF));
  if (missing.length === 0 || rows.length > 0) return rows;
  return [
    fault(
      '/freeze/table',
      `The table has no row for ${missing.join(' F and ')} F; crops that stand light freezes are planned for fall as if the next warmer freeze ended them.`,
      'Add the row if you have its dates.',
      'warning',
    ),
  ];
}

function projectFaults(guide: Guide, project: ProjectRecord): Diagnostic[] {
  const place = (pointer: string): Diagnostic['place'] & object =>
    guide.placeOf('project', project.id, pointer);
  const twice = repeatedEntries(project).map(({ pointer, what }): Diagnostic => ({
    code: 'structure',
    severity: 'error',
    message: `${what} is listed twice.`,
    hint: 'Keep one of the two, or rename it.',
    place: place(pointer),
  }));
  if (twice.length > 0) return twice;
  const built = structureOf(project, { hemisphere: 'north' });
  if (built.kind === 'faults') {
    return built.faults.map(({ path, message, hint }) => ({
      code: 'structure',
      severity: 'error',
      message,
      hint,
      place: place(`/${path.join('/')}`),
    }));
  }
  const { bed } = built.structure;
  const fault = bed && sowingFault({ crops: guide.crops, insideDepthMm: bed.depthMm, sow: project.sow });
  return fault ? [{ code: 'structure', severity: 'error', ...fault, place: place('/sow') }] : [];
}

/** Crops, parts and sashes that stand in their list before. */
function repeatedEntries(project: ProjectRecord): { pointer: string; what: string }[] {
  const { sow, parts } = project;
  const sashes = 'sashes' in project ? project.sashes : [];
  const repeated = (
    names: readonly string[],
    key: string,
    what: string,
  ): { pointer: string; what: string }[] =>
    names.flatMap((name, index) =>
      names.indexOf(name) < index
        ? [{ pointer: key.replace('#', String(index)), what: `${what} “${name}”` }]
        : [],
    );
  return [
    ...repeated(
      sow.map(({ crop }) => crop),
      '/sow/#/crop',
      'The crop',
    ),
    ...repeated(
      parts.map(({ letter }) => letter),
      '/parts/#/letter',
      'The part',
    ),
    ...repeated(
      sashes.map(({ id }) => id),
      '/sashes/#/id',
      'The sash',
    ),
  ];
}

/**
 * The first chance whose date is not where the one before it puts it: the last freeze comes earlier, and the first
 * freeze later, as the chance grows.
 */
function chanceOutOfOrder(
  dates: ChanceDates,
  edge: 'last' | 'first',
  { latitudeDeg }: { latitudeDeg: number },
): number | undefined {
  const season = growingSeason(latitudeDeg)[edge];
  const given = Object.entries(dates)
    .flatMap(([chance, day]) =>
      day === undefined ? [] : [{ chance: Number(chance), day: placeInSeason(day, season) }],
    )
    .sort((a, b) => a.chance - b.chance);
  const wrong = given.slice(1).find(({ day }, index) => {
    const before = given[index]!.day;
    return edge === 'last' ? day > before : day < before;
  });
  return wrong?.chance;
}
