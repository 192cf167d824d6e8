/**
 * Finds a ring in what has to be finished before what: jobs that wait for each other can never begin.
 *
 * @param after name of each job and the names it waits for; names that are not among the jobs are passed over
 * @returns the names of one ring in the order they wait, the first again at its end; null without one
 * @example ringOf(new Map([['A', ['B']], ['B', ['A']]])) // ['A', 'B', 'A']
 * @source depth-first search for a back edge, R. E. Tarjan, SIAM J. Comput. 1 (1972) 146 (from memory)
 */
export function ringOf(after: ReadonlyMap<string, readonly string[]>): string[] | null {
  const done = new Set<string>();
  for (const start of after.keys()) {
    const ring = ringFrom(start, after, done);
    if (ring !== null) return ring;
  }
  return null;
}

/** Without recursion: a list of a thousand jobs may be one chain. */
function ringFrom(
  start: string,
  after: ReadonlyMap<string, readonly string[]>,
  done: Set<string>,
): string[] | null {
  const path: string[] = [];
  const onPath = new Set<string>();
  const open: { readonly name: string; readonly leaving: boolean }[] = [{ name: start, leaving: false }];
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    const { name, leaving } = next;
    if (leaving) {
      path.pop();
      onPath.delete(name);
      done.add(name);
      continue;
    }
    if (onPath.has(name)) return [...path.slice(path.indexOf(name)), name];
    if (done.has(name)) continue;
    path.push(name);
    onPath.add(name);
    open.push({ name, leaving: true });
    for (const before of (after.get(name) ?? []).toReversed()) {
      if (after.has(before)) open.push({ name: before, leaving: false });
    }
  }
  return null;
}
