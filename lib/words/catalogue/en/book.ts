// Sentences of the soundness report in English.

export const bookEn = {} as const;
