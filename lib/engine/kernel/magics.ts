// Which squares does a sliding man attack? Magic multiplication: the blockers on a man's lines are
// multiplied into an index of a table that was filled once. The multipliers were found by trying
// sparse random numbers until no two different attack sets met in one place.

import { BISHOP_MAGIC, ROOK_MAGIC, BISHOP_ATTACKS, ROOK_ATTACKS, RAYS } from './layout';

const ROOK_NUMBERS: StaticArray<u64> = [
  0x0080021620804001, 0x0040001000200041, 0x0200102200088040, 0x4080040800821000,
  0x2200020004200810, 0x4b00020c000d0008, 0x01000c4183000600, 0x2080010000402c80,
  0x8002800826864000, 0x0410802000884000, 0x0c01004010200100, 0x020300100100203c,
  0x0450800801040080, 0x4010800200040080, 0x8804000208048110, 0x0c40800080004100,
  0xa2018880024004a0, 0x0080848020004004, 0x1010410010200101, 0x2010008008008010,
  0x0a08010004110008, 0x0802080104209040, 0x0080040090010802, 0x0280020000841069,
  0x080c400080248000, 0x2048850100224008, 0x00200800c0300040, 0x11400d0100201000,
  0x0041001100080204, 0x4802000200040810, 0x0100080c00103601, 0x0020084200043085,
  0x0100804000800022, 0x0460401000402002, 0x8309002001001044, 0x0000800800801000,
  0x0000800800800400, 0xb542040080800200, 0x1041000401000200, 0x000318b04a000401,
  0x0280082000484000, 0x0080400081010030, 0x0010002000108080, 0x012010002101000a,
  0x0801000408010012, 0x0004008002008004, 0x0ad1005200110014, 0x4000004110820004,
  0x9400400080003080, 0x0000802200490200, 0x1521100080200280, 0x9021000824100100,
  0x0081080080840280, 0x0002000904100200, 0x0130024801302400, 0x0102008100442200,
  0x0080984063800101, 0x0016810201412812, 0x40200101603008c1, 0x2851100004082101,
  0x1049001002880005, 0x0081000804000201, 0x100020901208410c, 0x0101064400813102,
];

const BISHOP_NUMBERS: StaticArray<u64> = [
  0x24e0440c00802202, 0x00881808841a4500, 0x29c1021085004190, 0x18c4041080042020,
  0x0841104000008108, 0x890828080880c088, 0x0006021024062018, 0x2000404044104040,
  0x09000504104a0210, 0x0088390204040820, 0x4001420082008402, 0x028108048b001142,
  0x1c00140421001008, 0x0008021212200400, 0x080000581a082004, 0x3000048208027204,
  0x0120004044148482, 0x4021000808108090, 0x0084011808009452, 0x11c802242020e000,
  0x0124002210140002, 0x4009008200420200, 0x0000830202100202, 0x9002042500420200,
  0x0a60200004480210, 0x0402481020480080, 0x8001100101004200, 0x6240104004004080,
  0x1124848014002000, 0x00180200204100a0, 0x8020890844880800, 0x0000802009040204,
  0x0410042041100280, 0x0804022000020440, 0x2418280400480024, 0x0801080800420a00,
  0x4002248400020020, 0x3020004102038084, 0x84280110601c0200, 0x2004004208088080,
  0x0008022220041210, 0x00820e0120000440, 0x0002002201020822, 0x0000002019000804,
  0x0211204c10101100, 0x0604808081001200, 0x1010029204030041, 0x1008090102110621,
  0x0002015002100c00, 0x06002c040404400a, 0xc030002201100011, 0x4040008020884000,
  0x0248000903040100, 0xc010092008008040, 0x6008084108020494, 0x28102182008e0042,
  0x0010210820842002, 0x4080020111491002, 0x0108100084008800, 0x0022242100420221,
  0x10a8008110020210, 0x400019122a900102, 0x00800a1051080300, 0x0420222088008080,
];

/** Squares a rook on `square` attacks, first blockers included. */
// @ts-ignore: decorator
@inline
export function rookAttacks(square: u32, occupied: u64): u64 {
  const entry: usize = ROOK_MAGIC + ((<usize>square) << 5);
  const slot = ((occupied & load<u64>(entry)) * load<u64>(entry, 8)) >> load<u32>(entry, 20);
  return load<u64>(<usize>load<u32>(entry, 16) + ((<usize>slot) << 3));
}

/** Squares a bishop on `square` attacks, first blockers included. */
// @ts-ignore: decorator
@inline
export function bishopAttacks(square: u32, occupied: u64): u64 {
  const entry: usize = BISHOP_MAGIC + ((<usize>square) << 5);
  const slot = ((occupied & load<u64>(entry)) * load<u64>(entry, 8)) >> load<u32>(entry, 20);
  return load<u64>(<usize>load<u32>(entry, 16) + ((<usize>slot) << 3));
}

// Rays 0-3 rise in square numbers (north, east, north-east, north-west), 4-7 fall (their opposites).
function rayUp(direction: u32, square: u32, occupied: u64): u64 {
  const ray = load<u64>(RAYS + ((<usize>((direction << 6) | square)) << 3));
  const blockers = ray & occupied;
  if (!blockers) return ray;
  return ray ^ load<u64>(RAYS + ((<usize>((direction << 6) | <u32>ctz(blockers))) << 3));
}

function rayDown(direction: u32, square: u32, occupied: u64): u64 {
  const ray = load<u64>(RAYS + ((<usize>((direction << 6) | square)) << 3));
  const blockers = ray & occupied;
  if (!blockers) return ray;
  return ray ^ load<u64>(RAYS + ((<usize>((direction << 6) | (63 - <u32>clz(blockers)))) << 3));
}

/** The same attacks, found along the rays: fills the tables, and needs no table but the rays. */
export function slowRookAttacks(square: u32, occupied: u64): u64 {
  return (
    rayUp(0, square, occupied) | rayUp(1, square, occupied) | rayDown(4, square, occupied) | rayDown(5, square, occupied)
  );
}

export function slowBishopAttacks(square: u32, occupied: u64): u64 {
  return (
    rayUp(2, square, occupied) | rayUp(3, square, occupied) | rayDown(6, square, occupied) | rayDown(7, square, occupied)
  );
}

const FILE_ENDS: u64 = 0x8181818181818181;
const RANK_ENDS: u64 = 0xff000000000000ff;

// Blockers on the last square of a line change nothing, unless the man itself stands on that edge.
function innerMask(square: u32, attacks: u64): u64 {
  const rank: u64 = (<u64>0xff) << (<u64>(square & 56));
  const file: u64 = (<u64>0x0101010101010101) << (<u64>(square & 7));
  return attacks & ~((RANK_ENDS & ~rank) | (FILE_ENDS & ~file));
}

function fillSquare(entry: usize, table: usize, magic: u64, isRook: bool, square: u32): usize {
  const mask = innerMask(square, isRook ? slowRookAttacks(square, 0) : slowBishopAttacks(square, 0));
  const shift: u64 = 64 - popcnt(mask);
  store<u64>(entry, mask);
  store<u64>(entry, magic, 8);
  store<u32>(entry, <u32>table, 16);
  store<u32>(entry, <u32>shift, 20);
  let occupied: u64 = 0;
  do {
    const slot = (occupied * magic) >> shift;
    const attacks = isRook ? slowRookAttacks(square, occupied) : slowBishopAttacks(square, occupied);
    store<u64>(table + ((<usize>slot) << 3), attacks);
    occupied = (occupied - mask) & mask;
  } while (occupied);
  return table + ((<usize>1) << (<usize>(64 - shift) + 3));
}

/** Fills both attack tables; the rays must be there. About 108,000 entries, a few milliseconds. */
export function initMagics(): void {
  let rooks: usize = ROOK_ATTACKS;
  let bishops: usize = BISHOP_ATTACKS;
  for (let square: u32 = 0; square < 64; square++) {
    const offset: usize = (<usize>square) << 5;
    rooks = fillSquare(ROOK_MAGIC + offset, rooks, unchecked(ROOK_NUMBERS[square]), true, square);
    bishops = fillSquare(BISHOP_MAGIC + offset, bishops, unchecked(BISHOP_NUMBERS[square]), false, square);
  }
}
