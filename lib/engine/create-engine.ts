// The engine: one compiled kernel with its memory. Rule V0: a verdict is found by one engine on one
// thread, with a table of fixed size that is fresh for every question.

import { parseFen } from '#lib/rules/parse-fen.ts';
import type { Position } from '#lib/rules/position.ts';
import { INPUT, type KernelCalls, NO_SQUARE } from './inner/kernel-calls.ts';
import { KERNEL_WASM_BASE64 } from './inner/kernel-wasm.ts';

/** One kernel. It does one thing at a time; two threads need two engines. */
export interface Engine {
  readonly calls: KernelCalls;
  /** Bytes of the kernel's memory, for reading answers. Look it up anew for each question. */
  bytes(): DataView;
  /** Whom the kernel asks now and then, with the nodes so far, whether to stop; null for nobody. */
  onPoll: ((nodes: number) => boolean) | null;
}

/** Size of the table that verdicts are found with; part of what makes them repeatable (rule V0). */
export const DEFAULT_HASH_MIB = 64;

/**
 * Compiles and starts a kernel, in some milliseconds. `hashMiB` is a power of two from 1 to 1024
 * (default 64); another size can change which question runs out of its budget, never a proved verdict.
 */
export function createEngine(options?: { readonly hashMiB?: number }): Engine {
  const hashMiB = options?.hashMiB ?? DEFAULT_HASH_MIB;
  const log2 = Math.log2(hashMiB);
  if (!Number.isInteger(log2) || log2 < 0 || log2 > 10) {
    throw new Error(`The table takes a power of two from 1 to 1024 MiB, not ${hashMiB}`);
  }
  const module = new WebAssembly.Module(decodeBase64(KERNEL_WASM_BASE64));
  const engine: { onPoll: Engine['onPoll'] } = { onPoll: null };
  const imports = { env: { poll: (nodes: number) => (engine.onPoll?.(nodes) ? 1 : 0) } };
  // The one place where the untyped door of a WebAssembly module gets its types.
  const calls = new WebAssembly.Instance(module, imports).exports as unknown as KernelCalls;
  if (!calls.initKernel(log2)) throw new Error(`No memory for a table of ${hashMiB} MiB`);
  return Object.assign(engine, { calls, bytes: () => new DataView(calls.memory.buffer) });
}

function decodeBase64(text: string): Uint8Array<ArrayBuffer> {
  const binary = atob(text);
  const bytes = new Uint8Array(binary.length);
  for (let n = 0; n < binary.length; n += 1) bytes[n] = binary.charCodeAt(n);
  return bytes;
}

/** Puts a position onto the kernel's board. */
export function loadPosition(engine: Engine, position: Position): void {
  const bytes = new Uint8Array(engine.calls.memory.buffer, INPUT, 72);
  bytes.set(position.board);
  bytes[64] = position.turn === 'w' ? 0 : 8;
  bytes[65] = position.castling;
  bytes[66] = position.enPassant < 0 ? NO_SQUARE : position.enPassant;
  bytes[68] = position.halfmoveClock & 255;
  bytes[69] = (position.halfmoveClock >> 8) & 255;
  engine.calls.loadPosition();
}

/** The same from a FEN. One that cannot be read is our own mistake here: texts are parsed at the door. */
export function loadFen(engine: Engine, fen: string): Position {
  const position = parseFen(fen);
  if (!position.ok) throw new Error(`Not a position: ${fen} (${JSON.stringify(position.reason)})`);
  loadPosition(engine, position.value);
  return position.value;
}
