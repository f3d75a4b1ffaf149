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
  | { readonly fault: 'slope-too-flat'; readonly riseMm: number; readonly runMm: number }
  | { readonly fault: 'slope-says-otherwise'; readonly by: string; readonly walls: string }
  | { readonly fault: 'ridge-incomplete' }
  | { readonly fault: 'rise-without-ridge' }
  | { readonly fault: 'ridge-below-board'; readonly riseMm: number; readonly boardMm: number }
  | { readonly fault: 'ridge-too-high'; readonly heightMm: number; readonly limitMm: number }
  | { readonly fault: 'rest-board-too-narrow'; readonly boardMm: number; readonly bearingMm: number }
  | { readonly fault: 'wall-unsteady'; readonly times: number }
  | { readonly fault: 'filler-alone' }
  | { readonly fault: 'filler-too-far'; readonly gapMm: number; readonly limitMm: number }
  | { readonly fault: 'hinges-missing' }
  | { readonly fault: 'hinge-on-hinged'; readonly beside: string }
  | { readonly fault: 'hinge-on-loose'; readonly beside: string }
  | { readonly fault: 'hinge-board-no-room'; readonly boardMm: number; readonly roomMm: number }
  | { readonly fault: 'panes-not-counted' }
  | { readonly fault: 'panes-all-missing'; readonly number: number; readonly missing: number }
  | { readonly fault: 'panes-open'; readonly number: number; readonly missing: number }
  | { readonly fault: 'screen-rail-too-wide'; readonly railMm: number; readonly widthMm: number }
  | { readonly fault: 'weights-missing' }
  | { readonly fault: 'gust-needs-weights'; readonly sash: string }
  | { readonly fault: 'gust-needs-mass' }
  | { readonly fault: 'part-missing'; readonly count: string; readonly what: string }
  | { readonly fault: 'part-for-nothing'; readonly count: string }
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
    case 'slope-too-flat':
      return say(
        `The sashes would fall ${inches(fault.riseMm)} over ${inches(fault.runMm)}, so rain stands on the panes and runs in at the putty.`,
        'Give them at least half an inch of fall in each foot, better an inch: raise the wall away from the sun, or use shorter sashes.',
      );
    case 'slope-says-otherwise':
      return say(
        `The slope is said to come of ${fault.by}, but the walls are ${fault.walls}.`,
        'Correct slope.by, or the courses and lay of the walls.',
      );
    case 'ridge-incomplete':
      return say(
        'A slope by wedge does not say how high the straw raises the sashes, or on what board they lie.',
        'Add rise, such as 4 in, and board, such as 2x6.',
      );
    case 'rise-without-ridge':
      return say(
        'A rise and a board belong to a slope by wedge; the height of walls follows from their bales.',
        'Say by: wedge, or remove rise and board.',
      );
    case 'ridge-below-board':
      return say(
        `The rise of ${inches(fault.riseMm)} is less than the board of ${inches(fault.boardMm)} that lies on it.`,
        'Use a thinner board, or a higher rise.',
      );
    case 'ridge-too-high':
      return say(
        `A ridge of loose straw ${inches(fault.heightMm)} high rolls off the wall; one this wide stands up to ${inches(fault.limitMm)}.`,
        'Use a lower rise, or add a course to the wall away from the sun.',
      );
    case 'rest-board-too-narrow':
      return say(
        `The board on the straw is ${inches(fault.boardMm)} wide and the sashes bear ${inches(fault.bearingMm)} on it.`,
        'Use a wider board, or a smaller bearing.',
      );
    case 'wall-unsteady':
      return say(
        `This wall is ${fault.times.toFixed(1)} times as high as it is thick, and bales held by one stake each turn and tip.`,
        'Drive two stakes through each bale, lay its bales flat, or leave out a course.',
      );
    case 'filler-alone':
      return say(
        'Every sash is said to end on a filler board, so none of them sets the depth of the bed.',
        'Leave filler out at the sashes that reach from wall to wall.',
      );
    case 'filler-too-far':
      return say(
        `This sash ends ${inches(fault.gapMm)} before the others do; a filler board on the low wall bridges ${inches(fault.limitMm)}, and one that sticks out further tips into the bed.`,
        'Use a longer sash here, or leave filler out so that this one sets the depth.',
      );
    case 'hinges-missing':
      return say(
        'This sash is on hinges, but the record does not say how many and on what board.',
        'Add hinges with perSash, board (such as 2x6) and sources.',
      );
    case 'hinge-on-hinged':
      return say(
        `This sash is hinged to sash ${fault.beside}, which is on hinges itself, so the two swing together.`,
        'Hinge one of the two to the other and leave the other one loose, or hinge both at the top.',
      );
    case 'hinge-on-loose':
      return say(
        `This sash is hinged to sash ${fault.beside}, which nothing holds down, so opening the one lifts the other.`,
        'Give the sash that carries the hinges a holdDown.',
      );
    case 'hinge-board-no-room':
      return say(
        `The board for the hinges is ${inches(fault.boardMm)} wide, and behind the sash ${inches(fault.roomMm)} of the wall are left.`,
        'Use a narrower board, a smaller bearing, or lay the bales of that wall flat.',
      );
    case 'panes-not-counted':
      return say(
        'Panes are missing, but how many the sash has room for is not said, so their size is not known.',
        'Add number, the count of all panes.',
      );
    case 'panes-all-missing':
      return say(
        `Of ${fault.number} panes ${fault.missing} are missing, so there is no glazing left.`,
        'Say what the new panes are of with kind, and leave missing out.',
      );
    case 'panes-open':
      return say(
        `${fault.missing} of ${fault.number} panes are missing and nothing covers them: rain, cold and wind come in.`,
        'Say what they are covered with: cover: plastic-film, and add a part with count: pane-covers.',
      );
    case 'screen-rail-too-wide':
      return say(
        `Two rails of ${inches(fault.railMm)} leave no screen in a frame of ${inches(fault.widthMm)}.`,
        'Make the rail narrower.',
      );
    case 'weights-missing':
      return say(
        'This sash is held down by weight, but the record does not say by how many.',
        'Add holdDowns with perEnd and sources, and a part with count: hold-downs.',
      );
    case 'gust-needs-weights':
      return say(
        `Weights for a gust are worked out for sashes that all lie loose and are held down by weight; sash ${fault.sash} is not.`,
        'Leave forGust out, or hinge no sash and hold all of them down by weight.',
      );
    case 'gust-needs-mass':
      return say(
        'Weights for a gust cannot be counted without what one of them weighs.',
        'Add mass to the part with count: hold-downs, such as 20 lb.',
      );
    case 'part-missing':
      return say(
        `The build takes ${fault.what}, and no part of the list is.`,
        `Add a part with count: ${fault.count}.`,
      );
    case 'part-for-nothing':
      return say(
        `This build has nothing to count as ${fault.count}.`,
        'Remove the part, or say at the sashes what it is for.',
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
