// The engine on the command line: its kernel is built first where it is missing, and only then loaded.

import type { Engine } from '#lib/engine/create-engine.ts';
import { ensureKernel } from '#lib/machine/ensure-kernel.ts';

export async function openEngine(): Promise<Engine> {
  await ensureKernel();
  const { createEngine } = await import('#lib/engine/create-engine.ts');
  return createEngine();
}
