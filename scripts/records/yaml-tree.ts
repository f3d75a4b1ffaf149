import {
  isAlias,
  isMap,
  isScalar,
  isSeq,
  type Alias,
  type Document,
  type Node,
  type Pair,
  type YAMLMap,
} from 'yaml';

/** What is wrong with a tree that is well-formed, and the offset in the text at which it stands. */
export type YamlTreeFault =
  | { readonly fault: 'duplicate-key'; readonly key: string; readonly offset: number }
  | { readonly fault: 'key-not-text'; readonly offset: number }
  | { readonly fault: 'no-such-anchor'; readonly name: string; readonly offset: number }
  | { readonly fault: 'alias-in-itself'; readonly name: string; readonly offset: number }
  | { readonly fault: 'alias-bomb'; readonly offset: number }
  | { readonly fault: 'too-deep'; readonly offset: number };

export interface YamlTree {
  readonly value: unknown;
  /** The pairs of a map by the text of their keys. */
  pairsOf(map: YAMLMap): ReadonlyMap<string, Pair>;
  /** The value that an alias stands for. */
  targetOf(alias: Alias): Node | undefined;
}

/** A record nests a handful of levels; the limit keeps every later walk within the stack. */
export const deepestYaml = 40;

/** Values that aliases may add to those that are written out. */
export const mostAliasedValues = 10_000;

/**
 * Turns a parsed document into plain values. Aliases stand for the nearest anchor of their name before them; the values
 * they repeat are counted. Keys are compared by their text, as the record holds them: `10` and `"10"` are one key.
 * Every map is gone through once, so that a large one costs no more than its size. Any fault leaves no tree.
 */
export function readYamlTree(document: Document): YamlTree | readonly YamlTreeFault[] {
  const faults: YamlTreeFault[] = [];
  const anchors = new Map<string, Node>();
  const targets = new Map<Alias, Node>();
  const pairs = new Map<YAMLMap, ReadonlyMap<string, Pair>>();
  const done = new Map<Node, { value: unknown; size: number; depth: number }>();
  const open = new Set<Node>();
  let aliased = 0;

  type Reading = { value: unknown; size: number; depth: number };
  const nothing: Reading = { value: null, size: 1, depth: 0 };

  const read = (node: Node | null, level: number): Reading => {
    if (!node) return nothing;
    if (isAlias(node)) return readAlias(node, level);
    if (node.anchor !== undefined) anchors.set(node.anchor, node);
    if (level > deepestYaml) {
      faults.push({ fault: 'too-deep', offset: offsetOf(node) });
      return nothing;
    }
    open.add(node);
    const reading = isMap(node) ? readMap(node, level) : isSeq(node) ? readList(node, level) : scalar(node);
    open.delete(node);
    done.set(node, reading);
    return reading;
  };
  const readAlias = (alias: Alias, level: number): Reading => {
    const target = anchors.get(alias.source);
    const offset = offsetOf(alias);
    if (!target) faults.push({ fault: 'no-such-anchor', name: alias.source, offset });
    else if (open.has(target)) faults.push({ fault: 'alias-in-itself', name: alias.source, offset });
    const reading = target && done.get(target);
    if (!reading) return nothing;
    targets.set(alias, target);
    if (level + reading.depth > deepestYaml) faults.push({ fault: 'too-deep', offset });
    const before = aliased;
    aliased += reading.size;
    if (before <= mostAliasedValues && aliased > mostAliasedValues)
      faults.push({ fault: 'alias-bomb', offset });
    return reading;
  };
  const readMap = (map: YAMLMap, level: number): Reading => {
    const byKey = new Map<string, Pair>();
    const entries: [string, unknown][] = [];
    const inner: Reading[] = [];
    for (const pair of map.items) {
      const node = pair.key as Node | null;
      const key = keyText(node);
      const offset = node ? offsetOf(node) : offsetOf(map);
      if (key === undefined) faults.push({ fault: 'key-not-text', offset });
      else if (byKey.has(key)) faults.push({ fault: 'duplicate-key', key, offset });
      else byKey.set(key, pair);
      const reading = read(pair.value as Node | null, level + 1);
      inner.push(reading);
      entries.push([key ?? '', reading.value]);
    }
    pairs.set(map, byKey);
    return whole(Object.fromEntries(entries), inner);
  };
  const readList = (list: { items: unknown[] }, level: number): Reading => {
    const inner = list.items.map((item) => read(item as Node | null, level + 1));
    return whole(
      inner.map(({ value }) => value),
      inner,
    );
  };
  const keyText = (key: Node | null): string | undefined => {
    const node = isAlias(key) ? anchors.get(key.source) : key;
    if (isScalar(key) && key.anchor !== undefined) anchors.set(key.anchor, key);
    if (!node) return '';
    return isScalar<string | number | boolean | bigint | null>(node) ? String(node.value ?? '') : undefined;
  };

  const { value } = read(document.contents, 0);
  if (faults.length > 0) return faults;
  return {
    value,
    pairsOf: (map) => pairs.get(map) ?? new Map<string, Pair>(),
    targetOf: (alias) => targets.get(alias),
  };
}

function scalar(node: Node): { value: unknown; size: number; depth: number } {
  return { value: isScalar(node) ? node.value : null, size: 1, depth: 0 };
}

function whole(
  value: unknown,
  inner: readonly { readonly size: number; readonly depth: number }[],
): { value: unknown; size: number; depth: number } {
  return {
    value,
    size: inner.reduce((sum, { size }) => sum + size, 1),
    depth: inner.reduce((deepest, { depth }) => Math.max(deepest, depth + 1), 0),
  };
}

function offsetOf(node: Node): number {
  return node.range?.[0] ?? 0;
}
