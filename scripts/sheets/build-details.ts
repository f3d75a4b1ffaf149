/** Drawings of how one thing at a build is done, as exhibits: a lashing, a corner, a course of blocks. */
import { figure } from '../document/build.ts';
import type { Block } from '../document/document.ts';
import { cornerDrawing } from '../drawings/build/details/corner.ts';
import { coursePlan } from '../drawings/build/details/course-plan.ts';
import { lashingDrawing } from '../drawings/build/details/lashing.ts';
import { setOutDrawing } from '../drawings/build/details/set-out.ts';
import type { Scene } from '../drawings/scene.ts';
import type { KeyholeBed } from '../records/schemas/projects/keyhole-bed.ts';
import type { RaisedBed } from '../records/schemas/projects/raised-bed.ts';
import { courseOutlines } from '../structures/keyhole-courses.ts';
import { layRing, ringSizes } from '../structures/keyhole-layout.ts';
import { layRaisedBed } from '../structures/raised-bed-layout.ts';
import { screwsOf } from '../structures/raised-bed-screws.ts';
import { frappingTurns, lashingTurns } from '../structures/tepee-practice.ts';
import type { Exhibit } from './names.ts';
import type { BuiltProject, SheetContext } from './sheet-context.ts';

export interface DetailWords {
  /** The phrase `build-detail.KIND.NAME`, with the findings of the structure by their own names. */
  readonly say: (name: string) => string;
  /** The letter of the first part of a material. */
  readonly letterOf: (material: string) => string;
}

type Named = readonly (readonly [string, Exhibit])[];

const widthsMm = { wide: 150, narrow: 84 } as const;

/** Two courses stand on one page. */
const courseWidthsMm = { ...widthsMm, wide: 106 } as const;

/** What a kind has: `lashing`; `corner` and, with stakes for plants, `set-out`; `courses`. None for other kinds. */
export function buildDetails(context: SheetContext, built: BuiltProject, words: DetailWords): Named {
  const { project } = built;
  switch (project.kind) {
    case 'pole-tepee':
      return [
        [
          'lashing',
          exhibit(words, 'lashing', (id, widthMm) =>
            lashingDrawing({
              id,
              widthMm,
              alternative: words.say('lashing'),
              poles: project.poles.number,
              turns: lashingTurns,
              tightTurns: frappingTurns,
              words: {
                weave: words.say('weave'),
                tighten: words.say('tighten'),
                strings: words.say('strings'),
                tie: lengthOf(context, built, 'tepee.tie'),
              },
            }),
          ),
        ],
      ];
    case 'raised-bed':
      return raisedBedDetails(context, built, { ...words, project });
    case 'keyhole-bed':
      return courseDetails(context, built, { ...words, project });
    case 'bale-cold-frame':
    case 'lumber-cold-frame':
      return [];
  }
}

/** A drawing for paper and one for a phone, with its caption `NAME-caption`. */
function exhibit({ say }: DetailWords, name: string, draw: (id: string, widthMm: number) => Scene): Exhibit {
  return { wide: true, blocks: () => [drawn(name, say(`${name}-caption`), draw)] };
}

function drawn(
  name: string,
  caption: string,
  draw: (id: string, widthMm: number) => Scene,
  { wide, narrow }: { readonly wide: number; readonly narrow: number } = widthsMm,
): Block {
  return figure(draw(name, wide), { caption, narrow: draw(`${name}-narrow`, narrow) });
}

function lengthOf({ wording: { measures } }: SheetContext, { structure }: BuiltProject, id: string) {
  const value = structure.findings.find((finding) => finding.id === id)?.value;
  if (value?.kind !== 'quantity') throw new TypeError(`no length ${id} to draw`);
  return measures.lengthOnDrawing(value.value);
}

function raisedBedDetails(
  context: SheetContext,
  built: BuiltProject,
  { project, ...words }: DetailWords & { readonly project: RaisedBed },
): Named {
  const { say, letterOf } = words;
  const layout = layRaisedBed(project);
  const measures = (mm: number) => context.wording.measures.lengthOnDrawing(mm);
  const screws = {
    end: screwsOf(layout.screwPlan, 'end', layout.screwsPerJoint),
    side: screwsOf(layout.screwPlan, 'side', layout.screwsPerJoint),
  };
  const letterOfRole = (nominal: string): string =>
    project.parts.find((part) => part.count === 'cut' && part.nominal === nominal)?.letter ?? '';
  const board = letterOfRole(project.boards.nominal);
  const corner = exhibit(words, 'corner', (id, widthMm) =>
    cornerDrawing({
      id,
      widthMm,
      alternative: say('corner'),
      boardThicknessMm: layout.board.thicknessMm,
      boardWidthMm: layout.board.widthMm,
      postMm: layout.postMm,
      holeFromStringMm: layout.holeFromStringMm,
      screws,
      letters: { board, post: letterOfRole(project.posts.nominal), string: letterOf('garden-twine') },
      words: {
        end: say('corner-end'),
        side: say('corner-side'),
        above: say('corner-above'),
        first: { end: measures(screws.end[0]!.downMm), side: measures(screws.side[0]!.downMm) },
        pitch: lengthOf(context, built, 'bed.screw-pitch'),
        hole: lengthOf(context, built, 'bed.hole-from-string'),
      },
    }),
  );
  if (!project.plantStakes) return [['corner', corner]];
  const setOut = exhibit(words, 'set-out', (id, widthMm) =>
    setOutDrawing({
      id,
      widthMm,
      alternative: say('set-out'),
      letters: {
        plant: letterOf('transplants'),
        stake: project.parts.find(({ count }) => count === 'plant-stakes')?.letter ?? '',
        board,
      },
      words: {
        before: say('set-out-before'),
        after: say('set-out-after'),
        inGround: lengthOf(context, built, 'bed.plant-stake-in-ground'),
        stake: lengthOf(context, built, 'bed.plant-stake-length'),
      },
    }),
  );
  return [
    ['corner', corner],
    ['set-out', setOut],
  ];
}

/** The first course and the second, each with its own figure. */
function courseDetails(
  context: SheetContext,
  built: BuiltProject,
  { project, say }: DetailWords & { readonly project: KeyholeBed },
): Named {
  const ring = layRing(ringSizes(project));
  if (!ring) return [];
  const of = (index: 0 | 1, name: string): Block =>
    drawn(
      name,
      say(`${name}-caption`),
      (id, widthMm) =>
        coursePlan({
          id,
          widthMm,
          alternative: say(name),
          blocks: courseOutlines(ring, index),
          below: index === 0 ? [] : courseOutlines(ring, 0),
          radiusMm: ring.radiusMm,
          basketRadiusMm: ring.basketRadiusMm,
          notchAngle: ring.notchAngle,
          hemisphere: context.facts.south ? 'south' : 'north',
          words: {
            north: context.wording.say('drawing.north'),
            across: lengthOf(context, built, 'bed.outside-diameter'),
            notch: lengthOf(context, built, 'bed.notch-width'),
            basket: { name: say('basket'), ...lengthOf(context, built, 'bed.basket-diameter') },
          },
        }),
      courseWidthsMm,
    );
  return [['courses', { wide: true, blocks: () => [of(0, 'first-course'), of(1, 'second-course')] }]];
}
