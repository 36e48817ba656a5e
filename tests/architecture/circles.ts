/** What each node leads to. */
export type Graph = ReadonlyMap<string, readonly string[]>;

/**
 * The sets of nodes that lead to one another, each sorted; a node that leads only to itself counts.
 *
 * @source Tarjan, Depth-first search and linear graph algorithms, SIAM Journal on Computing 1, 1972
 */
export function circles(graph: Graph): readonly (readonly string[])[] {
  const found: (readonly string[])[] = [];
  /** When each node was first visited. */
  const order = new Map<string, number>();
  /** Nodes visited that belong to no finished set yet. */
  const stack: string[] = [];

  /** @returns the earliest visit of a node on the stack that this one leads to */
  function visit(node: string): number {
    const own = order.size;
    order.set(node, own);
    stack.push(node);
    let reached = own;
    for (const next of graph.get(node) ?? []) {
      if (!order.has(next)) reached = Math.min(reached, visit(next));
      else if (stack.includes(next)) reached = Math.min(reached, order.get(next) ?? own);
    }
    if (reached === own) {
      const members = stack.splice(stack.indexOf(node));
      if (members.length > 1 || graph.get(node)?.includes(node)) found.push(members.toSorted());
    }
    return reached;
  }

  for (const node of graph.keys()) if (!order.has(node)) visit(node);
  return found;
}
