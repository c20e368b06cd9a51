// The compiled table generator as typed functions; a fresh instance a table, so that its memory goes
// when the table is done.

import { TABLES_WASM } from './tables-wasm.ts';

/** The flat interface of lib/engine/kernel/tables/entry.ts. */
export interface TableKernel {
  readonly memory: WebAssembly.Memory;
  readonly FIRST: WebAssembly.Global;
  begin(code: number): number;
  reserve(bytes: number): number;
  know(code: number, start: number, places: number): number;
  ready(): void;
  markLegal(from: number, to: number): void;
  countAll(from: number, to: number): void;
  step(distance: number): number;
}

/** A new instance, compiled within a few milliseconds. */
export function loadTableKernel(): TableKernel {
  const module = new WebAssembly.Module(Uint8Array.from(atob(TABLES_WASM), (letter) => letter.charCodeAt(0)));
  const abort = (): never => {
    throw new Error('the table generator met a position that it has no table for');
  };
  const instance = new WebAssembly.Instance(module, { env: { abort } });
  return instance.exports as unknown as TableKernel;
}
