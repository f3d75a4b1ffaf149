/**
 * All drawings of a build, made from its assembly: from above, from the sun side, cut through, and one for each step. What is
 * drawn is what was computed, to scale, on both sides of the equator.
 */
import type { Assembly } from '../../structures/assembly.ts';
import type { Scene } from '../scene.ts';
import { elevationDrawing } from './elevation.ts';
import type { FlatOptions } from './flat-drawing.ts';
import { planDrawing } from './plan.ts';
import { sectionDrawing } from './section.ts';
import { stepDrawing } from './step.ts';
import { asSeen } from './view.ts';
import type { BuildAlternatives, BuildWords, RoleLetters } from './words.ts';

export { drawnMeasures, type DrawnMeasure } from './measures.ts';
export type { BuildAlternatives, BuildWords, RoleLetters } from './words.ts';

export interface AssemblyDrawingOptions {
  /** Lower-case words and hyphens; the ids of plan, elevation and section begin with it. */
  readonly idPrefix: string;
  readonly letters: RoleLetters;
  readonly words: BuildWords;
  readonly alternatives: BuildAlternatives;
  /** Width of plan, elevation and section, 120 to 175; default 150. */
  readonly widthMm?: number;
}

type FlatScenes = Readonly<Record<'plan' | 'elevation' | 'section', Scene>>;

export interface AssemblyDrawings extends FlatScenes {
  /** The same three for a phone. */
  readonly narrow: FlatScenes;
  /** The drawing of a step by its stage, 74 by 54 mm; `number` makes its id unique in its sheet. */
  readonly step: (stage: string, number: number) => Scene;
}

/** What a phone shows without shrinking. */
const narrowMm = 84;

export function assemblyDrawings(assembly: Assembly, options: AssemblyDrawingOptions): AssemblyDrawings {
  const { idPrefix, letters, words, alternatives, widthMm = 150 } = options;
  const seen = asSeen(assembly);
  const flat = (width: number, ending: string): FlatScenes => {
    const of = (name: 'plan' | 'elevation' | 'section'): FlatOptions => ({
      id: `${idPrefix}-${name}${ending}`,
      alternative: alternatives[name],
      words,
      letters,
      widthMm: width,
    });
    return {
      plan: planDrawing(seen, of('plan')),
      elevation: elevationDrawing(seen, of('elevation')),
      section: sectionDrawing(seen, of('section')),
    };
  };
  return {
    ...flat(widthMm, ''),
    narrow: flat(narrowMm, '-narrow'),
    step: (stage, number) =>
      stepDrawing(seen, stage, {
        id: `step-${number}-${stage}`,
        alternative: alternatives.step(stage),
        north: words.north,
        measure: words.measure,
        letters,
      }),
  };
}
