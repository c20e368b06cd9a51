// The engine in the test's own process, for use cases that are passed a way to verify.

import { verifyLacking } from '#lib/book/verify.ts';
import { createEngine, type Engine } from '#lib/engine/create-engine.ts';
import type { Verify } from '#lib/usecases/puzzles/fill-book.ts';

let engine: Engine | null = null;

/** Verifies here and now. */
export const verifyHere: Verify = async ({ terms, lacking, ...options }) => {
  engine ??= createEngine();
  return verifyLacking(engine, terms, lacking, options);
};
