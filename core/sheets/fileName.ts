/**
 * A file name that every system takes: characters that some refuse become hyphens, no dots or spaces at the ends, and
 * the property's name kept to a length that leaves room for a folder.
 */
export function sheetFileName(propertyName: string, scaleDenominator: number, date: string): string {
  return `${safe(propertyName, 80) || 'Property'} map sheet 1-${scaleDenominator} ${safe(date.slice(0, 10), 10)}.pdf`;
}

export function orderFileName(propertyName: string, date: string): string {
  return `${safe(propertyName, 80) || 'Property'} order ${safe(date.slice(0, 10), 10)}.pdf`;
}

export function packFileName(propertyName: string, date: string): string {
  return `${safe(propertyName, 80) || 'Property'} handover pack ${safe(date.slice(0, 10), 10)}.pdf`;
}

export function findFileName(propertyName: string, about: string, date: string): string {
  return `${safe(propertyName, 60) || 'Property'} ${safe(about, 60)} ${safe(date.slice(0, 10), 10)}.pdf`;
}

function safe(name: string, mostLetters: number): string {
  const plain = name.replace(/[\p{Cc}\p{Cf}<>:"/\\|?*]+/gu, '-').replace(/\s+/g, ' ');
  const short = Array.from(plain).slice(0, mostLetters).join('');
  return short.replace(/^[\s.-]+|[\s.-]+$/g, '');
}
