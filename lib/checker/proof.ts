// The proof format: a graph with shared positions, one solver move a position, every legal reply
// present, checkmates as leaves. The checker owns it, so that nothing it judges can redefine it.

/** One position of the solver: the move that is claimed, and where each legal reply leads. */
export interface ProofNode {
  /** The solver's move in UCI form. */
  readonly move: string;
  /** Every legal reply in UCI form -> index of the node it leads to; empty after checkmate. */
  readonly replies: Readonly<Record<string, number>>;
}

/** A forced mate: node 0 is the position `fen`; mate follows in at most `n` solver moves. */
export interface Proof {
  readonly v: 1;
  readonly fen: string;
  readonly n: number;
  readonly nodes: readonly ProofNode[];
}

/** How a piece of evidence stands after the checker has replayed it (rule T1). */
export type CheckStatus = 'passed' | 'failed' | 'too-large';
