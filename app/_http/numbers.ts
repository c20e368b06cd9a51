/** A whole number from a query, up to nine digits; null for everything else. */
export function wholeNumber(text: string | null): number | null {
  return text !== null && /^\d{1,9}$/.test(text) ? Number(text) : null;
}
