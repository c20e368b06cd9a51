// Every endgame table of three and four men, built from nothing: time, size, peak memory; the longest
// wins against the handbook's; and positions by chance whose result must follow from the legal moves.

import { readFileSync } from 'node:fs';
import { deflateSync } from 'node:zlib';
import { type Material, placesOf } from '#lib/engine/material.ts';
import { createTableSet } from '#lib/engine/table-set.ts';
import { createRandom } from '#lib/kit/random.ts';
import { isOneStepTrue, randomPlacement } from '../support/table-truth.ts';
import { cpuMs, finish, say } from './inner/measure.ts';

const SEED = 19_470_412;
const POSITIONS = 500;
const AIM_SECONDS = 20;

interface Row {
  readonly material: Material;
  readonly longestWin: number;
  readonly longestWinOfBlack?: number;
}
const handbook: { rows: Row[] } = JSON.parse(
  readFileSync(new URL('../cases/endgames.json', import.meta.url), 'utf8'),
);

const kinds = ['Q', 'R', 'B', 'N', 'P'];
const three = kinds.map((kind) => `K${kind}K`);
const pairs = kinds.flatMap((one, i) => kinds.slice(i).map((other) => [one, other] as const));
const four = pairs.flatMap(([one, other]) => [`K${one}${other}K`, `K${one}K${other}`]);
// The two whose time is asked for come first, so that what they need counts as theirs.
const order = [...three, 'KBNK', 'KQKR', ...four.filter((name) => name !== 'KBNK' && name !== 'KQKR')];

const tables = createTableSet();
const floors: boolean[] = [];

function longest(values: Uint8Array): number {
  return values.reduce((most, value) => (value < 128 && value > most ? value : most), 0);
}

function untrue(material: Material): number {
  const random = createRandom(SEED);
  let wrong = 0;
  for (let n = 0; n < POSITIONS; n += 1)
    if (!isOneStepTrue(tables, randomPlacement(material, random))) wrong += 1;
  return wrong;
}

for (const material of order) {
  let values = new Uint8Array();
  const seconds =
    cpuMs(() => {
      values = new Uint8Array(tables.values(material) ?? []);
    }) / 1000;
  const places = placesOf(material);
  const white = longest(values.subarray(0, places));
  const black = longest(values.subarray(places));
  const wanted = handbook.rows.find((row) => row.material === material);
  const isAsSaid =
    wanted === undefined ||
    (white === wanted.longestWin &&
      black === (wanted.longestWinOfBlack ?? (material === 'KRKR' || material === 'KQKQ' ? white : 0)));
  const wrong = untrue(material);
  const packed = deflateSync(values, { level: 1 }).length;
  const memory = Math.round(process.resourceUsage().maxRSS / 1024);
  const isAsked = material === 'KBNK' || material === 'KQKR';
  const isMet = isAsSaid && wrong === 0 && (!isAsked || seconds <= AIM_SECONDS);
  floors.push(
    say(
      material,
      `${seconds.toFixed(1)} s, ${(values.length / 1e6).toFixed(1)} MB (${(packed / 1e6).toFixed(1)} on disk), peak ${memory} MiB, longest win ${white}${black > 0 ? ` and ${black} for Black` : ''}${wanted ? ' as in the handbook' : ''}, ${wrong} of ${POSITIONS} untrue`,
      isMet && !isAsked ? undefined : { floor: 'exact', aim: `${AIM_SECONDS} s`, isMet },
    ),
  );
}
finish(floors);
