/** The drawings of a build that is made of an assembly: letters of its parts, and words. */
import { assemblyDrawings } from '../drawings/build/assembly-drawings.ts';
import type { RoleLetters } from '../drawings/build/words.ts';
import type { Finding } from '../findings/finding.ts';
import type { Guide, ProjectRecord } from '../records/guide.ts';
import type { Structure } from '../structures/structure.ts';
import { buildDetails } from './build-details.ts';
import type { KindParts } from './kind-parts.ts';
import type { BuiltProject, SheetContext } from './sheet-context.ts';

/**
 * Plan, elevation, section, details and steps of a structure that has an assembly. What each shows is the phrase
 * `build-drawing.KIND.NAME`, in which the findings of the structure stand by their own names: `{insideLength}` is `bed.inside-length`.
 */
export function assemblyParts(context: SheetContext, built: BuiltProject): KindParts {
  const { guide } = context;
  const drawn = drawnOf.get(built.structure);
  if (drawn?.guide === guide) return drawn.parts;
  const parts = drawParts(context, built);
  drawnOf.set(built.structure, { guide, parts });
  return parts;
}

/** What was drawn already: a structure looks the same in every region, in the words of one guide. */
const drawnOf = new WeakMap<Structure, { readonly guide: Guide; readonly parts: KindParts }>();

function drawParts(context: SheetContext, { project, structure }: BuiltProject): KindParts {
  const { assembly } = structure;
  if (!assembly) throw new TypeError(`a ${project.kind} has no assembly to draw`);
  const { say, measures } = context.wording;
  const values = namedValues(context, structure.findings);
  const shows = (name: string): string => say(`build-drawing.${project.kind}.${name}`, values);
  const findings = new Map(structure.findings.map((finding) => [finding.id, finding]));
  const drawings = assemblyDrawings(assembly, {
    idPrefix: project.kind,
    letters: roleLetters(project, structure),
    words: {
      north: say('drawing.north'),
      south: say('drawing.south'),
      sun: say('drawing.sun'),
      ground: say('drawing.ground'),
      cut: say('drawing.cut'),
      measure: (id) => measures.lengthOnDrawing(lengthOf(findings.get(id), id)),
    },
    alternatives: {
      plan: shows('plan'),
      elevation: shows('elevation'),
      section: shows('section'),
      step: shows,
    },
  });
  const details = buildDetails(
    context,
    { project, structure },
    {
      say: (name) => say(`build-detail.${project.kind}.${name}`, values),
      letterOf: (material) => project.parts.find((part) => part.material === material)?.letter ?? '',
    },
  );
  return { drawings: { ...drawings, step: remembered(drawings.step) }, exhibits: [...details] };
}

/** Each step is drawn once. */
function remembered<D>(draw: (step: string, number: number) => D): (step: string, number: number) => D {
  const drawn = new Map<string, D>();
  return (step, number) => {
    const key = `${number} ${step}`;
    const known = drawn.get(key) ?? draw(step, number);
    drawn.set(key, known);
    return known;
  };
}

function lengthOf(finding: Finding | undefined, id: string): number {
  if (finding?.value.kind !== 'quantity') throw new TypeError(`no length ${id} to draw`);
  return finding.value.value;
}

/** Bodies that stand for something counted go by the letter of the part that counts it. */
const rolesOfCount: Readonly<Record<string, readonly string[]>> = {
  'soil-litres': ['soil', 'mix'],
  blocks: ['block'],
  stakes: ['stake'],
  'base-litres': ['base'],
  'drainage-litres': ['drainage'],
  'brown-litres': ['organic'],
  poles: ['pole'],
  balls: ['twine'],
  'cloth-feet': ['bottom-cloth'],
  lids: ['lid'],
  hinges: ['hinge'],
  props: ['prop'],
  'glazing-sheets': ['lid-sheet'],
  'hold-downs': ['sandbag'],
};

/** Bodies that stand for a part with a number of its own go by its material. */
const rolesOfMaterial: Readonly<Record<string, readonly string[]>> = {
  'wire-mesh': ['basket'],
  cardboard: ['lining'],
  'wooden-stake': ['marking-stake'],
  'garden-twine': ['string'],
};

/** Bodies that are something only while they are in one piece. */
const otherRoles: Readonly<Record<string, readonly string[]>> = { 'slope-pair': ['slope-board'] };

/** Bodies go by the letter of the part that they are cut from, or that counts them. */
function roleLetters({ parts }: ProjectRecord, { pieces }: Structure): RoleLetters {
  const cut = pieces.flatMap(({ role, nominal }) => {
    const part = parts.find((each) => each.count === 'cut' && each.nominal === nominal);
    const roles = [role, ...(otherRoles[role] ?? [])];
    return part ? roles.map((each) => [each, part.letter] as const) : [];
  });
  const counted = parts.flatMap(({ count, material, letter }) =>
    [...(rolesOfCount[count] ?? []), ...(count === 'each' ? (rolesOfMaterial[material] ?? []) : [])].map(
      (role) => [role, letter] as const,
    ),
  );
  return Object.fromEntries([...counted, ...cut]);
}

/** Every finding in both systems, by the last part of its id in one word. */
function namedValues({ printer }: SheetContext, findings: readonly Finding[]): Record<string, string> {
  return Object.fromEntries(
    findings.map(({ id, value }) => {
      const { first, second } = printer.words(value);
      const name = id
        .slice(id.indexOf('.') + 1)
        .replace(/[-.](\w)/g, (_, letter: string) => letter.toUpperCase());
      return [name, second === undefined ? first : `${first} (${second})`];
    }),
  );
}
