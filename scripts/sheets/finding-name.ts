import type { Finding } from '../findings/finding.ts';
import type { Crop } from '../records/schemas/crop.ts';
import type { DateWords } from '../wording/dates.ts';
import type { Measures } from '../wording/measures.ts';
import type { Say } from '../wording/phrases.ts';
import { buildFindingName } from './build-finding-name.ts';
import { climateFindingName } from './climate-finding-name.ts';

/** What a finding is called, from its id; the title of its method where it has no name of its own. */
export function findingName(
  finding: Finding,
  { say, measures, dates, crops }: { say: Say; measures: Measures; dates: DateWords; crops: readonly Crop[] },
): string {
  const { id } = finding;
  const ofClimate = climateFindingName(id, { say, measures, dates });
  if (ofClimate !== undefined) return ofClimate;
  const ofBuild = buildFindingName(id, {
    say,
    dates,
    nameOf: (other) => findingName({ ...finding, id: other }, { say, measures, dates, crops }),
  });
  if (ofBuild !== undefined) return ofBuild;
  const sash = /^frame\.sash-([a-z])\.([a-z-]+)$/.exec(id);
  if (sash)
    return say('finding.sash', { letter: sash[1]!.toUpperCase(), what: say(`finding.sash-what.${sash[2]}`) });
  const lid = /^frame\.lid\.([a-z-]+)$/.exec(id);
  if (lid) return say('finding.lid', { what: say(`finding.sash-what.${lid[1]}`) });
  const board = /^frame\.(hinge-board|rest-board)-([a-z])$/.exec(id);
  if (board) return say(`finding.frame.${board[1]}`, { letter: board[2]!.toUpperCase() });
  const part = /^build\.part-([a-z])\.([a-z-]+)(\.\d+mm)?$/.exec(id);
  if (part)
    return say('finding.part', { letter: part[1]!.toUpperCase(), what: say(`finding.part-what.${part[2]}`) });
  const built = /^(frame|build|bed|tepee)\.(.+)$/.exec(id);
  if (built) return say(`finding.${built[1]}.${built[2]}`);
  const crop = crops.find((known) => id.startsWith(`${known.id}.`));
  if (crop) return cropFindingName(crop, id.slice(crop.id.length + 1), say);
  return say(plainNames[id] ?? `method.${finding.method}.title`);
}

const plainNames: Readonly<Record<string, string>> = {
  'freeze.plan.last.32f': 'finding.plan-last',
  'freeze.plan.first.32f': 'finding.plan-first',
  'freeze.free-days.32f': 'finding.freeze-free',
  latitude: 'finding.latitude',
  'day-length.longest': 'finding.day-longest',
  'day-length.shortest': 'finding.day-shortest',
};

const cropParts = [
  'depth',
  'in-row',
  'between-rows',
  'emergence',
  'maturity',
  'start-indoors',
  'frame-sow',
  'frame-set-out',
  'direct-sow',
  'set-out',
  'set-out-depth',
  'plant-sets',
  'plant-slips',
  'plant-pieces',
  'harvest',
  'seed-for-bed',
  'plants-in-bed',
  'height',
  'row-length-in-bed',
  'yield-in-bed',
  'noon-shadow',
  'seeds-to-buy',
  'seed-mass',
  'seed-packets',
  'plants-to-buy',
  'bundles',
  'depth-here',
  'depth-why',
  'depth-rule',
  'depth-rule-says',
  'soil-fit',
  'row-length',
  'seed-for-row',
  'plants-in-row',
  'seeds-at-least',
  'packets',
  'yield',
  'weekly-need',
  'weekly-water',
  'drip-time',
  'rain',
  'water',
  'drip',
  'emergence-on',
  'normal-seedlings',
  'succession',
  'class',
  'class-also',
  'bulbing',
  'bulbing-starts',
  'bulbing-full',
  'buy-size',
  'buy-when',
  'buy-bundle',
  'row-plants',
  'row-per-bundle',
  'bolting',
];

/** Parts that only findings of a day-length class have; a crop's own figures may be called the same. */
const growthParts = [
  'bulbing-after-planting',
  'leaves-first',
  'leaves-last',
  'leaves',
  'size-first',
  'size-last',
  'size',
  'curing',
  'light',
];

function cropFindingName(crop: Crop, rest: string, say: Say): string {
  const parts = rest.split('.');
  const dayLengthClass = crop.dayLength?.find((record) => record.class === parts[0])?.class;
  const what = (dayLengthClass ? parts[1] : parts[0])!;
  const known = dayLengthClass ? [...cropParts, ...growthParts] : cropParts;
  const base = known.find((name) => what === name || (name === 'harvest' && what.startsWith('harvest')));
  const name = base
    ? say(`finding.crop.${base}`, { crop: crop.name })
    : say('finding.crop.other', { crop: crop.name, what: what.replaceAll('-', ' ') });
  const whole = parts.at(-1) === 'overwinter' ? say('finding.overwinter', { name }) : name;
  return dayLengthClass
    ? say('finding.class-of', { name: whole, class: say(`choice.${dayLengthClass}`) })
    : whole;
}
