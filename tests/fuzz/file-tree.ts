import { isAlias, isMap, isScalar, isSeq, parseDocument } from 'yaml';

/** A setup file as a thing to break: a section may have a key twice, and every single value is the text as it is to be typed. */
export type Tree =
  | { readonly kind: 'value'; readonly text: string }
  | { readonly kind: 'section'; readonly pairs: readonly Pair[] }
  | { readonly kind: 'list'; readonly items: readonly Tree[] };

export type Pair = readonly [key: string, value: Tree];

export const scalarOf = (text: string): Tree => ({ kind: 'value', text });
export const sectionOf = (...pairs: readonly Pair[]): Tree => ({ kind: 'section', pairs });
export const listOf = (...items: readonly Tree[]): Tree => ({ kind: 'list', items });

/** A sound file as a tree. */
export function treeOf(text: string): Tree {
  const built = (node: unknown): Tree => {
    if (isMap(node))
      return sectionOf(
        ...node.items.map(({ key, value }): Pair => [isScalar(key) ? String(key.value) : '', built(value)]),
      );
    if (isSeq(node)) return listOf(...node.items.map(built));
    if (isAlias(node) || !isScalar(node)) return scalarOf('');
    return scalarOf(typeof node.value === 'string' ? node.value : (node.source ?? ''));
  };
  return built(parseDocument(text).contents);
}

/** How many places a tree has: itself, and all below it. */
export function sizeOf(tree: Tree): number {
  if (tree.kind === 'value') return 1;
  const below = tree.kind === 'list' ? tree.items : tree.pairs.map(([, child]) => child);
  return below.reduce((sum, child) => sum + sizeOf(child), 1);
}

/** Where a tree stands in a whole one: the keys that lead to it, entries of lists left out. */
type Changed = (found: Tree, path: readonly string[]) => Tree;

/** The tree with the n-th of its places, counted as one reads, changed. */
export function withChanged(tree: Tree, index: number, changed: Changed, path: readonly string[] = []): Tree {
  if (index === 0 || tree.kind === 'value') return index === 0 ? changed(tree, path) : tree;
  let before = 1;
  const child = (below: Tree, steps: readonly string[]): Tree => {
    const size = sizeOf(below);
    const at = index - before;
    before += size;
    return at >= 0 && at < size ? withChanged(below, at, changed, steps) : below;
  };
  return tree.kind === 'list'
    ? listOf(...tree.items.map((item) => child(item, path)))
    : sectionOf(...tree.pairs.map(([key, value]): Pair => [key, child(value, [...path, key])]));
}

/** The n-th place of a tree with the keys that lead to it. */
export function placeAt(
  tree: Tree,
  index: number,
): { readonly found: Tree; readonly path: readonly string[] } {
  let place = { found: tree, path: [] as readonly string[] };
  withChanged(tree, index, (found, path) => {
    place = { found, path };
    return found;
  });
  return place;
}
