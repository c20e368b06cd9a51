// Marking schemes: the presets are version 1 and data of the program; what a host edited is a later version.

import type { SchemeName } from '#lib/book/terms.ts';
import { SCHEMES, type Scheme } from '#lib/marking/schemes.ts';
import type { Tx } from './client.ts';
import type { Scheme as StoredScheme } from './generated/client.ts';
import { toJson } from './json.ts';

type Numbers = Omit<Scheme, 'name' | 'version'>;

function toScheme(name: SchemeName, row: StoredScheme): Scheme {
  return { ...(row.numbers as unknown as Numbers), name, version: row.version };
}

/** A version of a show's scheme. */
export async function loadScheme(
  tx: Tx,
  which: { readonly showId: number; readonly name: SchemeName; readonly version: number },
): Promise<Scheme> {
  const { showId, name, version } = which;
  if (version === 1) return SCHEMES[name];
  const row = await tx.scheme.findUnique({ where: { showId_name_version: { showId, name, version } } });
  if (row === null) throw new Error(`show ${showId} has no version ${version} of the scheme ${name}`);
  return toScheme(name, row);
}

/** The version that new puzzles are marked by. */
export async function loadNewestScheme(tx: Tx, showId: number, name: SchemeName): Promise<Scheme> {
  const row = await tx.scheme.findFirst({ where: { showId, name }, orderBy: { version: 'desc' } });
  return row === null ? SCHEMES[name] : toScheme(name, row);
}

/** Keeps a new version. */
export async function appendScheme(tx: Tx, showId: number, scheme: Scheme): Promise<void> {
  const { name, version, ...numbers } = scheme;
  await tx.scheme.create({ data: { showId, name, version, numbers: toJson(numbers) } });
}

/** Keeps others from making a version of the show's schemes until the transaction ends. */
export async function lockSchemes(tx: Tx, showId: number): Promise<void> {
  await tx.$queryRaw`select id from show where id = ${showId} for no key update`;
}
