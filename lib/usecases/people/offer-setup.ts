// The desk's one-time link: offered at every start while the show has no owner.

import { sha256 } from '#lib/machine/hash.ts';
import { randomToken } from '#lib/machine/tokens.ts';
import { inTransaction } from '#lib/store/client.ts';
import { hasOwner, renewSetupLink, voidSetupLinks } from '#lib/store/setup-links.ts';

/** A fresh token, the former ones void; null where there is an owner already. */
export function offerSetup(): Promise<string | null> {
  return inTransaction(async (tx) => {
    if (await hasOwner(tx)) {
      await voidSetupLinks(tx);
      return null;
    }
    const token = randomToken();
    await renewSetupLink(tx, sha256(token));
    return token;
  });
}
