// Sentences of the pages in English.

export const pagesEn = {} as const;
