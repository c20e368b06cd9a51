// The terms of a puzzle: everything that reading, verifying and marking need to know of it.

/** The task set (marking rules, section 1). */
export type Task =
  | { readonly kind: 'mate'; readonly moves: number }
  | { readonly kind: 'win' }
  | { readonly kind: 'draw' };

/** Name of a marking scheme preset (rule P1). */
export type SchemeName = 'full-line' | 'key-move';

/** Terms as the puzzle states them. Bounds in centipawns from the solver's side. */
export interface PuzzleTerms {
  readonly fen: string;
  readonly task: Task;
  /** Published lines as the host typed them, any notation; the first is the main one. */
  readonly published: readonly string[];
  readonly scheme: SchemeName;
  /** Rule V2: holds at or above. */
  readonly winBound: number;
  /** Rule V2: slips at or below. */
  readonly slipBound: number;
  /** Rule V3. */
  readonly drawBound: number;
  readonly drawSlipBound: number;
  /** Any legal defence may be answered (rule O0, step 4 falls away). */
  readonly anyDefence: boolean;
  /** The mating move must be written (rule O1). */
  readonly mateWritten: boolean;
  /** So many good solver moves finish an answer (rule O1); null where not pinned. */
  readonly solverMoves: number | null;
  /** Two readings with different marks give `ambiguous` (rule R6). */
  readonly isStrict: boolean;
  readonly proofNodes: number;
  readonly budgetNodes: number;
}

/** Defaults of rules V2 and V3 and of the budgets. */
export const DEFAULT_TERMS = {
  published: [],
  scheme: 'full-line',
  winBound: 300,
  slipBound: 150,
  drawBound: -75,
  drawSlipBound: -150,
  anyDefence: false,
  mateWritten: false,
  solverMoves: null,
  isStrict: false,
  proofNodes: 20_000_000,
  budgetNodes: 5_000_000,
} as const satisfies Omit<PuzzleTerms, 'fen' | 'task'>;
