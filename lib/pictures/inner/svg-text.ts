// Text that came from people, made safe to stand in SVG and other XML.

const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** The text with markup signs as entities and without the control characters that XML forbids. */
export function escapeXml(text: string): string {
  return text
    .replace(/[&<>"']/g, (sign) => ENTITIES[sign] ?? sign)
    .replace(/[\p{Cc}\p{Cs}\uFFFE\uFFFF]/gu, (sign) => (sign === '\n' || sign === '\t' ? sign : ' '));
}
