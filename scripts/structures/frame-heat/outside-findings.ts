/** What the nights outside come to by the same reckoning as those inside a frame, to be held against them. */
import {
  count,
  quantity,
  type Finding,
  type FindingInput,
  type FindingValue,
} from '../../findings/finding.ts';
import { nightsBelow } from './gain.ts';
import type { FrameMonths } from './months.ts';

/**
 * `frame-heat.month-N.outside-lowest`, the coldest night of half of all years, and `.outside-freezing-nights`, nights below 0 C,
 * for N from 1 to 12.
 */
export function outsideNightFindings(heat: FrameMonths): readonly Finding[] {
  const nights = nightsBelow(heat, 0);
  return heat.months.flatMap((month, index) => {
    const low: FindingInput = {
      name: 'frame-outside-low',
      value: quantity('temperature', month.outsideLowC),
    };
    const of = (what: string, value: FindingValue): Finding => ({
      id: `frame-heat.month-${month.month}.outside-${what}`,
      value,
      method: `frame.heat-outside-${what}`,
      inputs: [low],
      sources: [...heat.climate.air.sources, 'frame-cold-nights'],
    });
    return [
      of('lowest', quantity('temperature', month.coldest[50].outsideC)),
      of('freezing-nights', count(Math.round(nights[index]!.outside))),
    ];
  });
}
