/** What the names between double braces in a sheet's prose mean. */
import { depthReasons, ruleVerdicts } from '../agronomy/depth-advice.ts';
import { soilFits } from '../agronomy/soil-fit.ts';
import { boltingRisks } from '../agronomy/onion-buying.ts';
import { onionSizes } from '../agronomy/onion-growth.ts';
import { lightsAfterPlanting } from '../agronomy/onion.ts';
import { inline } from '../document/build.ts';
import type { Block, Inline } from '../document/document.ts';
import type { Finding } from '../findings/finding.ts';
import { freezeOccurrences } from '../climate/freeze-free-season.ts';
import { dayLengthClasses } from '../records/schemas/crop.ts';
import type { Printer } from './printer.ts';

/** A table, drawing or list that prose puts in its place. `wide` ones take the full width of the page. */
export interface Exhibit {
  readonly blocks: () => readonly Block[];
  readonly wide: boolean;
}

export interface NameScope {
  /** Plain facts such as the region's name. */
  readonly facts: ReadonlyMap<string, string>;
  readonly findings: ReadonlyMap<string, Finding>;
  readonly exhibits: ReadonlyMap<string, Exhibit>;
}

export type Resolved =
  | { readonly kind: 'inline'; readonly content: readonly Inline[] }
  | { readonly kind: 'exhibit'; readonly exhibit: Exhibit };

/** Resolves a name, or undefined when the sheet has nothing of that name. Printing a finding is remembered. */
export function resolveName(name: string, scope: NameScope, printer: Printer): Resolved | undefined {
  const fact = scope.facts.get(name);
  if (fact !== undefined) return { kind: 'inline', content: inline(fact) };
  const finding = scope.findings.get(name);
  if (finding) return { kind: 'inline', content: [printer.print(finding)] };
  const exhibit = scope.exhibits.get(name);
  return exhibit && { kind: 'exhibit', exhibit };
}

/** What a condition sees: the value of a choice, `none` where a thing does not happen, `known` otherwise. */
export function conditionValue(name: string, scope: NameScope): string | undefined {
  const finding = scope.findings.get(name);
  if (!finding) return undefined;
  if (finding.value.kind === 'choice') return finding.value.value;
  return finding.value.kind === 'none' ? 'none' : 'known';
}

/**
 * The choices that each method can come to, in any region. A choice by a method that is not here is not checked, so
 * that nothing true is told as a fault.
 */
const choicesOf: Readonly<Record<string, readonly string[]>> = {
  'onion.class-by-latitude': dayLengthClasses,
  'onion.order-of-harvest': dayLengthClasses,
  'onion.size-by-leaves': onionSizes,
  'onion.light-after-planting': lightsAfterPlanting,
  'onion.bolting-risk': boltingRisks,
  'onion.buying-size': ['buy-any-size', 'buy-pencil-or-thinner', 'buy-thinner-than-pencil'],
  'frame.side': ['north', 'south'],
  'tepee.stands': ['tepee-stands', 'tepee-tips'],
  'freeze.occurrence': freezeOccurrences,
  'depth.by-soil': depthReasons,
  'depth.rule-against-published': ruleVerdicts,
  'soil.fit': soilFits.map((fit) => `soil-${fit}`),
};

/**
 * The values that a condition on this name can see, in this region or in another; undefined where that is not known.
 * Text that waits for another value would be shown nowhere.
 */
export function conditionValues(name: string, scope: NameScope): readonly string[] | undefined {
  const finding = scope.findings.get(name);
  if (!finding) return undefined;
  const choices = choicesOf[finding.method];
  if (choices) return [...choices, 'none'];
  return finding.value.kind === 'choice' ? undefined : ['known', 'none'];
}

/** Every name a sheet knows, for suggestions. */
export function knownNames(scope: NameScope): readonly string[] {
  return [...scope.facts.keys(), ...scope.exhibits.keys(), ...scope.findings.keys()];
}
