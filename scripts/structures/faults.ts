/**
 * What can be wrong with a build project although its record is well formed. Each fault names the place in the
 * record, so that the reader of records can point at line and column.
 */
import { fromHeld } from '../quantities/units.ts';

export type StructureFault = { readonly path: readonly (string | number)[] } & (
  | { readonly fault: 'not-positive' }
  | { readonly fault: 'bale-shape' }
  | { readonly fault: 'slope-not-positive'; readonly polewardMm: number; readonly equatorMm: number }
  | { readonly fault: 'slope-too-steep'; readonly slopeDeg: number; readonly limitDeg: number }
  | { readonly fault: 'bearing-wider-than-wall'; readonly bearingMm: number; readonly wallMm: number }
  | { readonly fault: 'sash-too-short'; readonly lengthMm: number; readonly neededMm: number }
  | { readonly fault: 'sash-too-narrow'; readonly widthMm: number; readonly neededMm: number }
  | { readonly fault: 'sashes-too-narrow'; readonly widthMm: number; readonly neededMm: number }
  | { readonly fault: 'stake-too-short'; readonly lengthMm: number; readonly neededMm: number }
  | { readonly fault: 'soil-too-deep'; readonly depthMm: number; readonly limitMm: number }
  | { readonly fault: 'letter-twice'; readonly letter: string }
  | { readonly fault: 'number-missing' }
  | { readonly fault: 'pack-missing' }
);

export type StructureFaultName = StructureFault['fault'];

/** The fault as a diagnostic says it: what is wrong and why it matters, and apart from it the mend. */
export function describeStructureFault(fault: StructureFault): {
  readonly message: string;
  readonly hint: string;
} {
  switch (fault.fault) {
    case 'not-positive':
      return say(
        'This measure must be greater than zero for the frame to exist.',
        'Write the size as it is measured.',
      );
    case 'bale-shape':
      return say(
        'The bale is not longest in its length and lowest in its height, so flat and on edge mean nothing.',
        'Give the longest side as length, the next as width and the shortest as height.',
      );
    case 'slope-not-positive':
      return say(
        `The wall away from the sun is ${inches(fault.polewardMm)} high and the others are ${inches(fault.equatorMm)}, so the sashes do not slope toward the sun and shed no rain.`,
        'Make the poleward wall higher: lay its bales on edge, or add a course to it.',
      );
    case 'slope-too-steep':
      return say(
        `The sashes would lie at ${fault.slopeDeg.toFixed(0)} degrees, and a loose sash slides off straw above ${fault.limitDeg.toFixed(0)} degrees.`,
        'Bring the wall heights closer together, or use longer sashes.',
      );
    case 'bearing-wider-than-wall':
      return say(
        `A bearing of ${inches(fault.bearingMm)} is wider than the wall it lies on, which is ${inches(fault.wallMm)} thick.`,
        'Use a smaller bearing, or lay the bales of that wall flat.',
      );
    case 'sash-too-short':
      return say(
        `This sash is ${inches(fault.lengthMm)} long; with both bearings and a bed to reach across it takes ${inches(fault.neededMm)}.`,
        'Leave this sash out, use a longer one, or make the bearing smaller.',
      );
    case 'sash-too-narrow':
      return say(
        `This sash is ${inches(fault.widthMm)} wide and lies on a side wall; two bearings alone take ${inches(fault.neededMm)}.`,
        'Lay a wider sash at the end, or make the bearing smaller.',
      );
    case 'sashes-too-narrow':
      return say(
        `The sashes together are ${inches(fault.widthMm)} wide; with a bearing on each side wall and a bed between it takes ${inches(fault.neededMm)}.`,
        'Add a sash, or use wider ones.',
      );
    case 'stake-too-short':
      return say(
        `A stake of ${inches(fault.lengthMm)} does not hold the wall to the ground; through the bales and into the ground it takes ${inches(fault.neededMm)}.`,
        'Use longer stakes.',
      );
    case 'soil-too-deep':
      return say(
        `Planting mix ${inches(fault.depthMm)} deep leaves no room for leaves under the glass; the walls allow ${inches(fault.limitMm)}.`,
        'Use less planting mix, or higher walls.',
      );
    case 'letter-twice':
      return say(
        `The letter ${fault.letter} already stands for something else on the drawings.`,
        'Give every part and every sash its own letter.',
      );
    case 'number-missing':
      return say(
        'A part counted as each does not say how many.',
        'Add number, or choose what the count follows from.',
      );
    case 'pack-missing':
      return say(
        'A part counted in litres of soil does not say how much one unit holds.',
        'Add pack with its volume, such as 2 ft3.',
      );
  }
}

function say(message: string, hint: string): { readonly message: string; readonly hint: string } {
  return { message, hint };
}

/** Inches to the nearest tenth; records of this trade are written in inches. */
function inches(mm: number): string {
  return `${Math.round(fromHeld(mm, 'in') * 10) / 10} in`;
}
