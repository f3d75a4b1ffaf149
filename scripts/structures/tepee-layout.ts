/** The shape of a pole tepee and how it fares in the wind, in millimetres, newtons and radians. */
import { middle } from '../quantities/quantity.ts';
import type { PoleTepee } from '../records/schemas/projects/pole-tepee.ts';
import type { Spot } from './geometry.ts';
import {
  fullOfLeavesCoefficient,
  lashingTurns,
  lashingTailMm,
  frappingTurns,
  legHoldN,
} from './tepee-practice.ts';
import { gravity, windSafetyFactor } from './wind/sash-in-wind.ts';
import { speedOfPressureMps, velocityPressurePa } from './wind/velocity-pressure.ts';

export interface TepeeLayout {
  readonly poles: number;
  readonly poleMm: number;
  readonly thicknessMm: number;
  readonly radiusMm: number;
  /** Along a pole, from the ground to the lashing; 0 or less where the poles are too short. */
  readonly legMm: number;
  /** Of the lashing above the ground. */
  readonly heightMm: number;
  /** Of the ends of the poles above the ground. */
  readonly topMm: number;
  /** Of a pole, from upright. */
  readonly leanRad: number;
  /** How deep the ends of the poles are below the ground. */
  readonly inGroundMm: number;
  /** From foot to foot. */
  readonly footSpacingMm: number;
  /** Round the circle of the feet. */
  readonly circleMm: number;
  readonly plants: number;
  /** Heights of the strings round the poles, and how long each is with its turns round the poles. */
  readonly rings: readonly {
    readonly heightMm: number;
    readonly radiusMm: number;
    readonly twineMm: number;
  }[];
  readonly lashingTwineMm: number;
}

/** The shape of a record. Where the legs do not reach over half the spread, heights are 0. */
export function layTepee(project: PoleTepee): TepeeLayout {
  const { poles } = project;
  const number = poles.number;
  const [poleMm, thicknessMm, buriedMm] = [poles.length, poles.thickness, poles.buried].map(middle) as [
    number,
    number,
    number,
  ];
  const radiusMm = middle(project.spread) / 2;
  const legMm = poleMm - buriedMm - middle(project.tie);
  const heightMm = legMm > radiusMm ? Math.sqrt(legMm ** 2 - radiusMm ** 2) : 0;
  const leanRad = legMm > radiusMm ? Math.asin(radiusMm / legMm) : Math.PI / 2;
  const circleMm = 2 * Math.PI * radiusMm;
  const rings = Array.from({ length: project.rings }, (_, index) => {
    const share = (index + 1) / (project.rings + 1);
    const ringMm = radiusMm * (1 - share);
    const roundMm = number * 2 * ringMm * Math.sin(Math.PI / number);
    return {
      heightMm: heightMm * share,
      radiusMm: ringMm,
      twineMm: roundMm + number * turnsRoundPole * Math.PI * thicknessMm,
    };
  });
  return {
    poles: number,
    poleMm,
    thicknessMm,
    radiusMm,
    legMm,
    heightMm,
    topMm: heightMm + middle(project.tie) * Math.cos(leanRad),
    leanRad,
    inGroundMm: buriedMm * Math.cos(leanRad),
    footSpacingMm: 2 * radiusMm * Math.sin(Math.PI / number),
    circleMm,
    plants: Math.floor(circleMm / middle(project.spacing.value) + 1e-6),
    rings,
    lashingTwineMm:
      lashingTurns * number * Math.PI * thicknessMm +
      frappingTurns * (number - 1) * 4 * thicknessMm +
      lashingTailMm,
  };
}

/** A string goes so many times round each pole that it comes to. */
const turnsRoundPole = 2;

/** A tepee full of leaves, as the wind sees it. */
export interface TepeeInWind {
  /** What the wind acts on: the tepee from the side, full of leaves. */
  readonly sailM2: number;
  /** Height at which the wind pushes as a whole. */
  readonly armM: number;
  /** From the middle of the circle to the line between two feet that it tips over. */
  readonly edgeM: number;
  /** Pull that the ground holds one leg with. */
  readonly legHoldN: number;
  /** Moment of the poles' weight and of all legs against tipping, in newton metres. */
  readonly rightingNm: number;
  /** The gust that begins to tip it. */
  readonly tipsMps: number;
  /** The gust that it stands with half as much again to spare. */
  readonly standsMps: number;
}

/**
 * It tips over the line between two neighbouring feet, the worst way for the wind to blow. The wind pushes at a third of the
 * height, since it is widest at the ground. Against it stand its own weight and the pull of the ground on the legs: the
 * furthest leg is pulled most, a nearer one less in proportion.
 */
export function tepeeInWind(project: PoleTepee, layout: TepeeLayout): TepeeInWind {
  const { poles, radiusMm, heightMm, inGroundMm, thicknessMm } = layout;
  const sailM2 = (radiusMm * heightMm) / 1e6;
  const holdN = legHoldN(thicknessMm, inGroundMm);
  const rightingNm = (holdN * holdArmMm(poles, radiusMm)) / 1000 + weightMomentNm(project, layout);
  const armM = heightMm / 3 / 1000;
  const pressurePa = rightingNm / armM / (fullOfLeavesCoefficient * sailM2);
  return {
    sailM2,
    armM,
    edgeM: edgeMm(layout) / 1000,
    legHoldN: holdN,
    rightingNm,
    tipsMps: speedOfPressureMps(pressurePa),
    standsMps: speedOfPressureMps(pressurePa / windSafetyFactor),
  };
}

/** How hard a gust pushes on it, in newtons. */
export function pushN({ sailM2 }: TepeeInWind, gustMps: number): number {
  return fullOfLeavesCoefficient * velocityPressurePa(gustMps) * sailM2;
}

/**
 * The mass that must lie on the ground in the middle, tied tight under the lashing, for it to stand a gust, in grams; 0 where
 * it stands as it is. The tepee must lift it to tip.
 */
export function weightForGustG(of: TepeeInWind, gustMps: number): number {
  const missingNm = windSafetyFactor * pushN(of, gustMps) * of.armM - of.rightingNm;
  return (Math.max(0, missingNm) / of.edgeM / gravity) * 1000;
}

/** The same tepee with its legs `buriedMm` in the ground along the pole. */
export function withLegsBuried(project: PoleTepee, buriedMm: number): PoleTepee {
  const buried = { ...project.poles.buried, low: buriedMm, high: buriedMm };
  return { ...project, poles: { ...project.poles, buried } };
}

function edgeMm({ poles, radiusMm }: Pick<TepeeLayout, 'poles' | 'radiusMm'>): number {
  return radiusMm * Math.cos(Math.PI / poles);
}

/** The moment of all legs over the pull of the one that is pulled most, in millimetres. */
export function holdArmMm(poles: number, radiusMm: number): number {
  const edge = Math.cos(Math.PI / poles);
  const arms = Array.from(
    { length: poles },
    (_, index) => radiusMm * (edge - Math.cos(Math.PI / poles + (2 * Math.PI * index) / poles)),
  );
  return arms.reduce((sum, arm) => sum + arm ** 2, 0) / Math.max(...arms);
}

/** The lightest it can be: poles without leaves. */
function weightMomentNm({ poles: { mass } }: PoleTepee, layout: TepeeLayout): number {
  return (((layout.poles * mass.low) / 1000) * gravity * edgeMm(layout)) / 1000;
}

/** Where the feet stand: two of them on the sunny side, so that one can reach in between them. */
export function feetOf({ poles, radiusMm }: TepeeLayout): readonly Spot[] {
  return Array.from({ length: poles }, (_, index) => {
    const angle = Math.PI / poles + (2 * Math.PI * index) / poles;
    return { x: radiusMm * Math.sin(angle), y: -radiusMm * Math.cos(angle), z: 0 };
  });
}
