/** What every finding about the heat of a frame was worked out from. */
import { choice, quantity, type FindingInput } from '../../findings/finding.ts';
import type { FrameMonths } from './months.ts';

/** Ids of source records (content/sources-frame-heat.yaml). */
const model = [
  'ashrae-clear-sky-1985',
  'duffie-beckman-glazing',
  'extension-glazing-u',
  'ashrae-surfaces',
  'macey-1949-floor',
  'frame-heat-judgement',
] as const;

const more = {
  night: ['frame-cold-nights'],
  season: ['frame-cold-nights'],
  day: ['kasten-czeplak-1980'],
  vent: ['frame-vent-temperature', 'ashrae-vent-1997'],
} as const;

/** Sources of a finding, those of the region's temperatures first. */
export function heatSources(heat: FrameMonths, about: keyof typeof more): readonly string[] {
  return [...new Set([...heat.climate.air.sources, ...heat.climate.soil.sources, ...model, ...more[about]])];
}

/** The frame itself. */
export function heatInputs({
  envelope: { glazing, nightCover: cover },
  nightCover,
}: FrameMonths): readonly FindingInput[] {
  return [
    { name: 'frame-glass-area', value: quantity('area', glazing.areaM2) },
    { name: 'frame-glass-slope', value: quantity('angle', glazing.slopeDeg) },
    { name: 'frame-night-cover', value: choice(cover && nightCover === 'on' ? 'cover-on' : 'cover-off') },
  ];
}
