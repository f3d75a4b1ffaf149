import type { Finding } from '../findings/finding.ts';
import type { Crop } from '../records/schemas/crop.ts';
import type { Measures } from '../wording/measures.ts';
import type { Say } from '../wording/phrases.ts';
import { toHeld } from '../quantities/units.ts';

/** What a finding is called, from its id; the title of its method where it has no name of its own. */
export function findingName(
  finding: Finding,
  { say, measures, crops }: { say: Say; measures: Measures; crops: readonly Crop[] },
): string {
  const { id } = finding;
  const freeze = /^freeze\.(last|first)\.(\d+)f\.(\d+)$/.exec(id);
  if (freeze) {
    const threshold = measures.short('temperature', toHeld(Number(freeze[2]), 'F'));
    return say(`finding.freeze-${freeze[1]}`, { threshold, chance: Number(freeze[3]) });
  }
  const sash = /^frame\.sash-([a-z])\.([a-z-]+)$/.exec(id);
  if (sash)
    return say('finding.sash', { letter: sash[1]!.toUpperCase(), what: say(`finding.sash-what.${sash[2]}`) });
  const part = /^build\.part-([a-z])\.([a-z-]+)$/.exec(id);
  if (part)
    return say('finding.part', { letter: part[1]!.toUpperCase(), what: say(`finding.part-what.${part[2]}`) });
  const built = /^(frame|build|bed|tepee)\.(.+)$/.exec(id);
  if (built) return say(`finding.${built[1]}.${built[2]}`);
  const crop = crops.find((known) => id.startsWith(`${known.id}.`));
  if (crop) return cropFindingName(crop, id.slice(crop.id.length + 1), say);
  return say(plainNames[id] ?? `method.${finding.method}.title`);
}

const plainNames: Readonly<Record<string, string>> = {
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
  'direct-sow',
  'set-out',
  'plant-sets',
  'plant-slips',
  'plant-pieces',
  'harvest',
  'seed-for-bed',
  'plants-in-bed',
  'class',
  'class-also',
  'bulbing',
  'bulbing-starts',
  'bulbing-full',
];

/** Parts that only findings of a day-length class have; a crop's own figures may be called the same. */
const growthParts = ['bulbing-after-planting', 'leaves', 'size', 'curing'];

function cropFindingName(crop: Crop, rest: string, say: Say): string {
  const parts = rest.split('.');
  const dayLengthClass = crop.dayLength?.find((record) => record.class === parts[0])?.class;
  const what = (dayLengthClass ? parts[1] : parts[0])!;
  const known = dayLengthClass ? [...cropParts, ...growthParts] : cropParts;
  const base = known.find((name) => what === name || (name === 'harvest' && what.startsWith('harvest')));
  const name = base
    ? say(`finding.crop.${base}`, { crop: crop.name })
    : say('finding.crop.other', { crop: crop.name, what: what.replaceAll('-', ' ') });
  return dayLengthClass ? say('finding.class-of', { name, class: say(`choice.${dayLengthClass}`) }) : name;
}
