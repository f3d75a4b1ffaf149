/** What the gusts of the region do to a tepee: findings that its card speaks of. */
import type { Finding } from '../findings/finding.ts';
import { tepeeWindFindings } from '../structures/tepee-wind.ts';
import { regionWind } from '../structures/wind/velocity-pressure.ts';
import type { BuiltProject, SheetContext } from './sheet-context.ts';

/** Nothing for a project that is no tepee. */
export function tepeeWindParts(
  context: SheetContext,
  { project, structure }: BuiltProject,
): readonly Finding[] {
  if (project.kind !== 'pole-tepee') return [];
  const byId = new Map(structure.findings.map((finding) => [finding.id, finding]));
  return tepeeWindFindings(project, {
    wind: regionWind(context.facts.region.wind),
    given: (id) => {
      const finding = byId.get(id);
      if (!finding) throw new TypeError(`the tepee has no finding ${id}`);
      return finding;
    },
  });
}
