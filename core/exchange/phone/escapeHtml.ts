const entities: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** Text as it may stand between tags or in a quoted attribute. Characters that no page may hold are left out. */
export function escapeHtml(text: string): string {
  return text.replace(/(?![\n\r\t])\p{Cc}/gu, '').replace(/[&<>"']/g, (sign) => entities[sign]!);
}
