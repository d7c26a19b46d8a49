const marks: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&apos;',
};

/** Text as XML 1.0 can hold it: marks escaped, and what it has no room for (controls, halves of letters) left out. */
export function escapeXml(text: string): string {
  return text
    .toWellFormed()
    .replace(/[^\t\n\r\u0020-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]/gu, '')
    .replace(/[&<>"']/g, (mark) => marks[mark]!);
}
