/**
 * The circles of a directed graph: its strongly connected components of more than one node, and nodes that lead to
 * themselves. R. Tarjan, "Depth-first search and linear graph algorithms", SIAM Journal on Computing 1 (1972).
 */
export function circlesOf(graph: ReadonlyMap<string, ReadonlySet<string>>): string[][] {
  const search = new CircleSearch(graph);
  for (const node of graph.keys()) search.visit(node);
  return search.circles;
}

class CircleSearch {
  readonly circles: string[][] = [];
  private readonly graph: ReadonlyMap<string, ReadonlySet<string>>;
  /** In which order nodes were met. */
  private readonly order = new Map<string, number>();
  private readonly stack: string[] = [];

  constructor(graph: ReadonlyMap<string, ReadonlySet<string>>) {
    this.graph = graph;
  }

  /** Gives the earliest node that this one leads back to. */
  visit(node: string): number {
    if (this.order.has(node)) return this.stack.includes(node) ? this.order.get(node)! : Infinity;
    const order = this.order.size;
    this.order.set(node, order);
    this.stack.push(node);
    const targets = [...(this.graph.get(node) ?? [])];
    const earliest = Math.min(order, ...targets.map((target) => this.visit(target)));
    if (earliest === order) this.close(node, targets.includes(node));
    return earliest;
  }

  private close(node: string, leadsToItself: boolean): void {
    const circle = this.stack.splice(this.stack.indexOf(node));
    if (circle.length > 1 || leadsToItself) this.circles.push(circle.sort());
  }
}
