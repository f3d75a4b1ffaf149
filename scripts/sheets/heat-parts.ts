/** The heat of a glazed bed in a region: how cold and how hot it gets inside, when to open it, and what it gains. */
import { heatedFrameWindows } from '../agronomy/heated-frame-windows.ts';
import { publishedFrameGain } from '../agronomy/frame-windows.ts';
import { soilTemperatureYear } from '../climate/soil-temperature.ts';
import { inline, paragraph } from '../document/build.ts';
import type { Block, Inline } from '../document/document.ts';
import { none, type Finding } from '../findings/finding.ts';
import { frameHeat, type FrameHeat } from '../structures/frame-heat/heat-findings.ts';
import { mixSoil } from '../structures/frame-heat/materials.ts';
import { outsideNightFindings } from '../structures/frame-heat/outside-findings.ts';
import { frameClimate } from './frame-climate.ts';
import { heatChart, heatTable } from './heat-exhibits.ts';
import type { Exhibit } from './names.ts';
import { sayWith } from './say-with.ts';
import type { BuiltProject, SheetContext } from './sheet-context.ts';

export interface HeatParts {
  /** `frame-heat` and `frame-gain`, for a bed under glass. */
  readonly exhibits: readonly (readonly [string, Exhibit])[];
  /** Those of the heat, and the planting windows under this frame in place of those under any frame. */
  readonly findings: readonly Finding[];
}

export function heatParts(context: SheetContext, { project, structure }: BuiltProject): HeatParts {
  if (!structure.heat) return { exhibits: [], findings: [] };
  const cover = structure.closedBy ?? 'sash';
  const wide = (blocks: () => readonly Block[]): Exhibit => ({ wide: true, blocks });
  const climate = frameClimate(context.facts);
  if (!climate) {
    const unknown = (): readonly Block[] => [
      paragraph(context.wording.say('frame-heat.unknown', { region: context.facts.region.name, cover })),
    ];
    return {
      exhibits: [
        ['frame-heat', wide(unknown)],
        ['frame-gain', wide(() => [])],
      ],
      findings: gainsUnknown,
    };
  }
  const { envelope, vent } = structure.heat;
  const heat = frameHeat(envelope, climate, { vent });
  const findings = [...heat.findings, ...outsideNightFindings(heat.bare)];
  const sown = 'sow' in project ? project.sow : [];
  return {
    exhibits: [
      ['frame-heat', wide(() => [heatChart(context, heat), heatTable(context, heat, { findings, cover })])],
      ['frame-gain', wide(() => [paragraph(gainInWords(context, heat))])],
    ],
    findings: [...findings, ...windowsUnder(context, heat, new Set(sown.map(({ crop }) => crop)))],
  };
}

/** So that prose can ask whether the gain is known. */
const gainsUnknown: readonly Finding[] = (['spring', 'fall'] as const).map((season) => ({
  id: `frame-heat.gain.${season}`,
  value: none('temperatures-not-given'),
  method: `frame.heat-gain-${season}`,
  inputs: [],
  sources: [],
}));

/**
 * Planting windows of what is sown, by the gain of this frame. A gain that the region's record gives is known
 * better than any reckoning, and stays.
 */
function windowsUnder(
  { facts }: SheetContext,
  { gain, insideYear }: FrameHeat,
  sown: ReadonlySet<string>,
): readonly Finding[] {
  if (facts.region.coldFrame) return [];
  const soil = soilTemperatureYear(insideYear.bare, { ...mixSoil, source: 'frame-heat-judgement' });
  return facts.crops
    .filter(({ crop }) => sown.has(crop.id))
    .flatMap(({ crop, windows }) =>
      heatedFrameWindows(crop, windows, {
        gain: gain.bare,
        soil,
        climate: facts.windowClimate,
        published: publishedFrameGain,
      }),
    );
}

/** What the frame gains at each end of the season, bare and covered. */
function gainInWords({ printer, wording: { say } }: SheetContext, { gain }: FrameHeat): readonly Inline[] {
  return (['spring', 'fall'] as const).flatMap((season, index): readonly Inline[] => {
    const bare = gain.bare[season];
    const covered = gain.covered?.[season];
    const kind = bare.value.kind === 'none' ? bare.value.reason : 'known';
    const key = covered && covered.value.kind === 'quantity' ? 'covered' : 'bare';
    const words =
      kind === 'known'
        ? sayWith(say, `frame-heat.gain-${season}-${key}`, {
            bare: printer.print(bare),
            covered: covered ? printer.print(covered) : '',
          })
        : [printer.printAs(bare, say(`frame-heat.gain-none-${kind}`))];
    const same = index > 0 && kind !== 'known' && gain.bare.spring.value.kind === 'none';
    return same ? [] : [...(index === 0 ? [] : inline(' ')), ...words];
  });
}
