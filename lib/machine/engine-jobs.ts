// Which work do the engine's threads do? One kind of job a line; inputs and results are plain data,
// because they travel between threads.

import type { BookRow, Lacking } from '#lib/book/book-row.ts';
import type { PuzzleTerms } from '#lib/book/terms.ts';
import type { FirstLook } from '#lib/book/verify.ts';
import type { Engine } from '#lib/engine/create-engine.ts';
import type { MateReport } from '#lib/engine/prove-mate.ts';
import { createTableSet, type TableSet } from '#lib/engine/table-set.ts';
import type { Budgets, Claim, EngineProgress, MoveVerdict } from '#lib/engine/verdict.ts';
import type { Uci } from '#lib/rules/move.ts';
import { createTableFiles } from './table-files.ts';

/** Every kind of job: what goes in, what comes out. */
export interface EngineJobs {
  readonly proveMate: {
    readonly input: {
      readonly fen: string;
      readonly moves: number;
      readonly proofNodes: number;
      readonly withSlower: boolean;
      readonly withProof: boolean;
    };
    readonly output: MateReport;
  };
  readonly judgeMoves: {
    readonly input: {
      readonly fen: string;
      readonly moves: readonly Uci[] | 'all';
      readonly claim: Claim;
      readonly budgets: Budgets;
    };
    readonly output: MoveVerdict[];
  };
  /** Verdicts with their checks, as rows of the book. */
  readonly verify: {
    readonly input: {
      readonly terms: PuzzleTerms;
      readonly lacking: readonly Lacking[];
      readonly firstLook?: FirstLook;
    };
    readonly output: BookRow[];
  };
  /** Builds a table into the folder of tables, if it is not there; false where the job was stopped. */
  readonly buildTable: { readonly input: { readonly material: string }; readonly output: boolean };
}

export type EngineJobKind = keyof EngineJobs;

/** What a thread has for its jobs. */
export interface JobTools {
  readonly engine: Engine;
  readonly tables: TableSet;
  readonly shouldStop: () => boolean;
  readonly onProgress: (progress: EngineProgress) => void;
}

type Runners = {
  readonly [K in EngineJobKind]: (
    input: EngineJobs[K]['input'],
    tools: JobTools,
  ) => Promise<EngineJobs[K]['output']>;
};

// Loaded when first needed: a thread that proves mates needs no checker.
const RUNNERS: Runners = {
  proveMate: async (input, { engine, shouldStop, onProgress }) => {
    const { proveMate } = await import('#lib/engine/prove-mate.ts');
    return proveMate(engine, { ...input, shouldStop, onProgress });
  },
  judgeMoves: async (input, { engine, tables, shouldStop, onProgress }) => {
    const { judgeMoves } = await import('#lib/engine/judge-moves.ts');
    return judgeMoves(engine, { ...input, tables, shouldStop, onProgress });
  },
  verify: async ({ terms, lacking, ...look }, { engine, tables, shouldStop, onProgress }) => {
    const { verifyLacking } = await import('#lib/book/verify.ts');
    return verifyLacking(engine, terms, lacking, { tables, shouldStop, onProgress, ...look });
  },
  buildTable: async ({ material }, { tables, shouldStop, onProgress }) =>
    tables.values(material, { shouldStop, onProgress }) !== null,
};

/** Runs one job to its end, or to where `shouldStop` ends it. */
export function runEngineJob<K extends EngineJobKind>(
  kind: K,
  input: EngineJobs[K]['input'],
  tools: JobTools,
): Promise<EngineJobs[K]['output']> {
  return RUNNERS[kind](input, tools);
}

/** The tables of a thread: kept in a folder where one is given, else in memory. */
export function openTables(directory: string | null): TableSet {
  return createTableSet(directory === null ? undefined : createTableFiles(directory));
}
