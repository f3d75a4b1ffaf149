/** The heat of frames in cases that can be worked out by hand, and what must hold for every frame. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  frameModel,
  heatFlows,
  nextState,
  stateAt,
  stepsPerDay,
  type FrameState,
  type Surroundings,
} from '../../scripts/structures/frame-heat/balance.ts';
import { baleFrameEnvelope } from '../../scripts/structures/frame-heat/bale-envelope.ts';
import { irradiance, sunAngles, sunDirection } from '../../scripts/structures/frame-heat/clear-sky.ts';
import type { FrameEnvelope } from '../../scripts/structures/frame-heat/envelope.ts';
import { frameGain, nightsBelow } from '../../scripts/structures/frame-heat/gain.ts';
import { beamTransmittance, glazingKinds } from '../../scripts/structures/frame-heat/glazing.ts';
import { frameHeat } from '../../scripts/structures/frame-heat/heat-findings.ts';
import { insideYear } from '../../scripts/structures/frame-heat/inside-year.ts';
import { nightCovers, softwoodU, strawU } from '../../scripts/structures/frame-heat/materials.ts';
import {
  frameMonths,
  insideLowC,
  outsideForInsideC,
  ventAtC,
  type FrameMonths,
} from '../../scripts/structures/frame-heat/months.ts';
import { airAt, coldestNightZ, stationSpreadC } from '../../scripts/structures/frame-heat/outside.ts';
import { cosineOfIncidence, sunInside, sunlitShare } from '../../scripts/structures/frame-heat/sun-inside.ts';
import { propHeightM, ventHeatW } from '../../scripts/structures/frame-heat/vent.ts';
import { demoProject } from './project.ts';
import { boardFrame, boardVent, climateAt, dark } from './heat-frame.ts';
import { frameOf } from './read-frame.ts';

const year = 2026;
const nodes = 7;
const warm = (temperatureC: number): FrameState => stateAt(Array.from({ length: nodes }, () => temperatureC));

/** The temperatures of a frame after days of one weather, air first. */
function after(
  envelope: FrameEnvelope,
  days: number,
  around: Surroundings,
  start = warm(20),
): readonly number[] {
  const model = frameModel(envelope);
  let state = start;
  for (let step = 0; step < days * stepsPerDay; step += 1) state = nextState(model, state, around);
  return state.temperaturesC;
}

describe('steady states', () => {
  test('without sun the inside comes to the outside', () => {
    for (const temperatureC of after(boardFrame, 60, dark(-5))) expect(temperatureC).toBeCloseTo(-5, 3);
  });

  test('under a clear sky it comes to less than the outside', () => {
    expect(after(boardFrame, 60, dark(-5, { skyCoolingK: 3.9 }))[0]).toBeLessThan(-5.5);
  });

  test('100 W into the air of a frame on a floor that takes no heat: 100 W over the heat loss', () => {
    // Glass 6.25 W/m2K × 1.45 m2, walls and sash wood as given, leak 4/h × 0.63 m3 × 1200 J/m3K / 3600 s.
    const floating = { ...boardFrame, ground: { ...boardFrame.ground, areaM2: 1e-6, perimeterM: 0 } };
    const lossWK =
      6.25 * 1.45 +
      boardFrame.walls.reduce((sum, { areaM2, uWm2K }) => sum + areaM2 * uWm2K, 0) +
      (4 * 0.63 * 1200) / 3600;
    const [airC] = after(floating, 60, dark(0, { sun: { soilW: 0, airW: 100 } }));
    expect(airC).toBeCloseTo(100 / lossWK, 2);
  });

  test('the night cover adds its resistance to that of the glass', () => {
    const { glazing } = frameModel({ ...boardFrame, nightCover: nightCovers.blanket });
    expect(glazing.on).toBeCloseTo(1.45 / (1 / 6.25 + 0.53), 6);
    expect(glazing.off).toBeCloseTo(1.45 * 6.25, 6);
  });

  const sealed: FrameEnvelope = {
    ...boardFrame,
    glazing: { ...boardFrame.glazing, uWm2K: 0 },
    walls: [],
    airChangesPerHour: 0,
    ground: { ...boardFrame.ground, edgeLossWPerMK: 0 },
  };

  test('with perfect insulation above, the frame comes to the ground below, not to the air', () => {
    expect(after(sealed, 60, dark(-20, { groundBelowC: 8 }))[0]).toBeCloseTo(8, 2);
  });

  test('and sun heats it by what the soil can pass down: far past boiling, since nothing else lets it out', () => {
    const [airC] = after(sealed, 60, dark(0, { sun: { soilW: 400, airW: 100 } }));
    expect(airC).toBeGreaterThan(100);
  });
});

describe('the balance closes at every step', () => {
  const temperature = fc.double({ min: -40, max: 60, noNaN: true });
  test('for any state and weather', () => {
    fc.assert(
      fc.property(
        fc.array(temperature, { minLength: nodes, maxLength: nodes }),
        temperature,
        temperature,
        fc.double({ min: 0, max: 2000, noNaN: true }),
        fc.constantFrom('on' as const, 'off' as const),
        fc.option(fc.double({ min: 10, max: 40, noNaN: true }), { nil: undefined }),
        (temperaturesC, outsideC, belowC, sunW, cover, limitC) => {
          const model = frameModel({ ...boardFrame, nightCover: nightCovers.blanket });
          const around = dark(outsideC, {
            groundBelowC: belowC,
            skyCoolingK: 2,
            sun: { soilW: sunW, airW: sunW / 3 },
            cover,
            ventAtC: limitC,
          });
          const before = stateAt(temperaturesC);
          const state = nextState(model, before, around);
          const flows = heatFlows(model, before, around);
          const into =
            flows.sunW +
            flows.glazingW +
            flows.wallsW +
            flows.leakW +
            flows.ventW +
            flows.edgeW +
            flows.belowW;
          expect(Math.abs(into - flows.storedW)).toBeLessThan(1e-6);
          const heatOf = ({ temperaturesC: now, frozen }: FrameState): number =>
            now.reduce(
              (sum, temperatureC, node) =>
                sum + model.capacity[node]! * temperatureC - model.latent[node]! * frozen[node]!,
              0,
            );
          expect(Math.abs(heatOf(state) - heatOf(before) - into * 1800)).toBeLessThan(1);
          // An open frame only loses heat, and a closed one loses none so.
          expect(flows.ventW).toBeLessThanOrEqual(0);
          if (limitC === undefined) expect(flows.ventW).toBe(0);
          else expect(state.temperaturesC[0]!).toBeLessThanOrEqual(Math.max(limitC, outsideC) + 1e-9);
        },
      ),
    );
  });

  test('and no step runs away, however light the frame', () => {
    const light: FrameEnvelope = { ...boardFrame, innerVolumeM3: 1e-4, airChangesPerHour: 1000 };
    const state = after(light, 2, dark(10), warm(1000));
    expect(state[0]).toBeGreaterThanOrEqual(10 - 1e-9);
    expect(state[0]).toBeLessThan(1000);
  });
});

describe('storage', () => {
  test('soil stays at the freezing point until its water is frozen, and gives off 334 kJ for each kilogram', () => {
    // 1.67 m2 of the top 1 cm with 20 % of water: 3.34 kg, 1.1 MJ.
    const model = frameModel(boardFrame);
    expect(model.latent[1]! / 1e6).toBeCloseTo(1.67 * 0.01 * 0.2 * 334, 3);
    let state = warm(2);
    let held = 0;
    for (let step = 0; step < 10 * stepsPerDay; step += 1) {
      state = nextState(model, state, dark(-10, { groundBelowC: 2 }));
      if (state.frozen[1]! > 0 && state.frozen[1]! < 1) {
        expect(state.temperaturesC[1]).toBeCloseTo(0, 9);
        held += 1;
      }
    }
    expect(held).toBeGreaterThan(3);
    expect(state.frozen[1]).toBe(1);
    expect(state.temperaturesC[1]).toBeLessThan(0);
  });

  test('wet soil flattens the swing of a frame on dry soil', () => {
    const swing = (moisture: 'dry' | 'wet'): number => {
      const heat = frameMonths({ ...boardFrame, ground: { ...boardFrame.ground, moisture } }, climateAt(40), {
        nightCover: 'off',
      });
      return heat.months[2]!.clearHighC! - heat.months[2]!.coldest[50].insideC;
    };
    expect(swing('wet')).toBeLessThan(swing('dry') - 2);
  });
});

describe('sun', () => {
  test('rises in the east, stands highest at noon and sets in the west', () => {
    const at = (solarHour: number): ReturnType<typeof sunAngles> =>
      sunAngles(sunDirection({ latitudeDeg: 40, year, day: 79, solarHour }));
    expect(at(12).azimuthDeg).toBeCloseTo(0, 6);
    expect(at(9).azimuthDeg).toBeCloseTo(-at(15).azimuthDeg, 6);
    expect(at(15).azimuthDeg).toBeGreaterThan(0);
    expect(at(12).altitudeDeg).toBeGreaterThan(at(11).altitudeDeg);
  });

  test('the south mirrors the north half a year later', () => {
    const north = sunDirection({ latitudeDeg: 35, year, day: 172, solarHour: 10 });
    const south = sunDirection({ latitudeDeg: -35, year, day: 355, solarHour: 10 });
    expect(south.up).toBeCloseTo(north.up, 3);
    expect(south.equatorward).toBeCloseTo(north.equatorward, 3);
    // The earth is nearer to the sun in December: 3.3 % either side of the mean.
    const strength = (day: number, latitudeDeg: number): number =>
      irradiance(north, { sky: 'clear', day, latitudeDeg }).directNormal;
    expect(strength(355, -35) / strength(172, 35)).toBeCloseTo(1.067, 2);
  });

  test('in the tropics it may stand on the poleward side', () => {
    expect(sunDirection({ latitudeDeg: 10, year, day: 172, solarHour: 12 }).equatorward).toBeLessThan(0);
  });

  test('a covered sky gives a quarter of the light on the level', () => {
    const sun = sunDirection({ latitudeDeg: 40, year, day: 100, solarHour: 11 });
    const clear = irradiance(sun, { sky: 'clear', day: 100, latitudeDeg: 40 });
    const covered = irradiance(sun, { sky: 'covered', day: 100, latitudeDeg: 40 });
    expect(covered.directNormal).toBe(0);
    expect(covered.diffuseLevel).toBeCloseTo((clear.directNormal * sun.up + clear.diffuseLevel) / 4, 6);
  });

  test('a cover tilted by the latitude faces the noon sun of the equinox', () => {
    const sun = sunDirection({ latitudeDeg: 40, year, day: 80, solarHour: 12 });
    expect(cosineOfIncidence({ slopeDeg: 40, azimuthDeg: 0 }, sun)).toBeGreaterThan(0.999);
  });

  test('a wall of 0.3 m shades 0.3 m of soil under a sun at 45 degrees', () => {
    const sun = { up: Math.SQRT1_2, equatorward: Math.SQRT1_2, west: 0 };
    expect(sunlitShare(boardFrame.inside, sun)).toBeCloseTo(1 - 0.3 / 0.91, 6);
  });

  test('doubled glass doubles what gets in and what gets out', () => {
    const double = { ...boardFrame, glazing: { ...boardFrame.glazing, areaM2: 2.9 } };
    expect(frameModel(double).glazing.off).toBeCloseTo(2 * frameModel(boardFrame).glazing.off, 9);
    const sun = sunDirection({ latitudeDeg: 40, year, day: 60, solarHour: 13 });
    // Light that is all diffuse: the beam on the soil is limited by the bed, and so is not simply doubled.
    const sky = irradiance(sun, { sky: 'covered', day: 60, latitudeDeg: 40 });
    const [one, two] = [sunInside(boardFrame, sun, sky), sunInside(double, sun, sky)];
    expect(two.soilW + two.airW).toBeCloseTo(2 * (one.soilW + one.airW), 6);
  });

  test('never more gets in than falls on the glass', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -89, max: 89, noNaN: true }),
        fc.integer({ min: 1, max: 365 }),
        fc.double({ min: 0, max: 24, noNaN: true }),
        fc.double({ min: 0, max: 60, noNaN: true }),
        (latitudeDeg, day, solarHour, slopeDeg) => {
          const sun = sunDirection({ latitudeDeg, year, day, solarHour });
          const sky = irradiance(sun, { sky: 'clear', day, latitudeDeg });
          const frame = { ...boardFrame, glazing: { ...boardFrame.glazing, slopeDeg } };
          const { soilW, airW } = sunInside(frame, sun, sky);
          const most =
            1.45 *
            (sky.directNormal * Math.max(0, cosineOfIncidence(frame.glazing, sun)) +
              sky.diffuseLevel +
              0.2 * (sky.directNormal * Math.max(0, sun.up) + sky.diffuseLevel));
          expect(soilW).toBeGreaterThanOrEqual(0);
          expect(airW).toBeGreaterThanOrEqual(-1e-9);
          expect(soilW + airW).toBeLessThanOrEqual(most + 1e-9);
        },
      ),
    );
  });

  test('glass passes less the more it is slanted, and two panes less than one', () => {
    const kinds = Object.values(glazingKinds);
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 0.98, noNaN: true }),
        fc.constantFrom(...kinds),
        (cosine, kind) => {
          expect(beamTransmittance(kind, cosine)).toBeLessThan(beamTransmittance(kind, cosine + 0.02) + 1e-4);
          expect(beamTransmittance({ ...kind, layers: 2, transmittanceNormal: 0.7 }, cosine)).toBeLessThan(
            beamTransmittance({ ...kind, layers: 1, transmittanceNormal: 0.86 }, cosine),
          );
        },
      ),
    );
    for (const kind of kinds) expect(beamTransmittance(kind, 1)).toBeCloseTo(kind.transmittanceNormal, 9);
  });
});

describe('opening', () => {
  const air = { insideC: 24, outsideC: 10 };

  test('one metre of front propped by 0.2 m, 14 K between: 158 W by hand', () => {
    // Cd 0.463; sqrt(9.81 × 14 / 297.15) = 0.680; 1200 × 14 × 0.463 / 3 × 0.680 × 0.2^1.5 = 157.7 W for each metre of front.
    expect(ventHeatW(0.2, air, { widthM: 1, sashLengthM: 0 })).toBeCloseTo(157.7, 0);
  });

  test('the height that is asked for carries off the heat', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 5000, noNaN: true }), (heatW) => {
        expect(ventHeatW(propHeightM(heatW, air, boardVent), air, boardVent)).toBeCloseTo(heatW, 3);
      }),
    );
  });

  test('nothing to carry off needs no opening, and no opening cools below the outside', () => {
    expect(propHeightM(0, air, boardVent)).toBe(0);
    expect(propHeightM(100, { insideC: 20, outsideC: 20 }, boardVent)).toBe(Infinity);
  });
});

describe('outside', () => {
  const day = { lowC: 2, highC: 14, dayLengthHours: 12 };

  test('the low is at sunrise and the high at two', () => {
    expect(airAt(6, day)).toBeCloseTo(2, 9);
    expect(airAt(14, day)).toBeCloseTo(14, 9);
    expect(airAt(0, day)).toBeCloseTo(airAt(24, day), 9);
  });

  test('the coldest night: 1.69 standard deviations in half of years, 2.46 in one year of ten', () => {
    // Fifteen independent nights: the normal quantiles of 1 - 0.5^(1/15) = 0.0452 and 1 - 0.9^(1/15) = 0.0070.
    expect(coldestNightZ(0.5)).toBeCloseTo(1.693, 2);
    expect(coldestNightZ(0.1)).toBeCloseTo(2.457, 2);
  });

  test('the spread of a record is that of its nights about the mean of the month', () => {
    const days = Array.from({ length: 12 * 28 * 4 }, (_, index) => ({
      year: 2000 + Math.floor(index / 336),
      month: (Math.floor(index / 28) % 12) + 1,
      day: (index % 28) + 1,
      minimumC: index % 2 === 0 ? 3 : -3,
    }));
    const spread = stationSpreadC({ station: 's', name: 'n', days })!;
    for (const value of spread) expect(value).toBeCloseTo(3, 1);
    expect(stationSpreadC({ station: 's', name: 'n', days: days.slice(0, 300) })).toBeUndefined();
  });
});

describe('materials', () => {
  test('a bale of 18 in flat is R 28 with its surfaces, 14 in on edge R 27', () => {
    expect(5.678 / strawU('flat', 0.4572)).toBeCloseTo(1.55 * 18 + 0.9, 0);
    expect(5.678 / strawU('on-edge', 0.3556)).toBeCloseTo(1.85 * 14 + 0.9, 0);
  });

  test('a board of 38 mm: U 2.1', () => {
    expect(softwoodU(0.038)).toBeCloseTo(2.1, 1);
  });
});

describe('months', () => {
  const climate = climateAt(40);
  const bare = frameMonths(boardFrame, climate, { nightCover: 'off', vent: boardVent });

  test('warmer outside is never colder inside', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -10, max: 20, noNaN: true }),
        fc.double({ min: 0.5, max: 8, noNaN: true }),
        (meanC, warmerK) => {
          const at = (mean: number): FrameMonths =>
            frameMonths(
              boardFrame,
              { ...climateAt(45, { meanC: mean }), spreadC: steady },
              { nightCover: 'off' },
            );
          const [cool, mild] = [at(meanC), at(meanC + warmerK)];
          mild.months.forEach((month, index) => {
            expect(month.average.lowC).toBeGreaterThanOrEqual(cool.months[index]!.average.lowC - 1e-9);
            expect(month.clearHighC!).toBeGreaterThanOrEqual(cool.months[index]!.clearHighC! - 1e-9);
            expect(month.coldest[50].insideC).toBeGreaterThanOrEqual(
              cool.months[index]!.coldest[50].insideC - 1e-9,
            );
          });
        },
      ),
      { numRuns: 12 },
    );
  });
  const steady = Array.from({ length: 12 }, () => 4);

  test('the same frame gives the same months', () => {
    expect(frameMonths(boardFrame, climate, { nightCover: 'off', vent: boardVent })).toEqual(bare);
  });

  test('a cover at night never makes it colder, a second pane neither', () => {
    const covered = frameMonths({ ...boardFrame, nightCover: nightCovers.blanket }, climate, {
      nightCover: 'on',
    });
    const double = frameMonths(
      { ...boardFrame, glazing: { ...boardFrame.glazing, ...glazingKinds['double-glass'] } },
      climate,
      { nightCover: 'off' },
    );
    bare.months.forEach(({ average, coldest }, index) => {
      expect(covered.months[index]!.average.lowC).toBeGreaterThanOrEqual(average.lowC);
      expect(double.months[index]!.coldest[50].insideC).toBeGreaterThan(coldest[50].insideC);
    });
  });

  test('opened, the average day keeps to the limit or the air outside', () => {
    for (const { average, outsideHighC } of bare.months)
      expect(average.highC).toBeLessThanOrEqual(Math.max(ventAtC, outsideHighC) + 1e-9);
  });

  test('at the outside high it is told to open at, a clear day comes to the limit', () => {
    const march = bare.months[2]!;
    const shiftK = march.ventOutsideC! - march.outsideHighC;
    const there = climateAt(40, { meanC: 9 + shiftK });
    const limited = frameMonths(boardFrame, there, { nightCover: 'off' }).months[2]!;
    // The soil of the average day is opened at the limit too, so the two agree to a degree or so.
    expect(Math.abs(limited.clearHighC! - ventAtC)).toBeLessThan(1.5);
  });

  test('the outside low for an inside low leads back to it', () => {
    for (const month of bare.months) {
      const outsideC = outsideForInsideC(month, 0);
      expect(insideLowC(month, outsideC)).toBeCloseTo(0, 3);
    }
  });

  test('half the resistance of straw costs less than half a degree at night', () => {
    const { envelope } = baleFrameEnvelope(frameOf(demoProject()).geometry, {
      soil: { texture: 'loam', moisture: 'moist' },
    });
    const poor = {
      ...envelope,
      walls: envelope.walls.map((part) => (part.uWm2K < 1 ? { ...part, uWm2K: part.uWm2K * 2 } : part)),
    };
    const low = (frame: FrameEnvelope): number =>
      frameMonths(frame, climate, { nightCover: 'off' }).months[0]!.coldest[50].insideC;
    expect(low(envelope) - low(poor)).toBeGreaterThan(0);
    expect(low(envelope) - low(poor)).toBeLessThan(0.5);
  });
});

describe('a demonstration frame of bales', () => {
  const { geometry } = frameOf(demoProject());
  const { envelope } = baleFrameEnvelope(geometry, { soil: { texture: 'loam', moisture: 'moist' } });

  test('has the glass and the bed of its geometry', () => {
    const bedM2 = (geometry.insideLengthMm * geometry.insideDepthMm) / 1e6;
    expect(envelope.ground.areaM2).toBeCloseTo(bedM2, 9);
    expect(envelope.glazing.areaM2).toBeCloseTo(
      (0.7 * bedM2) / Math.cos((geometry.slopeDeg * Math.PI) / 180),
      6,
    );
    const wood = envelope.walls.at(-1)!;
    expect(envelope.glazing.areaM2 / (envelope.glazing.areaM2 + wood.areaM2)).toBeCloseTo(0.7, 6);
    expect(envelope.inside.polewardHeightM * 1000).toBeCloseTo(
      geometry.polewardHeightMm - geometry.soilDepthMm,
      6,
    );
  });
});

describe('the season', () => {
  const covered: FrameEnvelope = { ...boardFrame, nightCover: nightCovers.blanket };
  const days = (heat: FrameMonths): { spring: number; fall: number } => {
    const { spring, fall } = frameGain(heat);
    if (spring.value.kind !== 'quantity' || fall.value.kind !== 'quantity') throw new Error('no gain');
    return { spring: spring.value.value, fall: fall.value.value };
  };

  test('begins weeks sooner and ends weeks later, more so under a cover', () => {
    const climate = climateAt(42);
    const bare = days(frameMonths(covered, climate, { nightCover: 'off' }));
    const under = days(frameMonths(covered, climate, { nightCover: 'on' }));
    for (const gain of [bare.spring, bare.fall]) {
      expect(gain).toBeGreaterThan(7);
      expect(gain).toBeLessThan(60);
    }
    expect(under.spring).toBeGreaterThan(bare.spring);
    expect(under.fall).toBeGreaterThan(bare.fall);
  });

  test('gains nothing in a frame that keeps no heat', () => {
    const open = { ...boardFrame, airChangesPerHour: 1e5 };
    const gain = days(frameMonths(open, climateAt(42), { nightCover: 'off' }));
    expect(Math.abs(gain.spring)).toBeLessThanOrEqual(1);
    expect(Math.abs(gain.fall)).toBeLessThanOrEqual(1);
  });

  test('is the same in the south, half a year later', () => {
    const north = frameGain(frameMonths(boardFrame, climateAt(42), { nightCover: 'off' }));
    const south = frameGain(frameMonths(boardFrame, climateAt(-42), { nightCover: 'off' }));
    const dateOf = (gain: typeof north, name: string): number => {
      const found = gain.spring.inputs.find((input) => input.name === name)?.value;
      if (found?.kind !== 'date') throw new Error(`no ${name}`);
      return found.day;
    };
    // Half a year is 182.5 days; the stronger sun of the southern summer may shift what the frame keeps by days.
    const apart = dateOf(south, 'frame-outside-date') - dateOf(north, 'frame-outside-date');
    expect(Math.abs(apart - 182.5)).toBeLessThan(4);
    const [a, b] = [north.spring.value, south.spring.value];
    if (a.kind !== 'quantity' || b.kind !== 'quantity') throw new Error('no gain');
    expect(Math.abs(a.value - b.value)).toBeLessThan(7);
  });

  test.each([
    { place: 'the tropics', latitudeDeg: 5, meanC: 26, halfC: 1, reason: 'freeze-never' },
    { place: 'a mild coast', latitudeDeg: 30, meanC: 16.3, halfC: 6.5, reason: 'frame-never-freezes' },
    { place: 'the ice', latitudeDeg: 80, meanC: -20, halfC: 10, reason: 'freeze-all-year' },
  ])('$place: $reason', ({ latitudeDeg, meanC, halfC, reason }) => {
    const heat = frameMonths(boardFrame, climateAt(latitudeDeg, { meanC, halfC, swingC: 8 }), {
      nightCover: 'off',
    });
    const { spring, fall } = frameGain(heat);
    expect(spring.value).toEqual({ kind: 'none', reason });
    expect(fall.value).toEqual({ kind: 'none', reason });
  });

  test('the frame freezes on no more nights than the open', () => {
    const nights = nightsBelow(frameMonths(boardFrame, climateAt(45), { nightCover: 'off' }), 0);
    expect(nights[0]!.outside).toBeGreaterThan(20);
    for (const { outside, inside } of nights) expect(inside).toBeLessThanOrEqual(outside + 0.1);
  });
});

describe('findings', () => {
  const covered: FrameEnvelope = { ...boardFrame, nightCover: nightCovers.blanket };

  test('of a frame with a cover: each id once, each with sources, none without a number', () => {
    const { findings } = frameHeat(covered, climateAt(42), { vent: boardVent });
    expect(new Set(findings.map(({ id }) => id)).size).toBe(findings.length);
    expect(findings.length).toBe(12 * (4 + 3 + 3) + 4);
    for (const { sources, value } of findings) {
      expect(sources.length).toBeGreaterThan(3);
      if (value.kind === 'quantity') expect(Number.isFinite(value.value)).toBe(true);
    }
  });

  test('in the polar night there is no sunny day', () => {
    const { findings } = frameHeat(boardFrame, climateAt(75, { meanC: -8, halfC: 14 }), { vent: boardVent });
    const value = (id: string): unknown => findings.find((finding) => finding.id === id)?.value;
    for (const what of ['clear-day', 'cloudy-day', 'vent-outside'])
      expect(value(`frame-heat.month-12.${what}`)).toEqual({ kind: 'none', reason: 'sun-below-horizon' });
    expect(value('frame-heat.month-12.open')).toEqual({ kind: 'none', reason: 'frame-keep-closed' });
    expect(value('frame-heat.month-6.clear-day')).toMatchObject({ kind: 'quantity' });
  });

  test('in the heat the cover comes off', () => {
    const { findings } = frameHeat(boardFrame, climateAt(20, { meanC: 27, halfC: 3 }), { vent: boardVent });
    expect(findings.find(({ id }) => id === 'frame-heat.month-7.open')?.value).toEqual({
      kind: 'none',
      reason: 'frame-take-off',
    });
  });
});

describe('the average year inside', () => {
  test.each([{ latitudeDeg: 42 }, { latitudeDeg: -42 }, { latitudeDeg: 70 }, { latitudeDeg: 2 }])(
    'at $latitudeDeg degrees: whole, in order, and not hotter than it is let',
    ({ latitudeDeg }) => {
      const climate = climateAt(latitudeDeg, { meanC: 25 - Math.abs(latitudeDeg) * 0.4 });
      const inside = insideYear(frameMonths(boardFrame, climate, { nightCover: 'off' }));
      expect(inside.minimumC).toHaveLength(365);
      inside.minimumC.forEach((low, day) => {
        const high = inside.maximumC[day]!;
        expect(low).toBeLessThanOrEqual(high);
        expect(high).toBeLessThanOrEqual(Math.max(ventAtC, climate.air.maximumC[day]!) + 1e-9);
        expect(low).toBeGreaterThan(climate.air.minimumC[day]! - 1);
      });
    },
  );
});
