// Sentences of the readout in English.

export const readoutEn = {} as const;
