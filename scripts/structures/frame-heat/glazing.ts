/**
 * How much sun one, two or more flat panes let through, by the angle at which it meets them: reflection by Fresnel for each
 * direction of polarization, and absorption along the slanted way through the pane (J. A. Duffie and W. A. Beckman, Solar
 * Engineering of Thermal Processes, chapter 5, the form transmittance = reflected part × absorbed part). The refractive
 * index is that of window glass; polycarbonate (1.59) and polyethylene (1.5) differ by less than 0.02 in what they let through.
 */
export interface Panes {
  /** At right angles, 0 to 1, all panes together and clean. Above what reflection alone lets through, absorption is taken as nothing. */
  readonly transmittanceNormal: number;
  /** Panes or films one over the other: 1, 2, ... Twin-wall sheet counts as 2. */
  readonly layers: number;
}

/** The share of a beam that passes, 0 to 1, by the cosine of its angle of incidence; nothing from behind. */
export function beamTransmittance(panes: Panes, cosIncidence: number): number {
  if (cosIncidence <= 0) return 0;
  const cosine = Math.min(1, cosIncidence);
  const inGlass = Math.sqrt(1 - (1 - cosine ** 2) / refractiveIndex ** 2);
  return reflectedPart(panes.layers, cosine, inGlass) * Math.exp(-opticalDepth(panes) / inGlass);
}

/**
 * The share of evenly diffuse light that passes: that of a beam at 59 degrees, the equivalent angle of M. J. Brandemuehl and
 * W. A. Beckman (Solar Energy 24, 1980) for sky light on level and gently sloped covers.
 */
export function diffuseTransmittance(panes: Panes): number {
  return beamTransmittance(panes, Math.cos((59 * Math.PI) / 180));
}

/** Absorption of all panes at right angles, as an exponent. */
function opticalDepth({ transmittanceNormal, layers }: Panes): number {
  return Math.max(0, Math.log(reflectedPart(layers, 1, 1) / transmittanceNormal));
}

/** What reflection alone lets through, the mean of both polarizations. */
function reflectedPart(layers: number, cosOutside: number, cosInside: number): number {
  const across = (cosOutside - refractiveIndex * cosInside) / (cosOutside + refractiveIndex * cosInside);
  const along = (refractiveIndex * cosOutside - cosInside) / (refractiveIndex * cosOutside + cosInside);
  const passed = [across ** 2, along ** 2].map(
    (reflected) => (1 - reflected) / (1 + (2 * layers - 1) * reflected),
  );
  return (passed[0]! + passed[1]!) / 2;
}

const refractiveIndex = 1.526;

export interface GlazingKind extends Panes {
  /** Heat through it, air to air, in watts per square metre and kelvin. */
  readonly uWm2K: number;
}

/**
 * Covers as they are sold. U by the farm energy unit of the Extension Foundation (1.0 to 1.2 Btu/h ft² F for any single layer,
 * 0.6 to 0.7 for double ones; the middle of each), light of twin-wall sheet from the same page (78 to 82 %). Light of glass
 * and film is from memory of makers' tables. Old or dusty panes pass 5 to 15 % less.
 */
export const glazingKinds = {
  'single-glass': { uWm2K: 6.25, transmittanceNormal: 0.86, layers: 1 },
  'double-glass': { uWm2K: 3.7, transmittanceNormal: 0.74, layers: 2 },
  film: { uWm2K: 6.25, transmittanceNormal: 0.88, layers: 1 },
  'double-film': { uWm2K: 3.7, transmittanceNormal: 0.78, layers: 2 },
  'twin-wall': { uWm2K: 3.7, transmittanceNormal: 0.8, layers: 2 },
} as const satisfies Readonly<Record<string, GlazingKind>>;
