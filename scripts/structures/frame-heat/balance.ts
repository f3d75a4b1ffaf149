/**
 * The heat balance of a frame from half hour to half hour: the air inside, and six layers of soil down to 60 cm, whose bottom
 * has the temperature of open ground at that depth. Heat goes from the air through cover, sash wood and walls and with
 * leaking air to the air outside; from the soil near the walls under them to the ground outside, which keeps the day's mean.
 * Under a clear sky the cover loses more, as if it were colder outside by `clearSkyCoolingK`. Every step is solved as a whole
 * (backward Euler), so that it is stable at any step and its balance closes; then soil that came below 0 C freezes as much of its
 * water as that heat is worth, and stays at 0 C while it has water left (the method of heat integration), and the reverse.
 *
 * What is left out: wind beyond that of the cover's U, snow, standing water, and what grown plants hold.
 */
import { soilHeat, type FrameEnvelope, type SoilHeat } from './envelope.ts';
import type { SunInside } from './sun-inside.ts';

export interface FrameState {
  /** Air first, then the soil layers from the top, in degrees Celsius. */
  readonly temperaturesC: readonly number[];
  /** The share of each node's water that is frozen, 0 to 1; 0 for the air. */
  readonly frozen: readonly number[];
}

/** A frame at one temperature for each node, its soil wholly frozen where it is below 0 C. */
export function stateAt(temperaturesC: readonly number[]): FrameState {
  return {
    temperaturesC,
    frozen: temperaturesC.map((temperatureC, node) => (node > 0 && temperatureC < 0 ? 1 : 0)),
  };
}

export interface Surroundings {
  readonly outsideC: number;
  /** How much colder than the air it is to the cover, because of the sky: 0 to `clearSkyCoolingK`. */
  readonly skyCoolingK: number;
  /** Mean of the day, for the ground beside the frame. */
  readonly groundBesideC: number;
  /** Open ground at 60 cm. */
  readonly groundBelowC: number;
  readonly sun: SunInside;
  /** Whether the night cover lies on; a frame without one is not changed by it. */
  readonly cover: 'on' | 'off';
  /** The frame is opened as far as it takes to keep the air at this or, when it is warmer outside, at the air outside. */
  readonly ventAtC?: number | undefined;
}

/** Heat into the frame (positive) or out of it (negative) over one step, in watts. */
export interface HeatFlows {
  readonly sunW: number;
  readonly glazingW: number;
  readonly wallsW: number;
  readonly leakW: number;
  readonly ventW: number;
  readonly edgeW: number;
  readonly belowW: number;
  /** Goes into air and soil to warm them. */
  readonly storedW: number;
}

export const stepsPerDay = 48;

/**
 * A level cover under a clear sky radiates 63 W/m2 more than one under a sky as warm as the air. At 17 W/m2K to the outside that
 * is as if the air were 3.9 K (7 F) colder (ASHRAE Handbook of Fundamentals, sol-air temperature, from memory).
 */
export const clearSkyCoolingK = 3.9;

const layerThicknessM = [0.01, 0.02, 0.04, 0.08, 0.15, 0.3] as const;
/** From the surface to the bottom of the lowest layer. */
export const soilDepthM = layerThicknessM.reduce((sum, thickness) => sum + thickness, 0);
/** The ground under the walls takes its heat from the soil down to here. */
const edgeDepthM = 0.3;

/**
 * Heat from the soil's surface to the air and the cover over it, radiation included: 9.26 W/m²K, still air, heat flowing up
 * (ASHRAE Handbook of Fundamentals, surface conductances, from memory).
 */
const soilSurfaceWm2K = 9.26;
/** Leaves and the inner skin of the walls, as much as 1 kg of water on each square metre of ground (our own judgement). */
const insideHeatCapacityJm2K = 4186;
/** Heat capacity of a cubic metre of air. */
export const airHeatCapacityJm3K = 1200;
const stepSeconds = 86_400 / stepsPerDay;

/** Everything of a frame that does not change from step to step: conductances in W/K, heat capacities in J/K. */
export interface FrameModel {
  readonly glazing: { readonly off: number; readonly on: number };
  readonly walls: number;
  readonly leak: number;
  /** From each node to the ground beside. */
  readonly edge: readonly number[];
  /** Between one node and the next below. */
  readonly down: readonly number[];
  readonly below: number;
  readonly capacity: readonly number[];
  /** Heat that each node gives off while its water freezes, in joules; 0 for the air. */
  readonly latent: readonly number[];
  /** The equations of a step, ready to be solved. */
  readonly equations: Readonly<Record<'off' | 'on' | 'held', Equations>>;
}

/** The frame as conductances and heat capacities. */
export function frameModel(envelope: FrameEnvelope): FrameModel {
  const { glazing, ground, nightCover } = envelope;
  const soil = soilHeat(ground);
  const covered = nightCover ? 1 / (1 / glazing.uWm2K + nightCover.extraRm2KW) : glazing.uWm2K;
  const parts = {
    glazing: { off: glazing.uWm2K * glazing.areaM2, on: covered * glazing.areaM2 },
    walls: envelope.walls.reduce((sum, { areaM2, uWm2K }) => sum + areaM2 * uWm2K, 0),
    leak: (envelope.airChangesPerHour * envelope.innerVolumeM3 * airHeatCapacityJm3K) / 3600,
    edge: [0, ...sharesWithin(edgeDepthM).map((share) => share * ground.perimeterM * ground.edgeLossWPerMK)],
    down: downward(soil, ground.areaM2),
    below: (soil.conductivityWmK * ground.areaM2) / (layerThicknessM.at(-1)! / 2),
    capacity: [
      envelope.innerVolumeM3 * airHeatCapacityJm3K + ground.areaM2 * insideHeatCapacityJm2K,
      ...layerThicknessM.map((thickness) => thickness * soil.heatCapacityJm3K * ground.areaM2),
    ],
    latent: [0, ...layerThicknessM.map((thickness) => thickness * soil.latentJm3 * ground.areaM2)],
  };
  return {
    ...parts,
    equations: {
      off: equationsOf(parts, parts.glazing.off),
      on: equationsOf(parts, parts.glazing.on),
      held: equationsOf(parts, 'held'),
    },
  };
}

function downward({ conductivityWmK }: SoilHeat, areaM2: number): readonly number[] {
  const half = layerThicknessM.map((thickness) => thickness / 2 / conductivityWmK);
  return half.map(
    (below, index) => areaM2 / ((index === 0 ? 1 / soilSurfaceWm2K : half[index - 1]!) + below),
  );
}

/** The share of each layer in the soil down to a depth. */
function sharesWithin(depthM: number): readonly number[] {
  let above = 0;
  return layerThicknessM.map((thickness) => {
    const within = Math.max(0, Math.min(thickness, depthM - above));
    above += thickness;
    return within / depthM;
  });
}

/** The state after one of the `stepsPerDay` steps of a day. */
export function nextState(model: FrameModel, before: FrameState, around: Surroundings): FrameState {
  return frozenOrThawed(model, balanced(model, before, around), before.frozen);
}

/** The temperatures at which the heat of a step balances, before any water freezes or thaws. */
function balanced(model: FrameModel, before: FrameState, around: Surroundings): readonly number[] {
  const closed = solved(model, before.temperaturesC, around);
  if (around.ventAtC === undefined) return closed;
  const limitC = Math.max(around.ventAtC, around.outsideC);
  return closed[0]! > limitC ? solved(model, before.temperaturesC, around, limitC) : closed;
}

function frozenOrThawed(
  model: FrameModel,
  temperaturesC: readonly number[],
  frozen: readonly number[],
): FrameState {
  const change = temperaturesC.map((temperatureC, node) => {
    const latent = model.latent[node]!;
    if (latent === 0) return 0;
    const wanted = (-temperatureC * model.capacity[node]!) / latent;
    return Math.min(1 - frozen[node]!, Math.max(-frozen[node]!, wanted));
  });
  return {
    temperaturesC: temperaturesC.map(
      (temperatureC, node) => temperatureC + (change[node]! * model.latent[node]!) / model.capacity[node]!,
    ),
    frozen: frozen.map((share, node) => share + change[node]!),
  };
}

/** The heat that moves in the step that follows a state. The flows sum to what is stored, freezing and thawing included. */
export function heatFlows(model: FrameModel, before: FrameState, around: Surroundings): HeatFlows {
  const { outsideC, groundBesideC, groundBelowC, sun, cover } = around;
  const during = balanced(model, before, around);
  const airC = during[0]!;
  const sum = (valueOf: (node: number) => number): number =>
    during.reduce((total, _, node) => total + valueOf(node), 0);
  const stored = (node: number): number =>
    (model.capacity[node]! * (during[node]! - before.temperaturesC[node]!)) / stepSeconds;
  const glazingW = model.glazing[cover] * (outsideC - around.skyCoolingK - airC);
  const wallsW = model.walls * (outsideC - airC);
  const leakW = model.leak * (outsideC - airC);
  // What the open cover carries off is what the air inside would otherwise have warmed by.
  const leftOverW = glazingW + wallsW + leakW + sun.airW + model.down[0]! * (during[1]! - airC) - stored(0);
  return {
    sunW: sun.soilW + sun.airW,
    glazingW,
    wallsW,
    leakW,
    ventW: Math.abs(leftOverW) < 1e-6 ? 0 : -leftOverW,
    edgeW: sum((node) => model.edge[node]! * (groundBesideC - during[node]!)),
    belowW: model.below * (groundBelowC - during.at(-1)!),
    storedW: sum(stored),
  };
}

/** Every step of a frame has the same left side, worked out once (the Thomas algorithm; safe, since the diagonal dominates). */
interface Equations {
  readonly pivot: readonly number[];
  /** Coefficient of the node below after elimination. */
  readonly above: readonly number[];
}

function equationsOf(
  { walls, leak, edge, down, below, capacity }: Omit<FrameModel, 'equations' | 'latent'>,
  glazing: number | 'held',
): Equations {
  const pivot: number[] = [];
  const above: number[] = [];
  const last = capacity.length - 1;
  capacity.forEach((heat, node) => {
    const upward = node === 0 ? 0 : down[node - 1]!;
    const downwardW = node === last ? 0 : down[node]!;
    const outward =
      (node === 0 && glazing !== 'held' ? glazing + walls + leak : 0) + (node === last ? below : 0);
    const held = node === 0 && glazing === 'held';
    const centre = held ? 1 : heat / stepSeconds + edge[node]! + outward + upward + downwardW;
    pivot[node] = centre + upward * (above[node - 1] ?? 0);
    above[node] = held ? 0 : -downwardW / pivot[node];
  });
  return { pivot, above };
}

/** The state after a step; with the air held at a temperature, that of the soil under it. */
function solved(
  model: FrameModel,
  before: readonly number[],
  around: Surroundings,
  heldAirC?: number,
): readonly number[] {
  const { pivot, above } = model.equations[heldAirC === undefined ? around.cover : 'held'];
  const last = before.length - 1;
  const state: number[] = [heldAirC ?? airGain(model, before, around) / pivot[0]!];
  for (let node = 1; node <= last; node += 1) {
    const gain =
      (model.capacity[node]! / stepSeconds) * before[node]! +
      model.edge[node]! * around.groundBesideC +
      (node === last ? model.below * around.groundBelowC : 0) +
      (node === 1 ? around.sun.soilW : 0);
    state[node] = (gain + model.down[node - 1]! * state[node - 1]!) / pivot[node]!;
  }
  for (let node = last - 1; node >= 0; node -= 1)
    state[node] = state[node]! - above[node]! * state[node + 1]!;
  return state;
}

function airGain(
  model: FrameModel,
  before: readonly number[],
  { outsideC, skyCoolingK, cover, sun }: Surroundings,
): number {
  return (
    (model.capacity[0]! / stepSeconds) * before[0]! +
    model.glazing[cover] * (outsideC - skyCoolingK) +
    (model.walls + model.leak) * outsideC +
    sun.airW
  );
}
