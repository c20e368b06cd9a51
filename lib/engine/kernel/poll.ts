// How long may a search go on? It counts nodes (moves made), ends by itself at the budget, and asks
// the caller now and then whether to stop. The asking never changes a result: a search that was
// stopped has none.

/** Nodes counted since `startNodes`, u64. */
const NODES: usize = 0x1d8;
const LIMIT: usize = 0x1e0;
const NEXT_LOOK: usize = 0x1e8;
/** u32: 0 going on, 1 out of budget, 2 the caller asked to stop. */
const STOPPED: usize = 0x1f0;
const LOOK_EVERY: u64 = 32768;

export const GOING: u32 = 0;
export const OUT_OF_BUDGET: u32 = 1;
export const ASKED_TO_STOP: u32 = 2;

// @ts-ignore: decorator
@external('env', 'poll')
declare function poll(nodes: f64): u32;

/** Begins to count anew, up to `limit` nodes. */
export function startNodes(limit: u64): void {
  store<u64>(NODES, 0);
  store<u64>(LIMIT, limit);
  store<u64>(NEXT_LOOK, min<u64>(limit, LOOK_EVERY));
  store<u32>(STOPPED, GOING);
}

// @ts-ignore: decorator
@inline
export function nodesSoFar(): u64 {
  return load<u64>(NODES);
}

// @ts-ignore: decorator
@inline
export function stopReason(): u32 {
  return load<u32>(STOPPED);
}

// @ts-ignore: decorator
@inline
export function isStopped(): bool {
  return load<u32>(STOPPED) != GOING;
}

function look(nodes: u64): void {
  if (nodes >= load<u64>(LIMIT)) store<u32>(STOPPED, OUT_OF_BUDGET);
  else if (poll(<f64>nodes)) store<u32>(STOPPED, ASKED_TO_STOP);
  store<u64>(NEXT_LOOK, min<u64>(load<u64>(LIMIT), nodes + LOOK_EVERY));
}

/** Counts one node. Look at `isStopped` after every recursion: nothing found since then may be kept. */
// @ts-ignore: decorator
@inline
export function countNode(): void {
  const nodes = load<u64>(NODES) + 1;
  store<u64>(NODES, nodes);
  if (nodes >= load<u64>(NEXT_LOOK)) look(nodes);
}
