// Sentences of the desk in English.

export const deskEn = {} as const;
