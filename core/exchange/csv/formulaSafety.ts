/**
 * Spreadsheets take text that begins with one of these for a formula; OWASP, "CSV injection". A name is never one, so
 * it gets an apostrophe before it, which spreadsheets show as plain text. So does text that begins with apostrophes
 * and then one of these, that it can be told from one that was neutralised.
 */
const dangerous = /^'*[=+\-@\t\r\n]/;

export function neutralise(text: string): string {
  return dangerous.test(text) ? `'${text}` : text;
}

/** The text that `neutralise` was given. */
export function restore(text: string): string {
  return text.startsWith("'") && dangerous.test(text.slice(1)) ? text.slice(1) : text;
}
