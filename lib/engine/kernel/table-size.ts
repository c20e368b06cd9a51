// How large is the one big table, shared (one after the other, never at once) by prover and search?

import { HEAP_BASE } from './layout';

const TABLE_BYTES: usize = 0x1f4;

/** Takes the memory; false where the machine has none left. */
export function growTable(mebibytesLog2: u32): bool {
  const bytes: u32 = (<u32>1) << (20 + mebibytesLog2);
  const pages = <i32>((HEAP_BASE + bytes + 0xffff) >> 16);
  if (pages > memory.size() && memory.grow(pages - memory.size()) < 0) return false;
  store<u32>(TABLE_BYTES, bytes);
  return true;
}

/** Bytes of the table at HEAP_BASE, a power of two. */
export function tableBytes(): u32 {
  return load<u32>(TABLE_BYTES);
}
