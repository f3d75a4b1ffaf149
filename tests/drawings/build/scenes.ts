import {
  assemblyDrawings,
  type AssemblyDrawings,
  type BuildWords,
} from '../../../scripts/drawings/build/assembly-drawings.ts';
import type { Scene } from '../../../scripts/drawings/scene.ts';
import type { Sample } from './samples.ts';

/** Words as long as the longest that a sheet prints. */
export function wordsOf({ valuesMm }: Sample): BuildWords {
  return {
    north: 'N',
    south: 'S',
    sun: 'Sun',
    ground: 'ground',
    cut: 'section',
    measure: (id) => {
      const mm = valuesMm[id]!;
      const inches = Math.round(mm / 25.4);
      const first = inches < 36 ? `${inches} 3⁄4″` : `${Math.floor(inches / 12)}′ ${inches % 12} 3⁄4″`;
      return { first, second: mm < 1000 ? `${Math.round(mm / 10)} cm` : `${(mm / 1000).toFixed(2)} m` };
    },
  };
}

/** The same words with every length as its exact number of millimetres. */
export function exactWordsOf(sample: Sample): BuildWords {
  return { ...wordsOf(sample), measure: (id) => ({ first: sample.valuesMm[id]!.toFixed(4) }) };
}

export function drawingsOf(sample: Sample, words = wordsOf(sample)): AssemblyDrawings {
  return assemblyDrawings(sample.assembly, {
    idPrefix: sample.name.replaceAll(' ', '-'),
    letters: sample.letters,
    words,
    alternatives: {
      plan: 'From above.',
      elevation: 'From the sun side.',
      section: 'Cut through.',
      step: (stage) => `The step ${stage}.`,
    },
  });
}

/** Every drawing of a build, by name. */
export function allScenes(sample: Sample): readonly (readonly [string, Scene])[] {
  const { plan, elevation, section, narrow, step } = drawingsOf(sample);
  return [
    ['plan', plan],
    ['elevation', elevation],
    ['section', section],
    ['narrow plan', narrow.plan],
    ['narrow elevation', narrow.elevation],
    ['narrow section', narrow.section],
    ...sample.assembly.stages.map((stage, index) => [`step ${stage}`, step(stage, index + 1)] as const),
  ];
}
