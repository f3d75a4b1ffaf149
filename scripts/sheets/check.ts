/**
 * What only shows itself when records are taken together or computed with: a freeze record that is out of order
 * or too thin, a build that does not add up, a hazard that no step carries. Each fault is told at its place.
 */
import { layOutRows } from '../agronomy/bed-rows.ts';
import { growingSeason, placeInSeason } from '../climate/calendar.ts';
import type { ChanceDates } from '../climate/freeze-data.ts';
import { freezeDataFault } from '../climate/freeze.ts';
import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import type { Guide, ProjectRecord, RegionRecord } from '../records/guide.ts';
import { hazardFaults, weakenedHazards, type HazardFault } from '../safety/faults.ts';
import { baleColdFrame, isFrame } from '../structures/bale-cold-frame.ts';
import { describeStructureFault } from '../structures/faults.ts';

export function checkGuide(guide: Guide): readonly Diagnostic[] {
  return [
    ...publisherFaults(guide),
    ...guide.crops.flatMap((crop) => cropFaults(guide, crop)),
    ...guide.regions.flatMap((region) => regionFaults(guide, region)),
    ...guide.projects.flatMap((project) => projectFaults(guide, project)),
    ...hazards(guide),
  ];
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

function regionFaults(guide: Guide, region: RegionRecord): Diagnostic[] {
  const latitudeDeg = region.latitude.low;
  if (region.freeze.kind === 'table') {
    return [
      ...thresholdFaults(guide, region),
      ...region.freeze.rows.flatMap((row, index) =>
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
      ),
    ];
  }
  const fault = freezeDataFault(region.freeze, { latitudeDeg });
  if (!fault) return [];
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
  const frame = baleColdFrame(project, { hemisphere: 'north' });
  if (!isFrame(frame)) {
    return frame.map((fault) => ({
      code: 'structure',
      severity: 'error',
      ...describeStructureFault(fault),
      place: place(`/${fault.path.join('/')}`),
    }));
  }
  const wanted = project.sow.flatMap(({ crop: id, rows }) => {
    const crop = guide.crops.find((known) => known.id === id);
    return crop ? [{ crop, rows }] : [];
  });
  if (wanted.length < project.sow.length) return [];
  const layout = layOutRows(wanted, frame.geometry.insideDepthMm);
  if (layout.kind === 'rows') return [];
  const inches = (mm: number): string => `${Math.round(mm / 2.54) / 10} in`;
  return [
    {
      code: 'structure',
      severity: 'error',
      message: `These rows need ${inches(layout.neededMm)} across the bed, which is ${inches(layout.depthMm)} deep inside.`,
      hint:
        layout.fits > 0
          ? `Sow fewer rows; ${layout.fits} in all fit.`
          : 'Sow a crop with narrower rows, or use longer sashes.',
      place: place('/sow'),
    },
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

function hazards(guide: Guide): Diagnostic[] {
  const faults = hazardFaults({ catalogue: guide.hazards, projects: guide.projects });
  const weakened = weakenedHazards(guide.builtInHazards, guide.ownHazards);
  return [
    ...faults.flatMap((fault): Diagnostic[] => {
      const words = hazardWords(fault);
      if (!words) return [];
      return [
        {
          code: 'no-hazard-profile',
          severity: 'error',
          ...words,
          place: guide.placeOf(fault.record.kind, fault.record.id, fault.pointer),
        },
      ];
    }),
    ...weakened.map((fault): Diagnostic => ({
      code: 'weakened-caution',
      severity: 'error',
      message:
        fault.fault === 'weaker-signal'
          ? `The signal word of “${fault.record.id}” is weaker than the one that comes with Groundsheet.`
          : `“${fault.record.id}” is said to be harmless, but cautions for it come with Groundsheet.`,
      hint: 'A caution can be reworded or made stronger, never weakened. Change it back or leave the record out.',
      place: guide.placeOf(fault.record.kind, fault.record.id, fault.pointer),
    })),
  ];
}

/** Words for a hazard fault; a missing profile or caution is told already where the reference stands. */
function hazardWords(fault: HazardFault): { message: string; hint: string } | undefined {
  switch (fault.fault) {
    case 'no-profile':
    case 'unknown-caution':
      return undefined;
    case 'in-no-step':
      return {
        message: `The ${fault.kind} “${fault.id}” is listed, but no step uses it, so its cautions would stand nowhere.`,
        hint: `Add it to the ${fault.kind}s of the step that uses it, or take it off the list.`,
      };
    case 'silent-profile':
      return {
        message: `“${fault.record.id}” brings no caution and does not say that it is harmless.`,
        hint: 'List its cautions, or add “harmless:” with the reason.',
      };
    case 'harmless-with-cautions':
      return {
        message: `“${fault.record.id}” is said to be harmless, and yet it has cautions.`,
        hint: 'Keep one of the two.',
      };
  }
}
