import type { Page } from '@playwright/test';
import { englishIn } from './pseudo.ts';

/** Signs of units as the number formats write them after a figure, and months as the system's calendar calls them. */
const unitsAfterFigures =
  /\d[\d.,\u00A0\u202F]*\s*(?:km²|m²|km|mm|cm|ha|kV|kVA|kB|MB|GB|mJ|ohm|ft|in|yd|mi|ac|acres|deg|px|dpi)(?![A-Za-z])(?:\s?\d+\s?in)?/g;
/** The unit of a field, which stands by itself beside it. */
const bareUnit = /^(?:kV|ohm|ohm m|mm|cm|km|ha|kg|ft|in|mi|ac)$/;
const months =
  /\b\d{0,2}\s?(?:January|February|March|April|May|June|July|August|September|October|November|December)\b/g;

/** What the page says in English outside of the catalogue while the language is the pseudo-language, each once. */
export async function englishOnScreen(page: Page, names: Iterable<string>): Promise<string[]> {
  return englishLeft(await page.evaluate(textsOfPage), names);
}

/** Of these texts in the pseudo-language, each once, those that hold English. */
export function englishLeft(texts: readonly string[], names: Iterable<string>): string[] {
  const given = [...new Set(names)].filter((name) => name !== '').sort((a, b) => b.length - a.length);
  const left = texts.map((text) => {
    if (bareUnit.test(text)) return '';
    const ownWords = given.reduce((rest, name) => rest.replaceAll(name, ' '), text);
    const rest = englishIn(ownWords.replaceAll(unitsAfterFigures, ' ').replaceAll(months, ' '));
    return rest === '' ? '' : `${rest}  <-  ${text.slice(0, 160)}`;
  });
  return [...new Set(left.filter((line) => line !== ''))];
}

/** Runs in the page: every visible text and every attribute that is read aloud or shown. */
export function textsOfPage(): string[] {
  const attributes = ['aria-label', 'aria-description', 'aria-valuetext', 'title', 'placeholder', 'alt', 'label'];
  const texts = new Set<string>([document.title]);
  const visit = (element: Element): void => {
    if (['SCRIPT', 'STYLE', 'NOSCRIPT'].includes(element.tagName) || element.hasAttribute('data-own-words')) return;
    for (const name of attributes) texts.add(element.getAttribute(name) ?? '');
    if (element instanceof HTMLInputElement && ['button', 'submit'].includes(element.type)) texts.add(element.value);
    // An element that holds text is taken whole, so that a name inside of a sentence is seen within its brackets.
    const holdsText = [...element.childNodes].some(
      (node) => node.nodeType === Node.TEXT_NODE && node.textContent?.trim(),
    );
    if (holdsText) texts.add(element.textContent?.replaceAll(/\s+/g, ' ').trim() ?? '');
    for (const child of element.children) visit(child);
  };
  visit(document.documentElement);
  texts.delete('');
  return [...texts];
}
