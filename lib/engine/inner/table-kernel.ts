// The table generator within the compiled kernel, as typed functions; a fresh instance a table, so that
// its memory goes when the table is done.

import { KERNEL_WASM_BASE64 } from './kernel-wasm.ts';

/** The flat interface of lib/engine/kernel/tables/entry.ts. */
export interface TableKernel {
  readonly memory: WebAssembly.Memory;
  readonly TABLE_FIRST: WebAssembly.Global;
  tableBegin(code: number): number;
  tableReserve(bytes: number): number;
  tableKnow(code: number, start: number, places: number): number;
  tableReady(): void;
  tableMark(from: number, to: number): void;
  tableCount(from: number, to: number): void;
  tableStep(distance: number): number;
}

/** A new instance, compiled within a few milliseconds. */
export function loadTableKernel(): TableKernel {
  const bytes = Uint8Array.from(atob(KERNEL_WASM_BASE64), (letter) => letter.charCodeAt(0));
  const imports = { env: { poll: () => 0 } };
  const instance = new WebAssembly.Instance(new WebAssembly.Module(bytes), imports);
  // The one place where the untyped door of the module gets the types of the generator.
  return instance.exports as unknown as TableKernel;
}
