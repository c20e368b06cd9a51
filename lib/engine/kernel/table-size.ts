// How large is the table of the mate prover? The search's own, of fixed size, lies before it.

import { PROVER_TABLE } from './layout';

const TABLE_BYTES: usize = 0x1f4;

/** Takes the memory; false where the machine has none left. */
export function growTable(mebibytesLog2: u32): bool {
  const bytes: u32 = (<u32>1) << (20 + mebibytesLog2);
  const pages = <i32>((<u64>PROVER_TABLE + <u64>bytes + 0xffff) >> 16);
  if (pages > memory.size() && memory.grow(pages - memory.size()) < 0) return false;
  store<u32>(TABLE_BYTES, bytes);
  return true;
}

/** Bytes of the table at PROVER_TABLE, a power of two. */
export function tableBytes(): u32 {
  return load<u32>(TABLE_BYTES);
}
