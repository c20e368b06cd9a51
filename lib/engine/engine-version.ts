// Which engine gave a verdict? Rule V0: the same version gives the same verdict on every machine.

import { KERNEL_HASH } from './inner/kernel-wasm.ts';

/** Raised by hand when code outside the kernel changes a verdict; the kernel's own hash is part of the version. */
const GENERATION = 2;

/** For example `1.4f0c21aa`. A new version is a new book by re-verification. */
export const ENGINE_VERSION: string = `${GENERATION}.${KERNEL_HASH}`;
