/** Finds what does not add up in the record of a keyhole bed. */
import { middle } from '../quantities/quantity.ts';
import type { KeyholeBed } from '../records/schemas/projects/keyhole-bed.ts';
import { coursesFor, fillOf, layRing, ringSizes, tightGaps, type Ring } from './keyhole-layout.ts';
import { basketAboveMm, narrowestNotchMm, narrowestRingMm, stakeInGroundMm } from './keyhole-practice.ts';
import { inInches, partFaults } from './part-faults.ts';
import type { StructureDiagnosis } from './structure.ts';

/** Inches and millimetres do not convert without a remainder; less than this is none. */
const slackMm = 1e-6;

/** Every fault of a record, one for each cause; what follows from a ring is only judged where there is one. */
export function keyholeFaults(project: KeyholeBed): readonly StructureDiagnosis[] {
  const shape = [...blockFaults(project), ...notchFaults(project)];
  const ring = shape.length === 0 ? layRing(ringSizes(project)) : undefined;
  const lay = shape.length > 0 || ring ? [] : [noRing(project)];
  const narrow = ring ? ringFaults(ring) : [];
  return [
    ...shape,
    ...lay,
    ...narrow,
    ...wallFaults(project),
    ...(ring && narrow.length === 0 ? fillFaults(project, ring) : []),
    ...basketFaults(project),
    ...partFaults(project.parts),
    ...pieceFaults(project),
  ];
}

function fault(path: StructureDiagnosis['path'], message: string, hint: string): StructureDiagnosis {
  return { path, message, hint };
}

function blockFaults({ block, buried }: KeyholeBed): readonly StructureDiagnosis[] {
  const [face, back, height] = [middle(block.face), middle(block.back), middle(block.height)];
  return [
    ...(back > face + slackMm
      ? [
          fault(
            ['block', 'back'],
            `The block is ${inInches(back)} long at the back and ${inInches(face)} at its face, so it is wider on the inside of the ring.`,
            'Give the longer side as face; it looks outward.',
          ),
        ]
      : []),
    ...(middle(buried) > height + slackMm
      ? [
          fault(
            ['buried'],
            `The wall would stand ${inInches(middle(buried))} in the ground, deeper than its first course, which is ${inInches(height)} high.`,
            'Bury no more than the height of one block.',
          ),
        ]
      : []),
  ];
}

function notchFaults({ notch, diameter }: KeyholeBed): readonly StructureDiagnosis[] {
  const [wide, across] = [middle(notch.value), middle(diameter)];
  if (wide < narrowestNotchMm - slackMm)
    return [
      fault(
        ['notch', 'value'],
        `Nobody can stand in a notch of ${inInches(wide)}; it takes ${inInches(narrowestNotchMm)} where one walks in.`,
        'Make the notch wider.',
      ),
    ];
  if (wide <= across / 2 + slackMm) return [];
  return [
    fault(
      ['notch', 'value'],
      `A notch of ${inInches(wide)} cuts away most of a bed that is ${inInches(across)} across.`,
      'Make the notch narrower than half the bed, or the bed wider.',
    ),
  ];
}

/** Which of the two gaps is too wide, or that the joints cannot be broken. */
function noRing(project: KeyholeBed): StructureDiagnosis {
  const sizes = ringSizes(project);
  const { frontMm, backMm } = tightGaps(sizes);
  const inside = sizes.diameterMm / 2 - sizes.block.depthMm;
  if (inside <= sizes.basketMm / 2)
    return fault(
      ['basket', 'diameter'],
      `The basket is ${inInches(sizes.basketMm)} across, and inside the wall there are ${inInches(Math.max(0, 2 * inside))}.`,
      'Make the bed wider, or the basket narrower.',
    );
  const allowed = inInches(sizes.jointMm);
  if (frontMm > sizes.jointMm)
    return fault(
      ['block'],
      `Laid in a ring of ${inInches(sizes.diameterMm)}, these blocks touch at the back and gape ${inInches(frontMm)} outside; ${allowed} is the limit.`,
      'Use blocks that taper more or are shorter, or make the bed wider.',
    );
  if (backMm > sizes.jointMm)
    return fault(
      ['block'],
      `Laid in a ring of ${inInches(sizes.diameterMm)}, these blocks touch outside and gape ${inInches(backMm)} at the back; ${allowed} is the limit.`,
      'Use blocks that taper less, or make the bed narrower.',
    );
  return fault(
    ['diameter'],
    `No ring of up to ${inInches(sizes.diameterMm)} comes out in whole blocks with its joints broken.`,
    'Change the diameter by a few inches, or allow wider joints.',
  );
}

function ringFaults({ insideMm, basketRadiusMm }: Ring): readonly StructureDiagnosis[] {
  const roomMm = insideMm - basketRadiusMm;
  if (roomMm >= narrowestRingMm - slackMm) return [];
  return [
    fault(
      ['basket', 'diameter'],
      `Between the basket and the wall there are ${inInches(roomMm)} of soil; a row takes ${inInches(narrowestRingMm)}.`,
      'Make the bed wider, or the basket narrower.',
    ),
  ];
}

function wallFaults({ block, height, buried, highest }: KeyholeBed): readonly StructureDiagnosis[] {
  const blockMm = middle(block.height);
  const courses = coursesFor(middle(height), middle(buried), blockMm);
  const limitMm = middle(highest.value);
  if (courses * blockMm <= limitMm + slackMm) return [];
  return [
    fault(
      ['height'],
      `The wall would be ${courses} courses or ${inInches(courses * blockMm)} high with what is in the ground; this block is stacked no higher than ${inInches(limitMm)} without mortar.`,
      'Build lower, or use a deeper block that may be stacked higher.',
    ),
  ];
}

function fillFaults(project: KeyholeBed, ring: Ring): readonly StructureDiagnosis[] {
  const fill = fillOf(project, ring);
  const { basket } = project;
  const heightMm = middle(basket.height);
  const neededMm = fill.atBasketMm + basketAboveMm;
  const stakeMm = middle(basket.stakes.length);
  const stakeNeededMm = fill.atBasketMm + stakeInGroundMm;
  return [
    ...(fill.organicAtWallMm < -slackMm
      ? [
          fault(
            ['layers'],
            `Drainage and mix are ${inInches(fill.drainageMm + fill.soilMm)} deep together, and the bed holds ${inInches(fill.atWallMm)} at the wall.`,
            'Make a layer thinner, or the wall higher.',
          ),
        ]
      : []),
    ...(heightMm < neededMm - slackMm
      ? [
          fault(
            ['basket', 'height'],
            `The basket is ${inInches(heightMm)} high; to stand out of the mix it takes ${inInches(neededMm)}.`,
            'Use wider mesh, or a lower slope.',
          ),
        ]
      : []),
    ...(stakeMm < stakeNeededMm - slackMm
      ? [
          fault(
            ['basket', 'stakes', 'length'],
            `A stake of ${inInches(stakeMm)} does not hold the basket; through the bed and into the ground it takes ${inInches(stakeNeededMm)}.`,
            'Use longer stakes.',
          ),
        ]
      : []),
  ];
}

function basketFaults({ basket }: KeyholeBed): readonly StructureDiagnosis[] {
  const neededMm = Math.PI * middle(basket.diameter) + middle(basket.overlap);
  if (neededMm <= middle(basket.roll) + slackMm) return [];
  return [
    fault(
      ['basket', 'roll'],
      `Round the basket it takes ${inInches(neededMm)} of mesh, and the roll holds ${inInches(middle(basket.roll))}.`,
      'Buy a longer roll, or make the basket narrower.',
    ),
  ];
}

/** Gravel, stones, browns and greens come by volume. */
function pieceFaults({ parts }: KeyholeBed): readonly StructureDiagnosis[] {
  return parts.flatMap((part, index) =>
    part.count.endsWith('-litres') && part.count !== 'soil-litres' && !(part.pack && middle(part.pack) > 0)
      ? [
          fault(
            ['parts', index],
            'A part that is counted by its volume does not say how much one unit holds.',
            'Add pack with its volume, such as 0.5 ft3.',
          ),
        ]
      : [],
  );
}
