import { longestBar, barText as textOfBar } from '../../../core/drawing/signs/scaleBar.ts';
import { figures, plainWords } from '../../../core/words/figures.ts';
import type { Units } from '../../../core/words/numbers/write.ts';
import type { Progress, TypedFields } from '../tools/tool.ts';

export interface StatusBarElements {
  /** The line in the status bar: fields for typed figures, what the next click does, and where the pointer is. */
  readonly line: HTMLElement;
  /** Over the map's lower edge: the measures so far, the scale. Only to be read: the pointer goes through to the map. */
  readonly strip: HTMLElement;
}

/** What stands in the status bar. It changes with every move of the pointer, so it is written to directly. */
export interface StatusBar {
  say(text: string, kind: 'hint' | 'refused'): void;
  fields(wanted: TypedFields): void;
  /** Puts a first digit into the first field and the keyboard with it. */
  beginTyping(text: string): void;
  clearFields(): void;
  progress(progress: Progress, units: Units): void;
  /** Where the pointer is, in words. */
  place(text: string | null): void;
  /** Opens the field for coordinates. */
  askForPlace(): void;
  scale(pxPerM: number, units: Units): void;
}

export interface StatusBarEvents {
  /** Enter in a field. */
  readonly onTyped: (first: string, second: string) => void;
  /** Coordinates to go to; true when they are used up. */
  readonly onPlaceTyped: (text: string) => boolean;
  /** Escape in a field. */
  readonly onLeave: () => void;
}

const longestBarPx = 130;

export function createStatusBar({ line, strip }: StatusBarElements, events: StatusBarEvents): StatusBar {
  const form = child(line, 'form', 'map-typed');
  const [firstLabel, first] = field(form);
  const [secondLabel, second] = field(form);
  const said = child(line, 'p', 'map-said');
  said.setAttribute('role', 'status');
  const position = child(line, 'output', 'map-position');
  const goTo = createGoTo(line, events);
  const scale = child(strip, 'span', 'map-scale');
  const measures = child(strip, 'output', 'map-measures');
  const bar = child(scale, 'span', 'map-scale-bar');
  const barText = child(scale, 'span', 'map-scale-text');
  let shown: TypedFields = null;
  form.hidden = true;

  form.addEventListener('submit', (event) => {
    event.preventDefault();
    events.onTyped(first.value, second.value);
  });
  form.addEventListener('keydown', (event) => {
    if (event.key === 'Enter') {
      // A form of two fields has no button to submit it by.
      event.preventDefault();
      form.requestSubmit();
    } else if (event.key === 'Escape') events.onLeave();
    else return;
    event.stopPropagation();
  });

  return {
    say(text, kind) {
      if (said.textContent === text) return;
      said.textContent = text;
      said.dataset.kind = kind;
    },
    fields(wanted) {
      if (wanted === shown) return;
      shown = wanted;
      form.hidden = wanted === null;
      const words = plainWords().window.map.status;
      firstLabel.textContent = wanted === 'width' ? words.width : words.length;
      secondLabel.textContent = words.bearing;
      second.parentElement!.hidden = wanted !== 'lengthAndBearing';
      first.value = '';
      second.value = '';
    },
    beginTyping(text) {
      first.value = text;
      first.focus();
    },
    clearFields() {
      first.value = '';
      second.value = '';
    },
    progress({ lengthM, bearingDeg, snappedTo, totalM }, units) {
      const f = figures(units);
      const texts: string[] = [];
      if (lengthM !== null) texts.push(f.length(lengthM));
      if (bearingDeg !== null) texts.push(f.bearing(bearingDeg));
      if (totalM !== null && totalM > (lengthM ?? 0) + 1e-6) {
        texts.push(f.words.window.map.status.all({ totalM }));
      }
      if (snappedTo !== null) texts.push(f.say(snappedTo));
      setText(measures, texts.join('   '));
      measures.hidden = texts.length === 0;
    },
    place: (text) => setText(position, text ?? ''),
    askForPlace: () => goTo.open(),
    scale(pxPerM, units) {
      const shown = longestBar(pxPerM, units, longestBarPx);
      bar.style.width = `${shown.length.toFixed(1)}px`;
      setText(barText, textOfBar(shown));
    },
  };
}

/** A button that becomes a field for coordinates. */
function createGoTo(line: HTMLElement, { onPlaceTyped, onLeave }: StatusBarEvents): { open(): void } {
  const button = child(line, 'button', 'map-go-to');
  const form = child(line, 'form', 'map-go-to-form');
  const input = child(form, 'input', 'map-field-input');
  button.type = 'button';
  const words = plainWords().window.map.status;
  button.textContent = words.goTo;
  button.title = words.goToTip;
  input.type = 'text';
  input.autocomplete = 'off';
  input.setAttribute('aria-label', words.coordinates);
  input.placeholder = words.coordinatesThenEnter;
  const show = (open: boolean) => {
    form.hidden = !open;
    button.hidden = open;
  };
  show(false);
  button.addEventListener('click', () => open());
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    if (!onPlaceTyped(input.value)) return;
    input.value = '';
    show(false);
  });
  form.addEventListener('keydown', (event) => {
    if (event.key === 'Escape') {
      show(false);
      onLeave();
    }
    event.stopPropagation();
  });
  input.addEventListener('blur', () => {
    if (input.value === '') show(false);
  });

  function open(): void {
    show(true);
    input.focus();
  }
  return { open };
}

function child<K extends keyof HTMLElementTagNameMap>(
  parent: HTMLElement,
  tag: K,
  className: string,
): HTMLElementTagNameMap[K] {
  const element = document.createElement(tag);
  element.className = className;
  parent.append(element);
  return element;
}

function field(form: HTMLElement): readonly [label: HTMLSpanElement, input: HTMLInputElement] {
  const label = child(form, 'label', 'map-field');
  const text = child(label, 'span', 'map-field-label');
  const input = child(label, 'input', 'map-field-input');
  input.type = 'text';
  input.inputMode = 'decimal';
  input.autocomplete = 'off';
  return [text, input];
}

function setText(element: HTMLElement, text: string): void {
  if (element.textContent !== text) element.textContent = text;
}
