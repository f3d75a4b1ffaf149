/**
 * One axonometric drawing for each step of a build. All steps share one view, so that leafing through them shows the thing
 * grow: what the step adds is heavy and tinted, what stands already is light, what moves has an arrow.
 */
import type { Assembly } from '../../structures/assembly.ts';
import type { LengthWords } from '../dimension.ts';
import type { Scene, SceneItem } from '../scene.ts';
import { bodiesOf, membersAt } from './bodies.ts';
import { placeCallouts, type Scenery } from './callouts.ts';
import { grown } from './clearances.ts';
import { dashed } from './elevation.ts';
import { extentOf } from './flat-drawing.ts';
import { footprintOf } from './footprint.ts';
import { groundMeasures } from './ground-measures.ts';
import { linesOf, wordBoxes } from './measures.ts';
import { asLettered, paint, type Painted } from './painted.ts';
import { landings, lifted, pours } from './step-moves.ts';
import { bootOnGround, settingOf, stepHeightMm, stepWidthMm, type Setting } from './step-setting.ts';
import { isInSight, targetsOf, type Lettered } from './targets.ts';
import type { RoleLetters } from './words.ts';

export interface StepOptions {
  readonly id: string;
  readonly alternative: string;
  readonly north: string;
  readonly measure: (findingId: string) => LengthWords;
  readonly letters: RoleLetters;
}

const page = { left: 0, right: stepWidthMm, top: 0, bottom: stepHeightMm };

/** A stage that the assembly does not have is a mistake of the program. */
export function stepDrawing(assembly: Assembly, stage: string, options: StepOptions): Scene {
  const step = assembly.stages.indexOf(stage);
  if (step < 0) throw new RangeError(`the assembly has no stage ${stage}`);
  const setting = settingOf(assembly, options.north);
  const { camera } = setting;
  const { painted, buried } = paintedAt(assembly, step, setting);
  const { inSight, covered, roles } = newParts(painted);
  const footprint = footprintOf(assembly, step, camera);
  const moves = [
    ...landings(
      painted.map(({ body }) => body),
      camera,
    ),
    ...pours(painted, camera),
  ];
  const shapes = [...painted, ...buried, ...(footprint?.bare ? [footprint] : [])].map(
    ({ outline }) => outline,
  );
  const boot = step === 0 ? bootOnGround(setting, shapes) : [];
  const signRooms = [setting.north, boot]
    .filter((items) => items.length > 0)
    .map((items) => grown(extentOf(items), 0.4));
  const measures = footprint?.bare
    ? groundMeasures(assembly, {
        camera,
        words: options.measure,
        footprint: footprint.spots,
        page,
        boxes: signRooms,
      })
    : [];
  const scenery: Scenery = {
    boxes: [...signRooms, ...wordBoxes(measures)],
    lines: linesOf([...moves, ...measures]),
    shapes,
  };
  const targets = targetsOf([...inSight, ...covered], {
    letters: options.letters,
    roles,
    balloons: 'beside',
  });
  const items: readonly SceneItem[] = [
    ...(footprint?.items ?? []),
    ...buried.flatMap(dashed),
    ...painted.flatMap((part) => part.items),
    ...covered.flatMap(dashed),
    ...setting.north,
    ...boot,
    ...moves,
    ...measures,
    ...placeCallouts(targets, page, scenery),
  ];
  const { id, alternative } = options;
  return { id, widthMm: stepWidthMm, heightMm: stepHeightMm, alternative, items };
}

/** All that is there once the step is done, above the ground and in it. */
function paintedAt(
  assembly: Assembly,
  step: number,
  { camera }: Setting,
): { readonly painted: readonly Painted[]; readonly buried: readonly Painted[] } {
  const now = membersAt(assembly, step);
  const before = now.some(({ added }) => added) ? 'standing' : 'at-rest';
  const { above, buried } = bodiesOf(
    now.map(({ member, added }) => ({ member, weight: added ? 'added' : before })),
  );
  return { painted: paint(above.map(lifted), camera), buried: paint(buried, camera) };
}

/**
 * What the step adds, by role; parts of before have no role here. Parts of a role of which nothing is in sight are shown
 * through what covers them.
 */
function newParts(painted: readonly Painted[]): {
  readonly inSight: readonly Lettered[];
  readonly covered: readonly Lettered[];
  readonly roles: readonly string[];
} {
  const parts = painted.map((part) => ({
    ...asLettered(part),
    role: part.body.weight === 'added' ? part.body.member.role : '',
  }));
  const seen = new Set(
    parts.filter((part, index) => isInSight(part, parts.slice(index + 1))).map(({ role }) => role),
  );
  const isCovered = ({ role }: Lettered): boolean => role !== '' && !seen.has(role);
  return {
    inSight: parts.filter((part) => !isCovered(part)),
    covered: parts.filter(isCovered),
    roles: [...new Set(parts.map(({ role }) => role))].filter((role) => role !== ''),
  };
}
