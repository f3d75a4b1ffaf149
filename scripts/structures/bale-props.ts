/** The sticks that hold sashes open: how far they open them, how long they are and where their notches go. */
import { quantity, type FindingInput } from '../findings/finding.ts';
import { openingMm } from './bale-weights.ts';
import type { FindingList } from './finding-list.ts';
import type { FrameGeometry } from './geometry.ts';
import { practice, structureSources } from './practice.ts';

export interface PropSizes {
  /** From the straw to its highest notch. */
  readonly openingMm: number;
  readonly lengthMm: number;
  /** Of each notch, from the lower end of the stick to where the sash rests, the lowest first. */
  readonly notchesMm: readonly number[];
  readonly notchDeepMm: number;
  readonly notchHighMm: number;
}

/** One stick fits all sashes: it opens the one that opens least. Undefined where none opens. */
export function propSizes({ sashes }: Pick<FrameGeometry, 'sashes'>): PropSizes | undefined {
  const opening = sashes.filter(({ opens }) => opens !== 'never');
  if (opening.length === 0) return undefined;
  const mostMm = Math.min(...opening.map((sash) => openingMm(sash)));
  const { inStrawMm, aboveNotchMm, notches, notchDeepMm, notchOverSash } = practice.prop;
  return {
    openingMm: mostMm,
    lengthMm: inStrawMm + mostMm + aboveNotchMm,
    notchesMm: Array.from({ length: notches }, (_, index) => inStrawMm + (mostMm * (index + 1)) / notches),
    notchDeepMm,
    notchHighMm: notchOverSash * Math.max(...opening.map(({ thicknessMm }) => thicknessMm)),
  };
}

/** `frame.prop-opening`, `.prop-length`, `.prop-notch-1` and so on, `.prop-notch-deep`, `.prop-notch-high`, `.prop-in-straw`. */
export function addProps(made: FindingList, geometry: FrameGeometry): void {
  const sizes = propSizes(geometry);
  if (!sizes) return;
  const add = (name: string, mm: number, method: string, inputs: readonly FindingInput[]): void => {
    made.add(`frame.${name}`, quantity('length', mm), {
      method: `frame.${method}`,
      inputs,
      sources: [structureSources.fittings],
    });
  };
  add('prop-opening', sizes.openingMm, 'prop-opening', []);
  add('prop-in-straw', practice.prop.inStrawMm, 'prop-practice', []);
  const from = made.from({ 'prop-opening': 'frame.prop-opening', 'prop-in-straw': 'frame.prop-in-straw' });
  add('prop-length', sizes.lengthMm, 'prop-length', from);
  sizes.notchesMm.forEach((mm, index) => {
    add(`prop-notch-${index + 1}`, mm, 'prop-notch', from);
  });
  add('prop-notch-deep', sizes.notchDeepMm, 'prop-practice', []);
  add('prop-notch-high', sizes.notchHighMm, 'prop-notch-high', []);
}
